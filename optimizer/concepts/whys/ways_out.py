"""Ways out: changes that are applied to the scenario's text, solved and judged before anybody hears of them."""

import threading
import time
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from typing import Final

from optimizer.check import CheckCase
from optimizer.check.relations import miss_of
from optimizer.concepts.case import Case
from optimizer.concepts.option import WayOut
from optimizer.concepts.whys.bindings import bindings_of
from optimizer.concepts.whys.changes import Change, Group, figure_of, with_ceiling, with_figure
from optimizer.concepts.whys.cores import Cores
from optimizer.concepts.whys.trying import Found, Trial, tried
from optimizer.concepts.whys.words import money
from optimizer.derived import Derived
from optimizer.engine.problem import build_problem
from optimizer.errors import InputError
from optimizer.scenario.patch import Patch, patched

MOST_WAYS_OUT: Final = 4
_ENOUGH: Final = 2
"""Layouts found of each, of which the one that needs least is taken."""
_HALVED: Final = 3
_EACH: Final = 0.4
"""Share of the time left for each lower ceiling."""
_HUNDRED: Final = Decimal(100)
_SPARE: Final = Decimal("0.02")
"""A ceiling leaves so much above the cheapest plan that was found, so that a search under it soon finds some too."""


@dataclass(frozen=True, slots=True)
class Solved:
    """A way out with the layout that was found with it."""

    way_out: WayOut
    found: Found


class WaysOut:
    """Tries changes of one case, as long as there is time. `before`: what was asked for and is in its text already, so
    that a way out starts with it.
    """

    def __init__(self, case: Case, *, until: float, stop: threading.Event, before: Patch = ()) -> None:
        self._case, self._until, self._stop, self._before = case, until, stop, before
        self._lasted_s = 0.0

    @property
    def is_late(self) -> bool:
        """Whether the time is up, or will be before another change could be read and asked of as the last one was."""
        return self._stop.is_set() or time.monotonic() + self._lasted_s >= self._until

    def solved(self, groups: Iterable[Group], *, most: int = MOST_WAYS_OUT) -> tuple[Solved, ...]:
        """One of each group that works, `most` in all, in the groups' order."""
        found: list[Solved] = []
        for group in groups:
            if self.is_late or len(found) >= most:
                break
            found += self._first_of(group)
        return tuple(found)

    def _first_of(self, group: Group) -> Iterator[Solved]:
        for change in group:
            trial = None if self.is_late else self.tried(change)
            if trial is not None and trial.best is not None:
                yield self._least(change, trial)
                return

    def tried(self, change: Change, *, share: float = 1.0) -> Trial | None:
        """What is found with a change in a share of the time left; None where the text does not bear it, or nothing can
        be.
        """
        began = time.monotonic()
        try:
            case = Case.of(patched(self._case.scenario, change.patch))
        except (InputError, LookupError):
            return None
        until = began + share * (self._until - began)
        cores = Cores(case, until=until, stop=self._stop)
        if cores.fits_nothing(bindings_of(case)):
            return None
        problem = build_problem(case.scenario, case.rooms, case.book)
        self._lasted_s = max(self._lasted_s, time.monotonic() - began)
        seconds = max(0.1, until - time.monotonic())
        return tried(case, seconds=seconds, stop=self._stop, enough=_ENOUGH, problem=problem)

    def _least(self, change: Change, trial: Trial) -> Solved:
        """The change with no more in it than what was found needs, where that holds too."""
        assert trial.best is not None
        found = trial.best
        if change.ceiling is not None:
            found = self._cheapest(trial)
            ceiling = min(change.ceiling, rounded_up(found.cost * (1 + _SPARE)))
            change = self._if_held(with_ceiling(self._case, ceiling), found) or change
        elif change.relation is not None:
            change, found = self._least_loosened(change, change.relation, trial)
        return solved_by(self._case, change, found, before=self._before)

    def _cheapest(self, trial: Trial) -> Found:
        """The cheapest of what was found with much more money; then half of what it is above the ceiling is tried, and
        so on. What is not found so is not ruled out.
        """
        found, low = _of_least_cost(trial), self._case.scenario.brief.budget.ceiling or Decimal(0)
        for _ in range(_HALVED):
            if found.cost <= low:
                break
            middle = ((low + found.cost) / 2).quantize(Decimal(1))
            again = None if self.is_late else self.tried(with_ceiling(self._case, middle), share=_EACH)
            if again is not None and again.holds:
                found = _of_least_cost(again)
            else:
                low = middle
        return found

    def _least_loosened(self, change: Change, index: int, trial: Trial | None) -> tuple[Change, Found]:
        """A distance loosened by what a layout needs that was found; then half of that is tried, and so on."""
        relation = self._case.scenario.brief.relations[index]
        sign = 1 if relation.kind == "near" else -1
        least: tuple[Change, Found] | None = None
        for _ in range(_HALVED):
            if trial is None or not trial.holds:
                break
            missed_ft, number = min((self._missed_ft(index, one), n) for n, one in enumerate(trial.holding))
            found = trial.holding[number]
            held = self._if_held(with_figure(self._case, index, figure_of(relation) + sign * missed_ft), found)
            least = (held or change, found)
            change = with_figure(self._case, index, figure_of(relation) + sign * missed_ft / 2)
            trial = None if self.is_late or held is None else self.tried(change)
        assert least is not None
        return least

    def _if_held(self, change: Change, found: Found) -> Change | None:
        """A smaller change, where the layout that was found holds with it too."""
        return change if holds_with(self._case, change, found) else None

    def _missed_ft(self, index: int, found: Found) -> float:
        """By how much a layout misses a relation as it was asked for."""
        scenario = self._case.scenario
        check = CheckCase(Derived(scenario, self._case.placed(found.layout)))
        miss = miss_of(check, scenario.brief.relations[index])
        return 0.0 if miss is None else miss[0]


def holds_with(case: Case, change: Change, found: Found) -> bool:
    """Whether a layout keeps all rules of the changed scenario."""
    return Case.of(patched(case.scenario, change.patch)).judged(found.layout).holds


def _of_least_cost(trial: Trial) -> Found:
    return min(trial.holding, key=lambda one: one.cost)


def rounded_up(cost: Decimal) -> Decimal:
    """Money in whole hundreds that is enough."""
    return (cost / _HUNDRED).to_integral_value(ROUND_CEILING) * _HUNDRED


def solved_by(case: Case, change: Change, found: Found, *, before: Patch = ()) -> Solved:
    """A way out in words, with what the plan costs that was found with it."""
    text = f"{change.words}; a plan found with it costs {money(case.scenario, found.cost)}"
    return Solved(WayOut(text, (*before, *change.patch)), found)
