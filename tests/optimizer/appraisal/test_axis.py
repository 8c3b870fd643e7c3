"""Lines of sight out of the house, and where ways meet. The door looks along x = 20, the window along x = 40."""

from dataclasses import replace

import pytest

from optimizer.appraisal.axis import axis_hits, centred_rooms, focal_point
from optimizer.circulation import Way
from optimizer.layout import Layout, placed_of
from optimizer.site import Building, Structure, Tree
from tests.yards import PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, sized, stand


def hits(scenario=None, rooms=None, layout=None):
    """What each opening meets, and how far off."""
    found = axis_hits(scenario or plain_yard(), placed_of(rooms or plain_rooms(), layout or plain_layout()))
    return {hit.opening: (hit.meets, hit.off_ft) for hit in found}


def test_nothing_on_purpose():
    """Nearest to the door's line is the fire's middle at x = 14, 6 ft off; to the window's the nook's, 8 ft off."""
    assert hits() == {"kitchen door": (None, pytest.approx(6)), "bath window": (None, pytest.approx(8))}


@pytest.mark.parametrize(("x_ft", "meets"), [(16.0, "fire"), (17.0, "fire"), (17.01, None), (14.9, None)])
def test_a_fire_within_a_foot_of_the_line(x_ft, meets):
    """Its middle, 4 ft in, may lie 1 ft off the line at x = 20 and no more."""
    assert hits(layout=plain_layout(stand("fire", x_ft, 22, 8, 8)))["kitchen door"][0] == meets


def test_a_tree_and_a_structure_count():
    """Each in the line of one opening."""
    shelter = Structure("shelter", ((36, 30), (44, 30), (44, 38), (36, 38)))
    yard = on_site(plain_yard(), trees=(Tree("elm", (20.5, 36), 1, 4),), structures=(shelter,))
    assert hits(yard) == {"kitchen door": ("elm", pytest.approx(0.5)), "bath window": ("shelter", pytest.approx(0))}


def test_a_bed_by_its_end():
    """A bed of 10 x 4 from x = 20: its left end lies on the line; set upright, its middle is 2 ft off, its ends too."""
    rooms = plain_rooms(sized("roses", "bed", 10, 4))
    lying = plain_layout(stand("roses", 20, 32, 10, 4), without=("nook",))
    upright = plain_layout(stand("roses", 20, 26, 4, 10), without=("nook",))
    assert hits(rooms=rooms, layout=lying)["kitchen door"] == ("roses", pytest.approx(0))
    assert hits(rooms=rooms, layout=upright)["kitchen door"] == (None, pytest.approx(2))


def test_a_table_is_no_aim():
    """A gathering in the middle of the line is not what rule 17 asks for."""
    layout = plain_layout(stand("table", 13, 16, 14, 12), without=("fire", "nook"))
    assert hits(layout=layout)["kitchen door"][0] is None


def test_the_line_ends_at_the_next_building():
    """A shed in the line hides the elm behind it: to the line's end at y = 25 it is 11 ft."""
    shed = Building("shed", ((18, 25), (22, 25), (22, 28), (18, 28)))
    yard = on_site(plain_yard(), trees=(Tree("elm", (20, 36), 1, 4),), buildings=(*PLAIN_SITE.buildings, shed))
    assert hits(yard, layout=Layout(()))["kitchen door"] == (None, pytest.approx(11))


def test_the_widest_door_counts():
    """Of two doors the wider one, the first of two as wide."""
    (house,) = PLAIN_SITE.buildings
    door = house.doors[0]
    wide = replace(house, doors=(door, replace(door, name="wide", width_ft=8), replace(door, name="too", width_ft=8)))
    assert set(hits(on_site(plain_yard(), buildings=(wide,)))) == {"wide", "bath window"}


def test_nothing_to_look_at_or_from():
    """A bare yard has no hit to measure, a yard without openings no line."""
    bare = on_site(plain_yard(), trees=(), structures=())
    assert hits(bare, layout=Layout(())) == {"kitchen door": (None, None), "bath window": (None, None)}
    assert axis_hits(on_site(bare, buildings=()), placed_of((), Layout(()))) == ()


@pytest.mark.parametrize(("x_ft", "centred"), [(13.0, ("table",)), (13.08, ("table",)), (13.1, ()), (20.0, ())])
def test_a_table_centred_on_the_door(x_ft, centred):
    """Its middle, 7 ft in, may lie 1 in off the door's line at x = 20."""
    layout = plain_layout(stand("table", x_ft, 16, 14, 12), without=("fire", "nook", "cooker"))
    assert centred_rooms(PLAIN_SITE, layout) == centred


def way(*points):
    """A way along points."""
    return Way(("a", "b"), 3.0, points, 0.0)


def test_most_ways_meet_at_the_focal_point():
    """Three ways cross at (10, 10), two at (30, 10)."""
    ways = (way((0, 10), (40, 10)), way((10, 0), (10, 20)), way((0, 0), (20, 20)), way((30, 0), (30, 20)))
    assert focal_point(ways, Layout(())) == ((pytest.approx(10), pytest.approx(10)), 3)


def test_ways_meet_outside_rooms():
    """A room over the crossing leaves the other meeting place, and none where all of it is covered."""
    ways = (way((0, 10), (40, 10)), way((10, 0), (10, 20)), way((0, 0), (20, 20)), way((30, 0), (30, 20)))
    assert focal_point(ways, Layout((stand("table", 4, 4, 12, 12),))) == ((30, 10), 2)
    assert focal_point(ways, Layout((stand("table", 0, 0, 40, 20),))) is None


def test_lone_ways_have_no_focal_point():
    """No way, one way, or two apart."""
    assert focal_point((), Layout(())) is None
    assert focal_point((way((0, 0), (9, 0)),), Layout(())) is None
    assert focal_point((way((0, 0), (9, 0)), way((0, 9), (9, 9))), Layout(())) is None
