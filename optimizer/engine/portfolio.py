"""The explorer's programme: which tour comes next. Tours are short and start anew, since one long tour gets stuck."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from statistics import quantiles
from typing import Final

from optimizer.engine.explorer import Residuals, Tour
from optimizer.engine.ideas import IdeaGrounds
from optimizer.engine.problem import Problem, State

FIRST_REBUILDS: Final = 40
IDEA_EVERY: Final = 4
"""Every so many tours one follows an idea."""
REBUILDS: Final = (60, 100, 150)
_FIRST_SHARES: Final = (0.6, 0.9, 0.5)
"""Shares of the estimated price of the ways that are set aside, before any layout has been priced."""
_LEAST_PRICED = 5


@dataclass
class Purse:
    """What layouts cost beyond their rooms, as the judge priced them [cents]: a tour sets so much aside.

    It only guides: the exact ceiling is the judge's.
    """

    problem: Problem
    priced: list[int] = field(default_factory=list)
    places: Residuals = field(init=False)
    """The same by where rooms stand."""
    is_tight: bool = False
    """Whether nothing was found with something set aside: then as little as may be."""

    def __post_init__(self) -> None:
        """Begin with nothing known."""
        self.places = Residuals(self.problem)

    def set_aside(self, turn: int) -> int:
        """Cents for the ways, sometimes little, sometimes much."""
        if len(self.priced) < _LEAST_PRICED:
            return 0 if self.is_tight else round(_FIRST_SHARES[turn % len(_FIRST_SHARES)] * self.problem.guide.ways)
        low, middle, high = quantiles(self.priced, n=4)
        amounts = (min(self.priced), low, middle) if self.is_tight else (middle, low, high)
        return max(0, round(amounts[turn % 3]))

    def likely(self, state: State) -> int:
        """Cents that the ways of a layout will likely cost, by what they cost of others that are alike."""
        return self.set_aside(0) if len(self.priced) < _LEAST_PRICED else round(self.places.at(state))

    def learn(self, state: State, phase_1: int) -> None:
        """Take over the exact cost of a layout in phase 1, less fixed charges [cents]."""
        self.priced.append(phase_1 - self.of_rooms(state))
        self.places.learn(state, self.priced[-1])

    def of_rooms(self, state: State) -> int:
        """Cost of the rooms with their likely runs [cents]."""
        budget, runs = self.problem.budget, self.problem.guide.runs
        placed = [(room, spot.variant) for room, spot in enumerate(state) if spot is not None]
        uses = [runs[room][v] + (0 if budget is None else budget.uses[room][v]) for room, v in placed]
        return sum(uses)


def first_tours(seed: int, starts: Sequence[State], set_aside: int) -> tuple[Tour, ...]:
    """Short tours that soon give something to show, from each layout given and from nothing."""
    return tuple(Tour(FIRST_REBUILDS, seed, start=start, set_aside=set_aside) for start in (*starts, None))


def tour_of(
    problem: Problem,
    turn: int,
    *,
    seed: int,
    purse: Purse,
    best: Sequence[State],
    ideas: IdeaGrounds | None = None,
    met: frozenset[str] = frozenset(),
) -> Tour:
    """The tour of a turn: one in four follows an idea, where the yard offers any, first of all those that are not `met`
    by a known layout; the others are `_ordinary`.

    The same turn of the same seed is the same tour, whatever the time.
    """
    if ideas is None or not ideas.offered:
        return _ordinary(problem, turn, seed=seed + 1 + turn, purse=purse, best=best)
    cycle, place = divmod(turn, IDEA_EVERY)
    if place == IDEA_EVERY - 1:
        return _of_idea(problem, cycle, ideas, seed=seed + 1 + turn, purse=purse, best=best, met=met)
    return _ordinary(problem, turn - cycle, seed=seed + 1 + turn, purse=purse, best=best)


def _ordinary(problem: Problem, turn: int, *, seed: int, purse: Purse, best: Sequence[State]) -> Tour:
    """Free, insisting on every room, from one of the best layouts, without a room or with it; in one of six a kitchen
    may wait on its pad, which is worth a look where money lacks alone.
    """
    everything, optional = frozenset(problem.optional), problem.optional
    kind, cycle = turn % 6, turn // 6
    one = frozenset(optional[cycle % len(optional) : cycle % len(optional) + 1]) if optional else frozenset[int]()
    return Tour(
        REBUILDS[turn % len(REBUILDS)],
        seed,
        without=one if kind == 4 else frozenset(),
        insist=everything if kind in (0, 2) else one if kind == 5 else frozenset(),
        set_aside=purse.set_aside(cycle),
        start=best[cycle % len(best)] if kind in (2, 3) and best else None,
        may_wait=kind == 1,
    )


def _of_idea(
    problem: Problem,
    turn: int,
    ideas: IdeaGrounds,
    *,
    seed: int,
    purse: Purse,
    best: Sequence[State],
    met: frozenset[str],
) -> Tour:
    """On the ground of the idea whose turn it is, of those not met first, with every room: from one of the best
    layouts, what stands off that ground taken up, or from nothing.
    """
    again = turn // len(ideas.offered)
    ground = ideas.of_turn(turn, best, met)
    start = best[again % len(best)] if best and again % 2 == 0 else None
    return Tour(
        REBUILDS[turn % len(REBUILDS)],
        seed,
        insist=frozenset(problem.optional),
        set_aside=purse.set_aside(again),
        start=None if start is None or ground is None else ground.kept_of(start),
        ground=ground,
    )
