"""Who is to blame for a broken rule, beyond the room that it is told of."""

from dataclasses import replace

import pytest
from shapely import Point

from optimizer.brief import Relation, SunWish
from optimizer.catalogue import Cover, Item
from optimizer.check import check_layout
from optimizer.check.blame import blamed, standing_between
from optimizer.layout import Layout, placed_of
from optimizer.site import KeepOut, SpotLevel
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized, stand

PLACED = placed_of(plain_rooms(), plain_layout())


def rooms_of(rule, yard, rooms, layout):
    """Rooms of the findings of one rule."""
    return [found.rooms for found in check_layout(yard, placed_of(rooms, layout)) if found.rule == rule]


@pytest.mark.parametrize(
    ("hinders", "names"),
    [
        # Any one of two, either of two, neither.
        (lambda there: {"fire", "nook"} <= there, ("fire", "nook")),
        (lambda there: "fire" in there, ("fire",)),
        (lambda there: bool({"fire", "nook"} & there), ("cooker", "fire", "nook")),
        (lambda there: True, ()),
    ],
)
def test_but_for_whom(hinders, names):
    """Rooms without any one of which it holds; all where it takes all away; none where that does not help."""
    others = [room for room in PLACED if room.name != "table"]
    assert blamed(PLACED, others, lambda left: not hinders({room.name for room in left})) == names


def test_only_what_a_walk_may_be_led_round_is_asked():
    """Rooms that no walk of 20 ft between two points 10 ft apart comes near to stand aside; 6 ft are for stepping round."""
    ends = Point(0, 0), Point(10, 0)
    rooms = [sized(name, "nook", 8, 7) for name in ("near", "far", "beside", "aside")]
    places = [stand("near", 1, 5, 8, 7), stand("far", 1, 30, 8, 7), stand("beside", 17.9, 0, 8, 7)]
    placed = placed_of(rooms, Layout((*places, stand("aside", 18.1, 0, 8, 7))))
    assert [room.name for room in standing_between(placed, ends, 20.0)] == ["near", "beside"]


def test_a_roof_too_near_a_fire_is_its_rooms():
    """The words speak of the roof, the finding of the room that has it."""
    roofed = replace(sized("nook", "nook", 8, 7).choices[0], cover=Cover(8.0, 0.5))
    rooms = plain_rooms(replace(sized("nook", "nook", 8, 7), choices=(roofed,)))
    layout = plain_layout(stand("nook", 10, 32, 8, 7))
    found = [f for f in check_layout(plain_yard(), placed_of(rooms, layout)) if f.rule == "fire_clear"]
    assert ("fire", "nook") in [finding.rooms for finding in found]
    assert any("the roof over nook" in finding.words for finding in found)


def test_a_neighbours_roof_takes_the_sun():
    """A nook north of a roofed table has no sun at noon but for that roof, and names it."""
    table = sized("table", "gathering", 14, 12, required=True)
    table = replace(table, choices=(replace(table.choices[0], cover=Cover(9.0, 1.0)),))
    wish = SunWish("sun", 11, 13, (12,), least_hours=1.5)
    rooms = plain_rooms(table, sized("nook", "nook", 8, 7, sun=wish))
    open_yard = on_site(plain_yard(), buildings=(), trees=(), structures=(), surroundings=())
    layout = Layout((stand("table", 24, 16, 14, 12), stand("nook", 28, 31, 8, 7)))
    assert rooms_of("sun_least", open_yard, rooms, layout) == [("nook", "table")]


def test_who_stands_before_what_should_be_seen():
    """The room whose counter hides some of a pond from a nook is to blame as well, one beside the view is not."""
    counter = sized("cooker", "kitchen", 2, 10)
    counter = replace(counter, choices=(replace(counter.choices[0], furniture=(Item("counter", 0, 0, 2, 10),)),))
    rooms = plain_rooms(sized("pond", "reserve", 9, 9), counter)
    layout = Layout(
        (
            stand("nook", 10, 20, 8, 8),
            stand("pond", 40, 19.5, 9, 9),
            stand("cooker", 37, 19, 2, 10),
            stand("table", 20, 30, 14, 10),
        )
    )
    yard = plain_yard(Relation(("nook", "pond"), "in_view", share=0.99))
    assert rooms_of("in_view", yard, rooms, layout) == [("nook", "pond", "cooker")]


def falling(rear_ft):
    """The plain yard, 0.9 ft high along the house and so high at the rear boundary."""
    spots = (((0, 12), 0.9), ((60, 12), 0.9), ((0, 40), rear_ft), ((60, 40), rear_ft))
    return on_site(plain_yard(), levels=tuple(SpotLevel(at, z) for at, z in spots))


def test_water_kept_in_by_a_neighbour():
    """A table whose lower edge a nook closes would drain without it; the nook, near the rear, has itself to blame."""
    for x_ft, found in ((24, [("table", "nook"), ("nook",)]), (44, [("nook",)])):
        layout = Layout((stand("table", 24, 16, 14, 12), stand("nook", x_ft, 28, 8, 7)))
        assert rooms_of("drains", falling(-3.0), plain_rooms(), layout) == found


def test_who_closes_a_room_off():
    """A fire in the only gap between two ponds is to blame that nobody comes to the nook behind it."""
    keep = KeepOut("ditch", ((0, 26), (22, 26), (22, 30), (0, 30)))
    more = KeepOut("pond", ((34, 26), (60, 26), (60, 30), (34, 30)))
    yard = on_site(plain_yard(), keep_outs=(keep, more), trees=(), structures=())
    rooms = plain_rooms()
    free = Layout((stand("nook", 24, 32, 8, 7),))
    shut = Layout((*free.placements, stand("fire", 23, 22, 8, 8)))
    assert rooms_of("reachable", yard, rooms, free) == []
    assert rooms_of("reachable", yard, rooms, shut) == [("nook", "fire")]
