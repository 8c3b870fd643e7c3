"""The party's evening in the demonstration yard and in the plain one."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import appraise, party_measures
from optimizer.appraisal.party import Pinch
from optimizer.appraisal.party.pinch import remedy_of
from optimizer.brief import Guests, Trip
from optimizer.catalogue import Item, book_for, party_phases
from optimizer.circulation import Leg, ways
from optimizer.derived import Derived
from optimizer.layout import placed_of
from tests.yards import FOUR_AT_TABLE, plain_layout, plain_rooms, plain_yard, seating, stand

BOOK = book_for("USD")
TABLE = seating("table", "gathering", 14, 12, *FOUR_AT_TABLE)
SEATS = Item("bench", 0.5, 0.5, 6, 1.5, seats=3)
FIRE = seating("fire", "fire", 8, 8, Item("fire pit", 2, 2, 4, 4), SEATS)
LAID = (stand("table", 24, 16, 14, 12, choice="laid"), stand("fire", 10, 22, 8, 8, choice="laid"))


def measured(party=12, legs=None, **changes):
    """Measures of table and fire, with other legs than were laid where they are given."""
    yard, rooms = plain_yard(ceiling=None), plain_rooms(TABLE, FIRE)
    trips = (Trip("gate", "table", 4), Trip("table", "fire", 4))
    brief = replace(yard.brief, guests=Guests(4, party), trips=trips, **changes)
    yard, layout = replace(yard, brief=brief), plain_layout(*LAID, without=("cooker", "nook"))
    laid = ways(yard.site, brief, placed_of(rooms, layout))
    laid = laid if legs is None else replace(laid, legs=legs)
    return party_measures(yard, placed_of(rooms, layout), BOOK, laid)


def test_seats_and_ground_are_counted_from_the_drawing():
    """Four chairs and a bench for three; the table's room has 168 sq ft, of which furniture and chairs leave less."""
    found = measured()
    assert (found.people, found.seats, found.table) == (12, 7, 4)
    assert 0 < found.standing_sqft < 168 + 64
    assert [room.room for room in found.rooms] == ["table", "fire"]


def test_everybody_comes_and_goes_by_the_gate():
    """At the start and at the end all are at the gate, between them nobody is."""
    phases = measured().phases
    assert [phase.name for phase in phases] == [phase.name for phase in party_phases()]
    assert phases[0].people == phases[-1].people == (("gate", 12),)
    assert all("gate" not in dict(phase.people) for phase in phases[1:-1])


def test_a_large_party_has_people_without_a_place():
    """What 12 find, 100 do not: the rest has neither a seat nor ground, and is somewhere else."""
    small, large = measured(12), measured(100)
    assert small.without == 0
    holds = 100 - large.without
    assert 12 <= holds < 100
    assert dict(large.phases[1].people)["elsewhere"] == large.without


def test_who_stands_has_at_least_8_sqft_each():
    """The fullest room of a party that is too large still has the ground that its standing guests need."""
    for room in measured(100).rooms:
        assert room.standing_each_sqft is None or room.standing_each_sqft >= 8


def leg(width_ft):
    return Leg(((0.0, 18.0), (24.0, 18.0)), width_ft, "arrival", (("gate", "table"),))


def test_flow_on_a_leg_and_what_widening_it_costs():
    """12 people leave in 10 minutes by a way of 3 ft: 0.4 a minute and foot. 24 x 2 ft at 18 and 15 % are 993.60."""
    found = measured(legs=(leg(3.0),))
    assert found.worst is not None
    assert found.remedy is not None
    assert (found.worst.between, found.worst.at, found.worst.phase) == (("gate", "table"), "way", "leave")
    assert (found.worst.flow, found.worst.grade) == (pytest.approx(12 / 10 / 3), "A")
    assert found.remedy.amount == Decimal("993.60")
    assert found.remedy.words.startswith("widen the way between gate and table from 3 to 5 ft: 994 USD with")


def test_a_way_on_which_two_pass_needs_nothing():
    """At 5 ft nothing is asked; six people a minute for each of its feet are 30 a minute, for whom 6 ft are grade A."""
    assert measured(legs=(leg(5.0),)).remedy is None
    crowd = Pinch(("gate", "table"), "way", 5.0, "leave", 6.0, "B")
    placed = placed_of(plain_rooms(), plain_layout(*LAID, without=("cooker", "nook")))
    remedy = remedy_of(plain_yard(), placed, BOOK, crowd, leg(5.0))
    assert remedy is not None
    assert "from 5 to 6 ft" in remedy.words


def test_no_land_beside_the_way():
    """A way 2 ft from the boundary cannot grow to 5 ft, and has no price."""
    edge = Leg(((0.0, 1.6), (9.0, 1.6)), 3.0, "arrival", (("gate", "table"),))
    remedy = measured(legs=(edge,)).remedy
    assert remedy is not None
    assert remedy.amount is None
    assert "leaves no more" in remedy.words


def test_rooms_that_touch_are_walked_between_over_their_edge():
    """Table and nook side by side, with no leg between: the edge of 7 ft is where people walk."""
    nook = seating("nook", "nook", 8, 7, SEATS)
    yard, rooms = plain_yard(ceiling=None), plain_rooms(TABLE, nook)
    layout = plain_layout(LAID[0], stand("nook", 38, 18, 8, 7, choice="laid"), without=("cooker", "fire"))
    laid = replace(ways(yard.site, yard.brief, placed_of(rooms, layout)), legs=())
    worst = party_measures(yard, placed_of(rooms, layout), BOOK, laid).worst
    assert worst is not None
    assert (worst.between, worst.at, worst.width_ft) == (("nook", "table"), "edge", 7.0)


def test_the_appraisal_has_it():
    """The same measures stand in the appraisal."""
    yard, rooms, layout = plain_yard(), plain_rooms(TABLE, FIRE), plain_layout(*LAID)
    laid = ways(yard.site, yard.brief, placed_of(rooms, layout))
    assert appraise(Derived(yard, placed_of(rooms, layout)), BOOK).party == party_measures(
        yard, placed_of(rooms, layout), BOOK, laid
    )
