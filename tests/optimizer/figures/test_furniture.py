"""Ways and furniture of a figure stand where the plan has them, as high as their kind says."""

import numpy as np
import pytest
from shapely import Point
from shapely.geometry import box

from optimizer.catalogue import sized_rooms
from optimizer.circulation import Leg, way_polygon
from optimizer.figures import yard_3d
from optimizer.figures.furniture import furnished
from optimizer.layout import Layout, Placement, placed_of
from tests.sample_run import sample_option, sample_scenario

LEVEL_FT = 2.0


@pytest.fixture(scope="module")
def scenario():
    """The demonstration yard."""
    return sample_scenario()


def one_room(scenario, name, choice_of):
    """The corners of all that stands in a room alone in the yard, its front up the plan."""
    rooms = sized_rooms(scenario.brief)
    room = next(room for room in rooms if room.name == name)
    choice = choice_of(room.choices)
    place = Placement(name, choice.label, 30.0, 70.0, choice.width_ft, choice.depth_ft, "+y")
    solids = dict(furnished(scenario, placed_of(rooms, Layout((place,))), {name: LEVEL_FT}))
    return place, solids[f"{name}, furniture"].corners


def test_seat_walls_and_seats_stand_on_the_rooms_level(scenario):
    """The fire's piers are its highest, 28 in; all stands on the level and in the room."""
    place, corners = one_room(scenario, "fire feature", lambda choices: choices[-1])
    assert (corners[:, 2].min(), corners[:, 2].max()) == pytest.approx((LEVEL_FT, LEVEL_FT + 28 / 12))
    room = box(place.x_ft, place.y_ft, place.right_ft, place.top_ft).buffer(0.01)
    assert all(room.covers(Point(x, y)) for x, y in corners[:, :2])


def test_a_bought_panel_stands_between_the_water_and_the_window(scenario):
    """A screened reserve has 6 ft high panels on the sides towards the neighbour's window, at (112, 60)."""
    place, corners = one_room(scenario, "water reserve", lambda cs: next(c for c in cs if c.is_screened))
    assert corners[:, 2].max() == pytest.approx(LEVEL_FT + 6)
    assert corners[:, 0].max() == pytest.approx(place.right_ft, abs=0.2)


def test_a_room_without_anything_in_it_has_no_furniture(scenario):
    """The reserve that is not screened is kept clear: what may come later is not drawn."""
    rooms = sized_rooms(scenario.brief)
    room = next(room for room in rooms if room.name == "water reserve")
    choice = next(choice for choice in room.choices if not choice.is_screened)
    place = Placement(room.name, choice.label, 30.0, 70.0, choice.width_ft, choice.depth_ft, "+y")
    assert dict(furnished(scenario, placed_of(rooms, Layout((place,))), {room.name: LEVEL_FT})) == {}


def test_ways_are_laid_on_the_ground_where_the_plan_has_them(scenario):
    """The figure's ways cover what the legs pave, and the ground leaves it free."""
    leg = Leg(((10.0, 80.0), (10.0, 110.0)), 4.0, "main", ())
    placed = placed_of(sized_rooms(scenario.brief), sample_option().layout)
    with_ways, without = (yard_3d(scenario, placed, {}, None, legs=legs) for legs in ((leg,), ()))
    paved = way_polygon(scenario.site, placed, (leg,)).area
    assert covered(with_ways, "ways") == pytest.approx(paved, rel=1e-3)
    assert covered(without, "ground") - covered(with_ways, "ground") == pytest.approx(paved, rel=1e-2)


def covered(figure, name):
    """Area of the traces of a name on the plan."""
    return sum(_area(trace) for trace in figure.data if trace.name == name)


def _area(trace):
    corners = np.stack([trace.x, trace.y], axis=1)
    triangles = corners[np.stack([trace.i, trace.j, trace.k], axis=1)]
    (a, b, c) = (triangles[:, n] for n in range(3))
    return float(np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]).sum() / 2)
