"""What guides a search before anything is judged: ways, steps and runs, roughly, by hand."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Trip
from optimizer.catalogue import book_for
from optimizer.engine.problem import build_problem
from optimizer.site import SpotLevel
from tests.yards import on_site, plain_rooms, plain_yard

BOOK = book_for("USD")


def ways(scenario):
    """Estimate of ways and steps, in money."""
    return build_problem(scenario, plain_rooms(), BOOK).guide.ways / 100


def budgeted(contingency, *trips):
    """The plain yard with a contingency, and with these trips."""
    yard = plain_yard(ceiling=None)
    budget = replace(yard.brief.budget, contingency=Decimal(contingency))
    return replace(yard, brief=replace(yard.brief, budget=budget, trips=trips or yard.brief.trips))


def test_a_way_from_every_end_of_a_trip_with_its_contingency():
    """Each end counts once, however many trips it has; half as much again is half as much again."""
    gate, door = Trip("gate", "table", 4), Trip("kitchen door", "table", 9)
    alone = ways(budgeted("0", gate)), ways(budgeted("0", door))
    assert min(alone) > 0
    assert ways(budgeted("0", gate, door, Trip("gate", "nook", 50))) == pytest.approx(sum(alone), abs=0.05)
    assert ways(budgeted("0.5", gate)) == pytest.approx(1.5 * alone[0], abs=0.05)


def test_ground_that_falls_has_steps():
    """Two risers a foot of what the ground falls over where rooms may stand: less than the whole yard's 4 ft."""
    levels = tuple(SpotLevel((x, y), 4.0 - y / 10) for x in (0, 60) for y in (0, 40))
    flat, falling = budgeted("0"), on_site(budgeted("0"), levels=levels)
    riser = float(BOOK.of("steps").price)
    steps = (ways(falling) - ways(flat)) / riser
    assert 2 * 1.0 < steps < 2 * 4.0
