"""One call of what each budget buys: search, choose the steps, measure and name their concepts."""

import threading
import time
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from itertools import chain
from typing import Final

from optimizer.catalogue import existing_of, fixed_price, room_price
from optimizer.concepts.budgets.points import BudgetSet, points_of, steps_of, unit_of
from optimizer.concepts.budgets.search import BudgetAsked, BudgetSearch
from optimizer.concepts.budgets.told import told_options
from optimizer.concepts.case import Case
from optimizer.concepts.floor import floor_price
from optimizer.events import Emit, Event

FOR_WAYS: Final = Decimal("1.25")
"""The highest ceiling that is looked at holds all rooms at their dearest and so much for ways, steps and walls."""


def find_budgets(asked: BudgetAsked, *, emit: Emit, stop: threading.Event) -> BudgetSet:
    """Search until time is up or a person stops it, and tell the steps that were found."""
    began = time.monotonic()
    emit(Event("stage", {"stage": "reading the yard"}))
    search = BudgetSearch(asked, stop)
    emit(Event("stage", {"stage": "trying budgets"}))
    for found in search.run():
        emit(Event("option", {"found": found, "best": f"worth {_most_worth(search):g}"}))
    steps = steps_of(
        chain.from_iterable(search.offered.values()),
        lowest=asked.lowest,
        highest=asked.highest,
        most=asked.points,
        unit=unit_of(asked.highest),
    )
    emit(Event("stage", {"stage": "measuring"}))
    options = told_options(asked.case, steps)
    return BudgetSet(
        possible=search.possible.steps,
        points=tuple(points_of(steps, search.possible.most_worth, [option.id for option in options])),
        options=options,
        lowest=asked.lowest,
        highest=asked.highest,
        seconds=round(time.monotonic() - began, 2),
        seed=asked.seed,
        repeatable=asked.repeatable,
        stopped=stop.is_set(),
        layouts_found=len(search.bought),
    )


def usual_range(case: Case) -> tuple[Decimal, Decimal]:
    """From the least that what is required can cost to everything at its dearest with its ways; over all the finish
    levels that are offered.
    """
    levels = case.scenario.brief.finish_levels
    ranges = [_range(case.at_level(level.name)) for level in levels] or [_range(case)]
    return min(lowest for lowest, _ in ranges), max(highest for _, highest in ranges)


def _range(case: Case) -> tuple[Decimal, Decimal]:
    brief = case.scenario.brief
    dearest = sum(max(room_price(choice, room, case.book) for choice in room.choices) for room in case.rooms)
    once = fixed_price(brief, case.book, existing_of(case.scenario.site))
    highest = (once + dearest) * brief.budget.factor * FOR_WAYS + brief.budget.allowances.furniture
    unit = unit_of(highest)
    lowest = (floor_price(case) / unit).to_integral_value(ROUND_FLOOR) * unit
    return lowest, (highest / unit).to_integral_value(ROUND_CEILING) * unit


def _most_worth(search: BudgetSearch) -> float:
    return max((bought.worth for bought in chain.from_iterable(search.offered.values())), default=0.0)
