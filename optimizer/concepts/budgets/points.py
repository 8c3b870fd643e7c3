"""What each budget buys: of the layouts found, at each ceiling the one of most worth, and what it adds to the last.

Where the brief offers finish levels, a layout stands once in each, with its cost and worth there.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_CEILING, Decimal
from functools import partial
from itertools import accumulate, pairwise
from math import dist
from typing import Final, Literal

from optimizer.concepts.budgets.thinning import thinned
from optimizer.concepts.option import Option
from optimizer.layout import Layout

Thing = tuple[str, str]
"""A room and its choice."""
HARDLY_WORSE: Final = 0.03
"""Share of its ceiling by which a layout's score may be worse, so that rooms stay where the step before has them."""
STAYS_FT: Final = 3.0
"""A room stays if its middle moves no farther."""


@dataclass(frozen=True, slots=True)
class Bought:
    """A layout that holds every rule but the ceiling, with its exact cost of phase 1, its worth and its score."""

    layout: Layout
    cost: Decimal
    worth: float
    score: float
    level: str | None = None
    """Finish level that it has cost and worth in; None where the brief offers none."""

    @property
    def things(self) -> tuple[Thing, ...]:
        """Its rooms with their choices."""
        return tuple((place.room, place.choice) for place in self.layout.placements)


@dataclass(frozen=True, slots=True)
class NextThing:
    """What the next point adds, and how much its ceiling is higher.

    A room with its choice, None where none is added; and its finish level, None where that stays.
    """

    room: str | None
    choice: str | None
    amount: Decimal
    level: str | None = None


@dataclass(frozen=True, slots=True)
class BudgetPoint:
    """The best that was found for a ceiling. `bound`: by least prices, no layout within it has more worth."""

    ceiling: Decimal
    worth: float
    bound: float
    cost: Decimal
    status: Literal["proven", "bounded"]
    rooms: tuple[Thing, ...]
    enters: tuple[Thing, ...]
    leaves: tuple[Thing, ...]
    next: NextThing | None
    concept: str
    level: str | None = None
    """Finish level that it is built in; None where the brief offers none."""
    level_before: str | None = None
    """Level of the point before, where that is another."""


@dataclass(frozen=True, slots=True)
class BudgetSet:
    """Points by rising ceiling, and their concepts. `possible`: from each of these ceilings on, up to the highest, no
    more worth than this is possible, by least prices.
    """

    points: tuple[BudgetPoint, ...]
    possible: tuple[tuple[Decimal, float], ...]
    options: tuple[Option, ...]
    lowest: Decimal
    highest: Decimal
    seconds: float
    seed: int
    repeatable: bool
    stopped: bool
    layouts_found: int

    @property
    def highest_is_too_low(self) -> bool:
        """Whether what is required costs more than the highest ceiling, at the least prices."""
        return not self.possible


@dataclass(frozen=True, slots=True)
class Step:
    """A ceiling, and the layout of most worth within it."""

    ceiling: Decimal
    bought: Bought


def steps_of(found: Iterable[Bought], *, lowest: Decimal, highest: Decimal, most: int, unit: Decimal) -> list[Step]:
    """At most so many ceilings in whole units from the lowest to the highest, each of more worth than the one before.

    A ceiling is the least that the layouts found need for that worth. Of layouts of the same worth within it that are
    hardly worse than the best, the one is taken that leaves most rooms where the step before has them.
    """
    layouts = list(found)
    ceilings = sorted({max(lowest, _rounded_up(one.cost, unit)) for one in layouts})
    steps: list[Step] = []
    for ceiling in (c for c in ceilings if c <= highest):
        best = max((one for one in layouts if one.cost <= ceiling), key=lambda one: (one.worth, -one.score, -one.cost))
        if not steps or best.worth > steps[-1].bought.worth:
            steps.append(Step(ceiling, best))
    kept = thinned([float(s.ceiling) for s in steps], [s.bought.worth for s in steps], most)
    return list(accumulate((steps[number] for number in kept), partial(_staying, layouts)))


def _staying(layouts: Sequence[Bought], before: Step, step: Step) -> Step:
    """A step with the layout of its worth that moves fewest rooms from where they stood, of those hardly worse."""
    best, most = step.bought, step.bought.score + float(step.ceiling) * HARDLY_WORSE
    alike = (one for one in layouts if one.worth == best.worth and one.cost <= step.ceiling and one.score <= most)
    return replace(step, bought=max(alike, key=lambda one: (_stay(before.bought, one), -one.score, -one.cost)))


def _stay(before: Bought, after: Bought) -> int:
    """Rooms of which the middle stays where it was, or nearly."""
    both = [(old, new) for new in after.layout.placements if (old := before.layout.of(new.room)) is not None]
    return sum(dist(old.centre, new.centre) <= STAYS_FT for old, new in both)


def points_of(
    steps: Sequence[Step], bound_at: Callable[[Decimal], float], concepts: Sequence[str]
) -> list[BudgetPoint]:
    """Points of the steps, each with what enters and leaves against the one before, and what comes next."""
    points: list[BudgetPoint] = []
    for step, concept in zip(steps, concepts, strict=True):
        things, before = step.bought.things, points[-1].rooms if points else ()
        level, level_before = step.bought.level, points[-1].level if points else None
        bound = max(step.bought.worth, bound_at(step.ceiling))
        points.append(
            BudgetPoint(
                ceiling=step.ceiling,
                worth=step.bought.worth,
                bound=bound,
                cost=step.bought.cost,
                status="proven" if step.bought.worth >= bound else "bounded",
                rooms=things,
                enters=tuple(thing for thing in things if thing not in before),
                leaves=tuple(thing for thing in before if thing not in things),
                next=None,
                concept=concept,
                level=level,
                level_before=None if level_before == level else level_before,
            )
        )
    return [replace(point, next=_next(point, after)) for point, after in pairwise(points)] + points[-1:]


def _next(point: BudgetPoint, after: BudgetPoint) -> NextThing | None:
    level = None if after.level == point.level else after.level
    if not after.enters and level is None:
        return None
    room, choice = after.enters[0] if after.enters else (None, None)
    return NextThing(room, choice, after.ceiling - point.ceiling, level)


def _rounded_up(amount: Decimal, unit: Decimal) -> Decimal:
    return (amount / unit).to_integral_value(ROUND_CEILING) * unit


def unit_of(highest: Decimal) -> Decimal:
    """What ceilings are rounded up to: the power of ten that is a hundredth of the highest or less."""
    return Decimal(10) ** max(0, (highest / 100).adjusted())
