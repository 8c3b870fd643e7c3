"""The problem as the model counts it: what is not in the model is left out, so that every bound on it is a floor."""

from dataclasses import replace

from optimizer.engine.problem.problem import Problem, ProblemRoom, RoomPair

Choices = tuple[int, ...]
"""Choice of each room; below 0 for a room that is left out."""


def modelled_problem(problem: Problem) -> Problem:
    """Losses of places in whole levels, no near misses; without sight, rings and ways."""
    return replace(
        problem,
        rooms=tuple(replace(room, places=room.floors) for room in problem.rooms),
        pairs=tuple(_modelled(pair) for pair in problem.pairs),
        rings=(),
        reach=None,
        guide=replace(problem.guide, doubts=()),
    )


def restricted(problem: Problem, choices: Choices) -> tuple[Problem, tuple[tuple[int, ...], ...]]:
    """The problem of one program: each room must be there with its choice, or is left out. Amounts are dropped, since
    they depend on choices alone.

    Also, for each room, the number that each of its variants has in the whole problem.
    """
    numbers = tuple(
        tuple(v for v, variant in enumerate(room.variants) if variant.choice == choice)
        for room, choice in zip(problem.rooms, choices, strict=True)
    )
    rooms = tuple(_restricted(room, own) for room, own in zip(problem.rooms, numbers, strict=True))
    return replace(problem, rooms=rooms, amounts=()), numbers


def _modelled(pair: RoomPair) -> RoomPair:
    return replace(pair, stamps=tuple(stamp for stamp in pair.stamps if stamp.in_model), asks=())


def _restricted(room: ProblemRoom, numbers: tuple[int, ...]) -> ProblemRoom:
    return replace(
        room,
        required=bool(numbers),
        variants=tuple(room.variants[v] for v in numbers),
        losses=tuple(room.losses[v] for v in numbers),
        allowed=tuple(room.allowed[v] for v in numbers),
        places=tuple(room.places[v] for v in numbers),
        floors=tuple(room.floors[v] for v in numbers),
    )
