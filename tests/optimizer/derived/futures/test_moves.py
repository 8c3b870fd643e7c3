"""What a vehicle sweeps, against plane geometry: a rectangle w x l whose middle runs on a circle of radius R keeps
R - w / 2 from the centre on its inner side, and its outer corners run at sqrt((R + w / 2)^2 + (l / 2)^2).
"""

from math import cos, hypot, radians, sin, sqrt

import numpy as np
import pytest
import shapely
from shapely import Point, box

from optimizer.catalogue import Vehicle
from optimizer.derived.futures.moves import HEADINGS, moves_of
from optimizer.derived.futures.sweep import Leg, arc, footprint, swept

DIGGER = Vehicle("digger", 8.0, 12.0, 10.0, 10.0, 0.2)
REACH_FT, INNER_FT = sqrt((10 + 4) ** 2 + 6**2), 10 - 4


def turned(turn_deg: float = 90.0) -> shapely.Polygon:
    """From (0, 0), heading along +x, about the centre (0, 10) to the left."""
    return swept(DIGGER, (0.0, 0.0, 0.0), [arc(10.0, turn_deg)])


def apart_deg(one_deg: float, other_deg: float) -> float:
    """Angle between two headings, whatever whole turns are between them."""
    return abs((one_deg - other_deg + 180) % 360 - 180)


def test_a_straight_leg_sweeps_a_rectangle() -> None:
    """20 ft ahead: as wide as the vehicle, and its length more than the leg."""
    ground = swept(DIGGER, (5.0, 3.0, 90.0), [Leg(20.0)])
    assert ground.symmetric_difference(box(1, -3, 9, 29)).area == pytest.approx(0, abs=1e-6)


def test_a_turn_reaches_as_far_as_its_outer_corners() -> None:
    """Farthest and nearest distance of the swept ground from the centre of the turn, to 0.02 ft."""
    centre, ground = Point(0, 10), turned()
    assert max(Point(at).distance(centre) for at in ground.exterior.coords) == pytest.approx(REACH_FT, abs=0.02)
    assert ground.distance(centre) == pytest.approx(INNER_FT, abs=0.02)


def test_every_pose_of_a_turn_lies_in_what_is_swept() -> None:
    """Footprints at angles that the sweep was not made of stick out by no more than 0.01 ft."""
    ground = turned().buffer(0.01)
    for turn in np.arange(0.7, 90, 3.7):
        pose = (10 * sin(radians(turn)), 10 - 10 * cos(radians(turn)), turn)
        assert ground.covers(shapely.Polygon(footprint(DIGGER, pose)))


def test_the_narrowest_corner_that_a_turn_goes_round() -> None:
    """Two corridors of one width c meet at a right angle; the inner corner lies on the inner circle, half-way round. Then
    c = sqrt((R + w / 2)^2 + (l / 2)^2) - (R - w / 2) / sqrt(2), 10.99 ft; an inch less and the turn hits a wall.
    """
    needed = REACH_FT - INNER_FT / sqrt(2)
    assert needed == pytest.approx(10.99, abs=0.01)
    corner = (INNER_FT / sqrt(2), 10 - INNER_FT / sqrt(2))
    for width, fits in ((needed + 1 / 12, True), (needed - 1 / 12, False)):
        x, y = corner
        corridors = box(x - 60, y - width, x + width, y).union(box(x, y - width, x + width, y + 60))
        assert corridors.buffer(0.01).covers(turned()) == fits


@pytest.mark.parametrize("radius_ft", [0.0, 4.0, 9.7, 12.0])
def test_moves_end_on_the_lattice(radius_ft: float) -> None:
    """Every move ends at whole feet in one of eight headings, and no shorter than the straight line."""
    moves = moves_of(Vehicle("v", 5.0, 9.0, 9.0, radius_ft, 0.2))
    assert len(moves) == HEADINGS
    for heading, own in enumerate(moves):
        for move in own:
            end = move.poses[-1]
            assert end[:2] == pytest.approx(move.to, abs=1e-6)
            assert apart_deg(end[2], 45 * move.heading) < 1e-6
            assert move.length_ft >= hypot(*move.to) - 1e-6
            assert apart_deg(move.poses[0][2], 45 * heading) < 1e-6


def test_a_move_from_another_heading_is_the_same_move_turned() -> None:
    """Ahead, and round the left corner, from each heading along an axis."""
    for quarters in range(4):
        own = moves_of(DIGGER)[2 * quarters]
        turn = radians(90 * quarters)
        assert own[0].to == (round(cos(turn)), round(sin(turn)))
        assert sorted(move.heading for move in own) == sorted(
            (m.heading + 2 * quarters) % 8 for m in moves_of(DIGGER)[0]
        )
