"""Losses of the score that no single measure shows: guests without a place, and trips to rooms that are left out."""

from dataclasses import replace

import pytest

from optimizer.appraisal import PartyMeasures, appraise
from optimizer.brief import Trip
from optimizer.catalogue import book_for, rates
from optimizer.concepts import losses_of
from optimizer.derived import Derived
from optimizer.engine.problem import build_problem
from optimizer.layout import placed_of
from tests.yards import plain_layout, plain_rooms, plain_yard


def losses(yard, *, left_out=(), **changes):
    """Losses of the plain layout by name, whatever of its appraisal is changed."""
    rooms = plain_rooms()
    appraisal = replace(appraise(Derived(yard, placed_of(rooms, plain_layout())), book_for("USD")), **changes)
    return dict(losses_of(yard, rooms, appraisal, left_out=left_out, worth_rate=0.0, wish_weights=0.0))


@pytest.mark.parametrize("people", [0, 1, 7])
def test_a_loss_for_each_person_without_a_place(people):
    found = losses(plain_yard(), party=PartyMeasures(without=people))["party"]
    assert found == pytest.approx(rates().party * people)


def walked(*trips):
    """The plain yard with these trips."""
    yard = plain_yard()
    return replace(yard, brief=replace(yard.brief, trips=trips))


def test_trips_of_a_room_that_is_left_out_are_charged():
    """10 ft for each end: 14 trips from a door to the kitchen, 24 from it to the table; a trip of others stays as it is."""
    yard = walked(Trip("kitchen door", "cooker", 14), Trip("cooker", "table", 24), Trip("gate", "table", 3))
    more = losses(yard, left_out={"cooker"})["walking"] - losses(yard)["walking"]
    assert more == pytest.approx(10 * (14 + 24))
    both = losses(yard, left_out={"cooker", "table"})["walking"] - losses(yard)["walking"]
    assert both == pytest.approx(10 * (14 + 2 * 24 + 3))


def test_the_engine_charges_the_same():
    """What it costs the engine to leave the cooker out rises by what the score adds."""
    without, with_trips = walked(), walked(Trip("kitchen door", "cooker", 14), Trip("cooker", "table", 24))
    absent = [
        build_problem(yard, plain_rooms(), book_for("USD")).rooms[1].absent_loss for yard in (without, with_trips)
    ]
    assert absent[1] - absent[0] == 100 * 10 * (14 + 24)


def test_a_jog_of_the_paving_costs_400():
    """Layout rule 28 in the demonstration's money, times the weight of order."""
    yard = plain_yard()
    assert [losses(yard, jogs=count)["jogs"] for count in (0, 3)] == [0, 1200 * yard.brief.weights.order]
