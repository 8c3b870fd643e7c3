"""Rooms that a concept puts into a later phase because the brief leaves that open: what they cost then, and why."""

from collections.abc import Iterator
from decimal import ROUND_UP, Decimal
from math import prod
from typing import Final

from optimizer.appraisal import Cost
from optimizer.catalogue import PriceBook, phase_in
from optimizer.concepts.words import capital
from optimizer.layout import Layout
from optimizer.quantities import RETURN
from optimizer.scenario import Scenario

_HUNDREDS: Final = Decimal("1e2")


def waiting_cost(layout: Layout, cost: Cost, book: PriceBook) -> Decimal:
    """What the waiting rooms cost in their phases, with coming back for them and every stated step."""
    more = 1 + book.of(RETURN).price
    return sum((_then(cost, name, phase) * more for name, phase in waiting_rooms(layout).items()), Decimal(0))


def waiting_rooms(layout: Layout) -> dict[str, int]:
    """Rooms that wait whole, each with its phase."""
    phases = {placement.room: phase_in(placement.choice) for placement in layout.placements}
    return {name: phase for name, phase in phases.items() if phase is not None}


def why_later(scenario: Scenario, layout: Layout, cost: Cost, name: str) -> str:
    """Say of a waiting room `in phase 2, since phase 1 would pass its limit by about 12,300 USD`: by its own price, to
    which ways and what its level asks for come on top.
    """
    phase, budget = waiting_rooms(layout)[name], scenario.brief.budget
    if budget.ceiling is None:
        return f"in phase {phase}"
    over = cost.phase(1) + _own(cost, name, phase) * budget.factor - budget.ceiling
    if over <= 0:
        return f"in phase {phase}, though by its own price phase 1 would keep its limit with it"
    about = f"{over.quantize(_HUNDREDS, ROUND_UP):,.0f} {scenario.currency}"
    return f"in phase {phase}, since phase 1 would pass its limit by about {about}"


def waiting_words(scenario: Scenario, layout: Layout, cost: Cost) -> tuple[str, ...]:
    """Say of each waiting room `the kitchen comes in phase 2, since ...`."""
    return tuple(f"the {name} comes {why_later(scenario, layout, cost, name)}" for name in waiting_rooms(layout))


def waiting_cautions(scenario: Scenario, layout: Layout, cost: Cost) -> Iterator[str]:
    """What to see to until a waiting room is built."""
    for words in waiting_words(scenario, layout, cost):
        yield (
            f"{capital(words)}: keep its ground and the machines' way to it free of whatever lasts, and have sleeves "
            "for its supplies laid under what is paved before."
        )


def _then(cost: Cost, name: str, phase: int) -> Decimal:
    """Builders' work on a room in a phase, with the steps of that phase."""
    steps = (1 + line.quantity for line in cost.lines if line.phase == phase and line.is_step)
    return _own(cost, name, phase) * prod(steps, start=Decimal(1))


def _own(cost: Cost, name: str, phase: int) -> Decimal:
    """A room's lines in a phase."""
    return sum((line.amount for line in cost.lines if (line.room, line.phase) == (name, phase)), Decimal(0))
