"""What stands after each phase, and who pays for it: no phase for work of a later one."""

from dataclasses import replace

import pytest

from optimizer.appraisal import priced
from optimizer.appraisal.take_off import all_charges
from optimizer.brief import Brief, Choice, Guests, RoomWish, Trip
from optimizer.catalogue import demo_price_book, sized_rooms
from optimizer.circulation import way_polygon
from optimizer.concepts.counted import take_off_of
from optimizer.derived import Derived, stages_of
from optimizer.grading import Earth, Flight
from optimizer.layout import Layout, Placement, placed_of
from optimizer.quantities import Counted, parts_of
from optimizer.quantities.outlines import paved_pieces
from optimizer.scenario import Scenario
from tests.optimizer.quantities.conftest import SITE

BOOK = demo_price_book()
WISHES = (
    RoomWish("table", "gathering", choices=(Choice("ten by twenty", 20, 10, 6, 4),)),
    RoomWish("far table", "gathering", phase=2, choices=(Choice("ten by twenty", 20, 10, 6, 4),)),
)
BRIEF = Brief(Guests(4, 12), WISHES, trips=(Trip("door", "table", 10), Trip("door", "far table", 10)))
NEAR, FAR = (
    Placement(w.name, "ten by twenty", x, y, 20, 10, "+y") for w, x, y in zip(WISHES, (40, 10), (30, 66), strict=True)
)


def standing(*places, brief=BRIEF):
    here = Scenario("yard", "ft", "USD", SITE, brief, "", "")
    return Derived(here, placed_of(tuple(sized_rooms(brief)), Layout(places)))


def amounts(derived):
    """Quantity by phase and item, as floats, of what is charged for the site."""
    found = all_charges(derived, BOOK)
    return {(c.phase, c.item): float(c.quantity) for c in found if c.room == "site" and c.quantity}


@pytest.mark.parametrize("item", ["path paving", "spoil carted away", "lawn repair", "light"])
def test_each_phase_pays_for_its_own(item):
    """Phase 1 pays what it would for its room alone, phase 2 the rest of what both ask for."""
    alone, both = amounts(standing(NEAR)), amounts(standing(NEAR, FAR))
    at_once = tuple(replace(wish, phase=1) for wish in WISHES)
    together = amounts(standing(NEAR, FAR, brief=replace(BRIEF, rooms=at_once)))
    assert both[1, item] == pytest.approx(alone[1, item], rel=0.05)
    assert both[2, item] > 0
    assert both[1, item] + both[2, item] == pytest.approx(together[1, item], abs=0.02)


def test_plan_and_money_have_the_same_ways():
    """What phase 1 paves is the ground of the legs that its plan shows; both phases together are all ways."""
    derived = standing(NEAR, FAR)
    first, whole = stages_of(derived).values()
    found = amounts(derived)
    assert whole is derived
    assert 0 < len(first.laid.legs) < len(whole.laid.legs)
    drawn = way_polygon(SITE, first.placed, first.laid.legs)
    assert float(found[1, "path paving"]) == pytest.approx(drawn.area, abs=0.01)
    assert float(found[1, "path paving"] + found[2, "path paving"]) == pytest.approx(derived.paths.area, abs=0.02)


def test_work_by_hand_is_paid_where_it_is_done():
    """Where no machine comes, phase 2 pays for its own paving, ways and spoil by hand, and phase 1 for none of it."""
    narrow = replace(SITE.entrances[0], width_ft=3)
    derived, alone = standing(NEAR, FAR), standing(NEAR)
    by_hand = [
        {c.phase: c.quantity for c in all_charges(there, BOOK) if c.item == "poor access"}
        for there in (replace_site(derived, narrow), replace_site(alone, narrow))
    ]
    assert float(by_hand[0][1]) == pytest.approx(float(by_hand[1][1]), rel=0.05)
    assert by_hand[0][2] > 20 * 10 * BOOK.of("unit paving").price


def replace_site(derived, entrance):
    here = replace(derived.scenario, site=replace(SITE, entrances=(entrance,)))
    return Derived(here, derived.placed)


def test_held_ground_stands_from_the_first():
    """A reserve of phase 2 is kept in phase 1: nothing is left out of what stands then."""
    brief = replace(BRIEF, rooms=(WISHES[0], RoomWish("tub", "reserve", phase=2, futures=("hot tub",))), trips=())
    tub = next(room for room in sized_rooms(brief) if room.name == "tub").choices[0]
    derived = standing(NEAR, Placement("tub", tub.label, 4, 60, tub.width_ft, tub.depth_ft, "+y"), brief=brief)
    assert stages_of(derived) == {1: derived}


def test_parts_stand_under_the_line_of_their_phase():
    """Ways and lights of each phase consist of its own: their parts add up to the line, and to no more in all."""
    derived = standing(NEAR, FAR)
    charges = all_charges(derived, BOOK)
    lines, parts = amounts(derived), parts_of(derived, charges)
    for line, item in (("path paving", "paving, net"), ("light", "fixtures along ways")):
        own = {p.phase: p.quantity for p in parts if (p.room, p.line, p.item) == ("site", line, item)}
        assert own == {phase: lines[phase, line] for phase in (1, 2)}
    base = {p.phase: p.quantity for p in parts if (p.line, p.item) == ("path paving", "base, ground")}
    ways = next(piece for piece in paved_pieces(derived, Counted(derived, charges).build_up) if piece.room == "site")
    assert sum(base.values()) == pytest.approx(ways.base_sqft, abs=0.02)


def test_a_rule_says_of_what_it_counts():
    """The sum of all phases stands under each of their lines, and says so; of one phase nothing is said."""
    for places, is_said in (((NEAR, FAR), True), ((NEAR,), False)):
        derived = standing(*places)
        parts = take_off_of(derived, priced(derived, BOOK), BOOK).parts
        told = {p.phase: "all phases together" in p.how for p in parts if (p.line, p.item) == ("light", "by rule")}
        assert told == dict.fromkeys((1, 2) if is_said else (1,), is_said)


def test_steps_and_earth_belong_to_the_phase_of_their_rooms():
    """A flight from the door to each table, earth under each: after phase 1 the near one's alone, its treads likewise."""
    derived = standing(NEAR, FAR)
    near, far = (
        Flight(("door", name), risers, 6, 14, 4, (50, 25), (0, 1), 0, needs_handrail=False, needs_guard=False)
        for name, risers in (("table", 2), ("far table", 3))
    )
    earth = tuple(Earth(name, 1.0, 0.5) for name in ("table", "far table"))
    vars(derived)["grading"] = replace(derived.grading, flights=(near, far), earth=earth)
    first = stages_of(derived)[1].grading
    assert (first.flights, first.earth) == ((near,), earth[:1])
    assert (amounts(derived)[1, "steps"], amounts(derived)[2, "steps"]) == (2, 3)
    parts = parts_of(derived, all_charges(derived, BOOK))
    assert [(p.phase, p.quantity) for p in parts if p.item == "treads"] == [(1, 4), (2, 8)]
