"""Counters and panels where they stand."""

from dataclasses import replace

import pytest
from shapely import LineString, Polygon

from optimizer.brief import RoomWish
from optimizer.catalogue import Item, SizedChoice, SizedRoom, kind_rules, sized_room
from optimizer.drawing.room_axes import furniture
from optimizer.fields.room_screens import bought_screen, layout_screens
from optimizer.layout import Layout, placed_of
from tests.yards import PLAIN_SITE, stand

ROOM = stand("nook", 10, 20, 8, 6)


def screens(room: SizedRoom, placement, *, lookers=None, ends=()):
    """Screens of one placed room."""
    return tuple(layout_screens(PLAIN_SITE, placed_of((room,), Layout((placement,))), lookers=lookers or {}, ends=ends))


@pytest.mark.parametrize(("towards", "corners"), [
    ((14, 60), [(18, 26), (10, 26)]),
    ((60, 60), [(18, 20), (18, 26), (10, 26)]),
    ((-9, 60), [(18, 26), (10, 26), (10, 20)]),
    ((-9, 0), [(10, 26), (10, 20), (18, 20)]),
    ((60, 0), [(10, 20), (18, 20), (18, 26)]),
    ((14, 23), []),
])  # fmt: skip
def test_a_panel_stands_towards_the_looker(towards, corners):
    """It is 6 ft high round the one or two sides beyond which the looker is."""
    screen = bought_screen(ROOM, towards, 1.0)
    assert screen.outline == LineString(corners)
    assert screen.top_z_ft == 7


@pytest.mark.parametrize("front", ["+x", "-x", "+y", "-y"])
def test_counters_stand_where_they_are_drawn(front):
    """Counters 3 ft, bar 3.5 ft, as the plan draws them; stools hide nothing, nor does a kitchen that looks."""
    kitchen = sized_room(RoomWish("cooker", "kitchen", bar_seats=3))
    choice = kitchen.choices[-1]
    size = (choice.width_ft, choice.depth_ft) if front[1] == "y" else (choice.depth_ft, choice.width_ft)
    placement = stand("cooker", 20, 20, *size, front, choice=choice.label)
    drawn = [Polygon(mark.rings[0]) for mark in furniture(placement, choice) if mark.role != "furniture.stool"]
    found = screens(kitchen, placement)
    assert len(found) == len(drawn)
    assert all(screen.outline.symmetric_difference(area).area < 1e-6 for screen, area in zip(found, drawn, strict=True))
    assert {screen.top_z_ft for screen in found} == {3.0, 3.5}
    assert screens(kitchen, placement, ends=("cooker",)) == ()


def test_seat_walls_and_panels_of_a_choice():
    """A seat wall is 20 in high; a table hides nothing; a panel stands towards each looker, also at an end."""
    items = (Item("seat wall", 1, 0, 6, 1.5), Item("table", 3, 3, 2, 2))
    plain = SizedChoice("plain", 8, 6, 4, 5.0, furniture=items)
    room = SizedRoom("nook", kind_rules("nook"), required=False, phase=1, choices=(plain,))
    assert [round(screen.top_z_ft * 12) for screen in screens(room, ROOM)] == [20]
    screened = replace(room, choices=(replace(plain, is_screened=True),))
    lookers = {"nook": [(14, 60), (14, -9)]}
    assert [screen.top_z_ft for screen in screens(screened, ROOM, lookers=lookers, ends=("nook",))] == [6, 6]
    assert len(screens(screened, ROOM)) == 1
    assert screens(room, stand("nook", 10, 20, 8, 6, choice="other")) == ()
