"""Phases: what stands after each, and what a plan of phases must be careful about."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import Cost, CostLine, CostRange
from optimizer.catalogue import sized_rooms
from optimizer.concepts.case import Case
from optimizer.concepts.future_words import DIG_CAUTION
from optimizer.concepts.phases import machine_words, phase_cautions, phase_words, phases_of, standing_after
from optimizer.drawing.future_marks import LATER_ROLES
from optimizer.export import strip_svg
from optimizer.layout import Layout, Placement, placed_of
from optimizer.pipeline import phase_drawings
from optimizer.scenario import load_scenario

YARD = load_scenario("scenarios/fernhollow-court.yaml")
CORNERS = {"gathering area": (48, 67), "fire feature": (58, 96), "quiet nook": (20, 80), "water reserve": (24, 94)}


def phased(**phases):
    """The demonstration yard with rooms in these phases, by the first word of their name."""
    rooms = tuple(replace(room, phase=phases.get(room.name.split()[0], room.phase)) for room in YARD.brief.rooms)
    return replace(YARD, brief=replace(YARD.brief, rooms=rooms))


def layout_of(yard, *names):
    rooms = {room.name: room for room in sized_rooms(yard.brief)}
    sizes = {name: rooms[name].choices[0] for name in names or CORNERS}
    return Layout(tuple(Placement(n, s.label, *CORNERS[n], s.width_ft, s.depth_ft, "+y") for n, s in sizes.items()))


def placed(yard, *names):
    return placed_of(sized_rooms(yard.brief), layout_of(yard, *names))


def cost(*phases):
    amounts = tuple((number, Decimal(amount)) for number, amount in enumerate(phases, 1))
    return Cost((), amounts, sum((a for _, a in amounts), Decimal(0)), Decimal(0), Decimal(0))


@pytest.fixture(scope="module")
def option():
    """The fire in phase 2, measured with its ways."""
    yard = phased(fire=2)
    layout = layout_of(yard)
    case = Case.of(yard)
    return yard, case.described(layout, case.in_full(layout))


@pytest.fixture(scope="module")
def whole():
    """A concept of the demonstration yard with what may come later on its held ground."""
    case, layout = Case.of(YARD), layout_of(YARD)
    return case.advised(case.described(layout, case.in_full(layout)))


def test_a_room_of_a_later_phase_is_not_there_yet(option):
    """After phase 1 the fire, and legs that lead to nothing else, are missing; held ground is there from the first."""
    yard, whole = option
    first = standing_after(whole, placed(yard), 1)
    assert {place.room for place in first.layout.placements} == {"gathering area", "quiet nook", "water reserve"}
    assert 0 < len(first.appraisal.legs) < len(whole.appraisal.legs)
    assert not [way for way in first.appraisal.ways if "fire feature" in way.between]
    assert standing_after(whole, placed(yard), 2) == whole


def test_a_plan_for_each_phase(option):
    """Two plans with their phase in the title, the first without the fire; side by side in one picture."""
    yard, whole = option
    plans = phase_drawings(yard, whole)
    assert [plan.title.rpartition(", ")[2] for plan in plans.values()] == ["after phase 1", "after phase 2"]
    names = [{text.text for text in plan.texts} for plan in plans.values()]
    assert "fire feature" not in names[0]
    assert "fire feature" in names[1]
    told = [" ".join(text.text for text in plan.texts) for plan in plans.values()]
    assert [words.count("Phase 1: about") for words in told] == [1, 1]
    assert ["With what stands before it about" in words for words in told] == [False, True]
    strip = strip_svg(tuple(plans.values()))
    assert strip.count("<svg ") == 3
    assert strip.count("after phase") >= 4


def test_the_strip_is_a_picture(option):
    """It is well-formed, so that a browser shows it."""
    from xml.etree import ElementTree as ET

    root = ET.fromstring(strip_svg(tuple(phase_drawings(*option).values())))
    assert root.tag.endswith("svg")


def test_phases_are_those_of_what_stands():
    """Phase 1 always: the site is opened in it."""
    assert phases_of(placed(phased(fire=3))) == (1, 2, 3)
    assert phases_of(placed(phased(fire=3), "fire feature")) == (1, 3)


@pytest.mark.parametrize(("amount", "is_small"), [("24999.99", True), ("25000", False)])
def test_a_phase_too_small_to_come_back_for(amount, is_small):
    """Under 25,000, common practice, no source; a concept of one phase is never told so."""
    there = placed(phased(fire=2), "gathering area", "fire feature")
    small = [words for words in phase_cautions(YARD, there, cost("90000", amount), "USD") if "little" in words]
    assert bool(small) == is_small
    assert not list(phase_cautions(YARD, placed(YARD, "gathering area"), cost("9000"), "USD"))


def test_heavy_work_beyond_what_is_built_is_named():
    """A later fire behind the gathering, seen from the drive, has to pass it; the other way round nothing is said."""
    told = list(
        phase_cautions(YARD, placed(phased(fire=2), "gathering area", "fire feature"), cost("90000", "30000"), "USD")
    )
    assert len(told) == 1
    assert "the fire feature lies farther from the drive than the gathering area" in told[0]
    first = placed(phased(gathering=2), "gathering area", "fire feature")
    assert not list(phase_cautions(YARD, first, cost("90000", "30000"), "USD"))


def test_words_of_a_phase():
    """Its own cost with its range, rounded as everywhere, and what all up to it come to."""
    ends = [CostRange(Decimal(low), Decimal(high), n) for low, high, n in ((76000, 108000, 4), (24100, 39300, 5))]
    both = replace(cost("90400", "30200"), ranges=tuple(enumerate(ends, 1)))
    until = "until soil, levels and lines are checked."
    assert phase_words(both, 1, "USD") == f"Phase 1: about 90,000 USD; expect 75,000 to 110,000 USD {until}"
    assert phase_words(both, 2, "USD") == (
        f"Phase 2: about 30,000 USD; expect 24,000 to 39,000 USD {until} With what stands before it about 120,000 USD."
    )


def test_machines_of_a_phase(option):
    """Each entrance with its clear width; work by hand where it is paid for; nothing invented where none is given."""
    yard, whole = option
    assert machine_words(yard, whole, placed(yard), 1).startswith("Machines come in by the drive, 1")
    line = CostLine(2, "all", "poor access", Decimal(1), "share", Decimal("0.2"), Decimal(9))
    dear = replace(whole, appraisal=replace(whole.appraisal, cost=replace(cost("1", "2"), lines=(line,))))
    assert "done by hand" in machine_words(yard, dear, placed(yard), 2)
    assert "done by hand" not in machine_words(yard, dear, placed(yard), 1)
    closed = replace(yard, site=replace(yard.site, entrances=()))
    assert machine_words(closed, whole, placed(yard), 1) == "No entrance for machines is given: say where they come in."


def test_machines_of_what_comes_later(whole):
    """In the phase of the held ground, and by name: what brings each future, or that nothing drives in."""
    first, second = (machine_words(YARD, whole, placed(YARD), phase) for phase in (1, 2))
    for outlook in whole.futures:
        name = outlook.future.capitalize()
        by = f"{name} by {outlook.access.vehicle} from the" if outlook.access.is_found else f"{name} by crane alone"
        assert by in second
        assert name not in first


def test_an_owner_sees_what_may_come_in_its_phase_alone(whole):
    """The held ground of phase 2 is empty after phase 1; and every plan of a phase says what comes before digging."""
    plans = phase_drawings(YARD, whole, audience="owner")
    drawn = [bool({mark.role for mark in plan.marks} & LATER_ROLES) for plan in plans.values()]
    assert drawn == [False, True]
    assert all(DIG_CAUTION[:40] in " ".join(text.text for text in plan.texts) for plan in plans.values())


def test_an_owner_does_not_see_yet_what_is_held_for_a_later_phase(whole):
    """Of two held grounds, phases 2 and 3, the plan after phase 2 has what may come on the first alone."""
    rooms = YARD.brief.rooms
    reserve = next(room for room in rooms if room.name == "water reserve")
    third = replace(reserve, name="third reserve", phase=3)
    yard = replace(YARD, brief=replace(YARD.brief, rooms=(*rooms, third)))
    held = next(place for place in whole.layout.placements if place.room == reserve.name)
    layout = Layout((*whole.layout.placements, replace(held, room=third.name)))
    more = tuple(replace(outlook, room=third.name) for outlook in whole.futures)
    plans = phase_drawings(yard, replace(whole, layout=layout, futures=(*whole.futures, *more)), audience="owner")
    counts = [sum(mark.role == "later_water" for mark in plan.marks) for plan in plans.values()]
    assert counts == [0, counts[2] // 2, counts[2]]
    assert counts[2] > 0
