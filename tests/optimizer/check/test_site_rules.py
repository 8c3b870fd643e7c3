"""Rules about one room and the site, at their limits."""

from dataclasses import replace

import pytest

from optimizer.check import check_layout
from optimizer.layout import Placement, placed_of
from optimizer.scenario import Scenario
from optimizer.site import Setbacks
from tests.yards import PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, sized, stand


def broken(*changed: Placement, yard: Scenario | None = None, rooms=None, without=()) -> set[tuple[str, ...]]:
    """Rule and ends of every finding."""
    layout = plain_layout(*changed, without=without)
    findings = check_layout(yard or plain_yard(), placed_of(rooms or plain_rooms(), layout))
    return {(finding.rule, *finding.rooms) for finding in findings}


def test_the_greatest_setback_of_what_a_room_is_built_as():
    """A kitchen has paving, wall and equipment; the edge's largest of these holds, and no other edge's."""
    fire_only = (Setbacks(fire=30), Setbacks(), Setbacks(equipment=15), Setbacks())
    yard = on_site(plain_yard(), setbacks=fire_only)
    found = {entry for entry in broken(yard=yard) if entry[0] == "inside_setbacks"}
    assert found == {("inside_setbacks", "cooker", "rear"), ("inside_setbacks", "fire", "street")}


def test_over_the_boundary():
    """A room that reaches over a boundary without setbacks is still found."""
    yard = on_site(plain_yard(), setbacks=(Setbacks(),) * 4)
    assert ("inside_setbacks", "nook") in broken(stand("nook", 28, 34, 8, 7), yard=yard)
    assert ("inside_setbacks", "nook") not in broken(stand("nook", 28, 33, 8, 7), yard=yard)


def test_a_window_that_does_not_open():
    """A kitchen may stand beside a fixed window."""
    house = PLAIN_SITE.buildings[0]
    fixed = replace(house, windows=(replace(house.windows[0], opens=False),))
    beside = stand("cooker", 38, 16, 6, 8, "-x")
    assert ("clear_of_openings", "cooker", "bath window") in broken(beside)
    assert broken(beside, yard=on_site(plain_yard(), buildings=(fixed,))) == set()


def test_straight_out_of_a_door():
    """Fire keeps 10 ft straight out of a door; a table may stand there, behind the landing."""
    door = ("clear_of_openings", "fire", "kitchen door")
    assert door in broken(stand("fire", 16, 21, 8, 8), without=("table", "cooker"))
    assert door not in broken(stand("fire", 16, 22, 8, 8), without=("table", "cooker"))
    assert broken(stand("table", 15, 18, 14, 12), without=("fire", "cooker", "nook")) == set()


def test_the_kept_out_kinds():
    """Kept-out ground takes the kinds it allows."""
    rooms = plain_rooms(sized("grass", "lawn", 10, 5))
    lawn = stand("grass", 50, 20, 10, 5)
    assert broken(lawn, rooms=rooms) == set()
    shut = on_site(plain_yard(), keep_outs=(replace(PLAIN_SITE.keep_outs[0], allow=("path",)),))
    assert broken(lawn, rooms=rooms, yard=shut) == {("keep_outs", "grass", "drain strip")}


@pytest.mark.parametrize(("radius_ft", "clear"), [(5.6, True), (5.7, False)])
def test_fire_under_a_crown(radius_ft, clear):
    """Fire keeps out of a crown; the nearest corner of the fire is sqrt(32) ft from the trunk."""
    yard = on_site(plain_yard(), trees=(replace(PLAIN_SITE.trees[0], canopy_radius_ft=radius_ft),))
    assert (("fire_clear", "fire", "oak") not in broken(yard=yard)) is clear


def test_fire_under_a_roof():
    """Fire stands under no roof, even one that may hold it."""
    roof = replace(PLAIN_SITE.structures[0], outline=((8, 20), (20, 20), (20, 32), (8, 32)), may_hold=("fire",))
    assert broken(yard=on_site(plain_yard(), structures=(roof,))) == {("fire_clear", "fire", "old roof")}


def test_words_in_the_unit_of_the_file():
    """A finding tells lengths in the file's unit, while its amount stays in feet."""
    layout = plain_layout(stand("nook", 28, 32, 8, 7))
    finding = check_layout(replace(plain_yard(), units="m"), placed_of(plain_rooms(), layout))[0]
    assert finding.amount == pytest.approx(1.0)
    assert finding.unit == "ft"
    assert "0.30 m from rear, the setback is 0.61 m" in finding.words
