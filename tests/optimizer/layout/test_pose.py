"""The canonical pose: copies of a yard are one problem."""

from dataclasses import replace
from functools import lru_cache

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.engine.problem import build_problem
from optimizer.layout import Layout, Placement
from optimizer.layout.pose import SYMMETRIES, Pose, canonical_pose
from optimizer.scenario import load_scenario
from optimizer.site import Paving, Wall, WallOpening

FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")


FENCE = Wall("fence", ((2, 70), (40, 70), (40, 80)), "fence", 6, (WallOpening((20, 70), 5, "locked"),))
PATIO = Paving("patio", ((44, 58), (70, 58), (70, 74), (44, 76)), "concrete", "reuse")
WALK = Paving("walk", ((84, 0), (92, 0), (92, 40), (84, 40)), "asphalt", "keep")
WALLED = replace(FERNHOLLOW, site=replace(FERNHOLLOW.site, walls=(FENCE,), paving=(PATIO, WALK)))


def without_compass(scenario):
    """The same with no wish for sun and no wind, whose compass a mirrored yard does not share."""
    rooms = tuple(replace(room, sun=None) for room in scenario.brief.rooms)
    site = replace(scenario.site, wind_from_deg=None)
    return replace(scenario, site=site, brief=replace(scenario.brief, rooms=rooms))


@lru_cache(maxsize=2)
def problem_of(scenario):
    """The problem of a yard; that of the plain one is asked for again and again."""
    return build_problem(scenario, sized_rooms(scenario.brief), book_for("USD"))


@pytest.mark.parametrize(("yard", "matrix"), [(FERNHOLLOW, SYMMETRIES[-1]), *((WALLED, each) for each in SYMMETRIES)])
def test_a_moved_yard_is_the_same_problem(matrix, yard):
    """Turned, mirrored and shifted by 3.7 ft, the yard, with a fence and paving in every pose, gives the same masks, losses, pairs and pulls."""
    plain = without_compass(yard)
    one, other = problem_of(plain), problem_of(replace(plain, site=Pose(matrix, (3.7, -11.3)).site(plain.site)))
    for room, copy in zip(one.rooms, other.rooms, strict=True):
        assert room.variants == copy.variants
        assert all((a == b).all() for a, b in zip(room.allowed, copy.allowed, strict=True))
        assert (room.losses, room.absent_loss) == (copy.losses, copy.absent_loss)
        assert all((a == b).all() for a, b in zip(room.places, copy.places, strict=True))
        assert all((a == b).all() for a, b in zip(room.floors, copy.floors, strict=True))
    assert (one.pairs, one.pulls, one.order.lines) == (other.pairs, other.pulls, other.order.lines)
    assert (one.amounts, one.guide.runs, one.guide.ways) == (other.amounts, other.guide.runs, other.guide.ways)
    for doubts, copies in zip(one.guide.doubts, other.guide.doubts, strict=True):
        assert [d is None for d in doubts] == [c is None for c in copies]
        assert all((d == c).all() for d, c in zip(doubts, copies, strict=True) if d is not None)


@pytest.mark.parametrize("matrix", SYMMETRIES)
def test_there_and_back(matrix):
    """A layout put into a pose and back is where it was, front included."""
    pose = Pose(matrix, (5.0, 7.0))
    layout = Layout((Placement("nook", "two chairs", 3, 4, 8, 7, "-x"),))
    assert pose.layout_back(pose.layout(layout)) == layout


def test_canonical_pose_starts_at_the_origin():
    """The lower left corner of the posed boundary is (0, 0)."""
    corners = canonical_pose(FERNHOLLOW.site).site(FERNHOLLOW.site).boundary
    assert min(x for x, _ in corners) == pytest.approx(0)
    assert min(y for _, y in corners) == pytest.approx(0)
