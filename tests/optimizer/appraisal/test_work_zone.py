"""Distances and landings along a counter that is drawn by hand."""

from dataclasses import replace

import pytest

from optimizer.appraisal import WorkZone, work_zone
from optimizer.brief import Equipment, RoomWish
from optimizer.catalogue import Item, sized_room
from tests.yards import sized

PLAIN = sized("cooker", "kitchen", 12, 9).choices[0]


def zone(*furniture):
    """Work zone of a kitchen of 12 x 9 ft, its bar's counter from y = 4 to 6."""
    return work_zone(replace(PLAIN, furniture=furniture))


CORNER = Item("counter", 0, 4, 2, 2)


def test_sides_run_from_front_to_front():
    """Grill (2, 1.5) on the side leg, sink (6, 4) along the bar: 4 ft over and 2 1/2 ft out; there and back."""
    found = zone(Item("grill", 0, 0, 2, 3), CORNER, Item("counter", 2, 4, 3, 2), Item("sink", 5, 4, 2, 2))
    assert found.sides_ft == (("grill", "sink", pytest.approx(4.72, abs=0.01)),)
    assert found.round_ft == pytest.approx(2 * 4.72)
    assert found.off_sides == ()


def test_what_stands_too_near_or_too_far_is_named():
    """Sink and refrigerator side by side are 2 ft apart, 4 to 9 ft are asked; preparation may be near."""
    found = zone(CORNER, Item("preparation", 2, 4, 3, 2), Item("sink", 5, 4, 2, 2), Item("refrigerator", 7, 4, 2, 2))
    assert [side[:2] for side in found.off_sides] == [("sink", "refrigerator")]
    far = zone(Item("sink", 2, 4, 2, 2), Item("counter", 4, 4, 8, 2), Item("refrigerator", 12, 4, 2, 2))
    assert [side[2] for side in far.off_sides] == [10.0]


def test_landings_are_counted_to_the_next_piece():
    """24 in of corner and 36 of preparation on one side of the sink, nothing on the other."""
    found = zone(CORNER, Item("preparation", 2, 4, 3, 2), Item("sink", 5, 4, 2, 2), Item("refrigerator", 7, 4, 2, 2))
    by_name = {landing.at: landing for landing in found.landings}
    assert by_name["sink"].found_in == (0, 60)
    assert by_name["preparation"].is_kept
    assert found.missing == ("sink", "refrigerator")


def test_trash_from_the_sink():
    """Front to front: half a sink and half a drawer."""
    assert zone(CORNER, Item("sink", 2, 4, 2, 2), Item("trash drawer", 4, 4, 1.5, 2)).trash_ft == pytest.approx(1.75)
    assert zone(CORNER, Item("sink", 2, 4, 2, 2)).trash_ft is None


def test_a_kitchen_without_equipment():
    """One run of plain counter has no work to measure."""
    assert zone(Item("counter", 0, 4, 8, 2)) == WorkZone()
    assert zone() == WorkZone()


NAMES = ("grill", "preparation", "sink", "refrigerator", "trash drawer")


@pytest.mark.parametrize("level", ["modest", "comfortable", "generous"])
def test_the_catalogues_full_kitchen_has_every_landing(level):
    """All five, as the example wishes them: every level has the counter that NKBA asks for, trash within 3 ft."""
    kitchen = sized_room(RoomWish("cooker", "kitchen", equipment=tuple(map(Equipment, NAMES)), bar_seats=4))
    found = work_zone(kitchen.choice(level))
    assert found.missing == ()
    assert found.trash_ft is not None
    assert found.trash_ft <= 3
    assert found.round_ft <= 26


@pytest.mark.parametrize("count", [1, 2, 3, 4, 5])
def test_the_generous_level_has_every_landing(count):
    """However many of the pieces are wished for, in any order."""
    kitchen = sized_room(RoomWish("cooker", "kitchen", equipment=tuple(map(Equipment, NAMES[:count])), bar_seats=2))
    assert work_zone(kitchen.choices[-1]).missing == ()
