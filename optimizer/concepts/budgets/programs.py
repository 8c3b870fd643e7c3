"""The most worth that money buys on floors: programs of rooms at their least prices, before they have places."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from optimizer.catalogue import SizedRoom
from optimizer.engine.problem import Problem

_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Program:
    """A choice for each room, by its number, or None; what it costs at the least [cents], and its worth."""

    choices: tuple[int | None, ...]
    cents: int
    worth: float


@dataclass(frozen=True, slots=True)
class Programs:
    """Programs by rising price, each of more worth than every cheaper one. Ways, steps and runs are in no price."""

    front: tuple[Program, ...]

    def best_for(self, cents: int) -> Program | None:
        """The program of most worth that so much may buy; None where it buys not even what is required."""
        number = bisect_right(self.front, cents, key=lambda program: program.cents)
        return self.front[number - 1] if number else None


def programs_of(problem: Problem, rooms: Sequence[SizedRoom], fixed_cents: int) -> Programs:
    """All programs that no other one beats, of choices that have a place at all, with what is charged once."""
    front = [Program((), fixed_cents, 0.0)]
    for number, room in enumerate(rooms):
        offers = list(_offers(problem, number, room))
        front = _unbeaten(
            Program((*program.choices, choice), program.cents + cents, round(program.worth + worth, _DIGITS))
            for program in front
            for choice, cents, worth in offers
        )
    return Programs(tuple(front))


def _offers(problem: Problem, number: int, room: SizedRoom) -> Iterator[tuple[int | None, int, float]]:
    """Choices of a room that have a place, each with its least price [cents] and its worth; and to do without it."""
    known, budget = problem.rooms[number], problem.budget
    assert budget is not None, "a problem of budgets has a ceiling"
    if not room.required:
        yield None, 0, 0.0
    for choice, sized in enumerate(room.choices):
        placeable = [v for v, own in enumerate(known.variants) if own.choice == choice and known.allowed[v].any()]
        if placeable:
            yield choice, min(budget.uses[number][v] for v in placeable), sized.worth


def _unbeaten(programs: Iterator[Program]) -> list[Program]:
    """By rising price those of more worth than all before."""
    kept: list[Program] = []
    for program in sorted(programs, key=lambda p: (p.cents, -p.worth)):
        if not kept or program.worth > kept[-1].worth:
            kept.append(program)
    return kept
