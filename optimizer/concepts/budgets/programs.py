"""The most worth that money buys on floors: programs of rooms at their least prices, before they have places."""

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from optimizer.brief import WORTH_DIGITS, FinishLevel
from optimizer.catalogue import PriceBook, SizedRoom
from optimizer.engine.problem import Problem
from optimizer.engine.rules import PARTS


@dataclass(frozen=True, slots=True)
class Program:
    """A choice for each room, by its number, or None; what it costs at the least [cents], and its worth, both in its
    finish level, if it is of one.
    """

    choices: tuple[int | None, ...]
    cents: int
    worth: float
    level: FinishLevel | None = None

    def at_level(self, level: FinishLevel) -> "Program":
        """The program with its worth in a level; its price is that of the problem that it was made of."""
        return replace(self, worth=level.worth(self.worth), level=level)


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
            Program((*program.choices, choice), program.cents + cents, round(program.worth + worth, WORTH_DIGITS))
            for program in front
            for choice, cents, worth in offers
        )
    return Programs(tuple(front))


def programs_over(levels: Sequence[tuple[FinishLevel, Programs]]) -> Programs:
    """The programs of several finish levels that no other one beats, in its own level or in another."""
    of_levels = (program.at_level(level) for level, programs in levels for program in programs.front)
    return Programs(tuple(_unbeaten(of_levels)))


def at_prices(problem: Problem, book: PriceBook) -> Problem:
    """The problem with its limit on money counted by another price book; nothing else of it is counted anew."""
    count = PARTS["budget"].amounts
    assert count is not None, "the rule of the ceiling has amounts"
    amounts = count(problem.context, tuple(room.variants for room in problem.rooms), book)
    return replace(problem, amounts=tuple(amounts))


def least_cents(problem: Problem, choices: Sequence[int | None]) -> int:
    """Least price of the rooms of a program by the problem's prices, without what is charged once [cents]."""
    return sum(
        _least(problem, number, choice)
        for number, choice in enumerate(choices)
        if choice is not None and _places(problem, number, choice)
    )


def _offers(problem: Problem, number: int, room: SizedRoom) -> Iterator[tuple[int | None, int, float]]:
    """Choices of a room that have a place, each with its least price [cents] and its worth; and to do without it."""
    if not room.required:
        yield None, 0, 0.0
    for choice, sized in enumerate(room.choices):
        if _places(problem, number, choice):
            yield choice, _least(problem, number, choice), sized.worth


def _places(problem: Problem, number: int, choice: int) -> list[int]:
    """Variants of a room's choice that have a place."""
    known = problem.rooms[number]
    return [v for v, own in enumerate(known.variants) if own.choice == choice and known.allowed[v].any()]


def _least(problem: Problem, number: int, choice: int) -> int:
    budget = problem.budget
    assert budget is not None, "a problem of budgets has a ceiling"
    return min(budget.uses[number][variant] for variant in _places(problem, number, choice))


def _unbeaten(programs: Iterator[Program]) -> list[Program]:
    """By rising price those of more worth than all before."""
    kept: list[Program] = []
    for program in sorted(programs, key=lambda p: (p.cents, -p.worth)):
        if not kept or program.worth > kept[-1].worth:
            kept.append(program)
    return kept
