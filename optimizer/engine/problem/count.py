"""The losses of a state by name, from the tables that the explorer reads: exactly, and as the model counts them."""

from collections import defaultdict
from collections.abc import Iterator

import numpy as np

from optimizer.engine.pairs import Gaps
from optimizer.engine.problem.problem import Problem, RoomPair
from optimizer.engine.problem.state import Spot, State, rect_of

Named = tuple[str, int]
CHOICES, PLACES, DOORS, ORDER = "choices", "places", "walking to doors", "order"


def modelled_losses(problem: Problem, state: State) -> dict[str, int]:
    """What the model counts of a state [cents]; a proof can speak of nothing else.

    Losses of places are in whole levels, rounded down; near misses and sight between rooms are not in it.
    """
    return _summed(_of_model(problem, state))


def modelled_value(problem: Problem, state: State) -> int:
    """Objective of a state as the model counts it [cents]."""
    return sum(modelled_losses(problem, state).values())


def stamp_losses(problem: Problem, state: State) -> dict[str, int]:
    """What pairs of rooms cost each other by offset, by rule or term [cents]; FORBIDDEN where one is broken."""
    return _summed(found for pair in problem.pairs for found in _between(problem, state, pair, modelled=False))


def _of_model(problem: Problem, state: State) -> Iterator[Named]:
    for room, spot in zip(problem.rooms, state, strict=True):
        yield CHOICES, room.absent_loss - room.absent_place if spot is None else room.losses[spot.variant]
        yield PLACES, room.absent_place if spot is None else int(room.floors[spot.variant][spot.y, spot.x])
    yield DOORS, sum(_to_doors(problem, state))
    for pair in problem.pairs:
        yield from _between(problem, state, pair, modelled=True)
    yield ORDER, problem.order.loss(rect_of(problem, i, spot) for i, spot in enumerate(state) if spot is not None)


def _to_doors(problem: Problem, state: State) -> Iterator[int]:
    for pull in problem.pulls:
        spot = state[pull.room]
        if spot is not None:
            anchor = problem.rooms[pull.room].variants[spot.variant].anchor
            steps = abs(2 * spot.x + anchor[0] - pull.at[0]) + abs(2 * spot.y + anchor[1] - pull.at[1])
            yield pull.rate * steps


def _between(problem: Problem, state: State, pair: RoomPair, *, modelled: bool) -> Iterator[Named]:
    one, other = state[pair.first], state[pair.second]
    if one is not None and other is not None:
        gaps = gaps_between(problem, pair, one, other)
        for stamp in pair.stamps:
            if stamp.in_model or not modelled:
                yield stamp.name, int(stamp.cents(gaps)[0, 0])


def gaps_between(problem: Problem, pair: RoomPair, one: Spot, other: Spot) -> Gaps:
    """Two placed rooms seen from each other: a window of one offset."""
    variants = problem.rooms[pair.first].variants[one.variant], problem.rooms[pair.second].variants[other.variant]
    offset = np.array([one.x - other.x]), np.array([one.y - other.y])
    return Gaps(*variants, *offset, problem.context.lattice.step_ft)


def _summed(named: Iterator[Named]) -> dict[str, int]:
    totals: defaultdict[str, int] = defaultdict(int)
    for name, cents in named:
        totals[name] += cents
    return dict(totals)
