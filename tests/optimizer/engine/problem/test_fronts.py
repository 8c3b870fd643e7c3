"""Which way rooms look that serve to no side."""

import pytest

from optimizer.catalogue import book_for
from optimizer.engine.problem import Spot, build_problem, layout_of
from optimizer.layout import Layout
from tests.yards import plain_rooms, plain_yard, stand

ROOMS = plain_rooms()
PROBLEM = build_problem(plain_yard(), ROOMS, book_for("USD"))
"""The house lies at (10, 0) to (50, 12) in a yard of 60 x 40 ft, its middle at (30, 6)."""


def front_at(name: str, x_ft: float, y_ft: float, width_ft: float, depth_ft: float) -> str:
    """Front that a room is given where it is placed so."""
    lattice, index = PROBLEM.context.lattice, [room.name for room in ROOMS].index(name)
    posed = PROBLEM.context.pose.layout(Layout((stand(name, x_ft, y_ft, width_ft, depth_ft),))).placements[0]
    size = (lattice.need(posed.width_ft), lattice.need(posed.depth_ft))
    variant = [(v.width, v.depth) for v in PROBLEM.rooms[index].variants].index(size)
    x, y = lattice.line(posed.x_ft, origin_ft=lattice.x0_ft), lattice.line(posed.y_ft, origin_ft=lattice.y0_ft)
    assert x is not None
    assert y is not None
    state = tuple(Spot(variant, x, y) if room == index else None for room in range(len(ROOMS)))
    return layout_of(PROBLEM, state).placements[0].front


@pytest.mark.parametrize(("name", "place", "front"), [
    ("table", (24, 16, 14, 12), "+y"),
    ("table", (24, 28, 14, 12), "+y"),
    ("fire", (26, 24, 8, 8), "-y"),
    ("nook", (22, 14, 8, 7), "+y"),
    ("nook", (28, 31, 8, 7), "-y"),
    ("nook", (2, 20, 7, 8), "+x"),
])  # fmt: skip
def test_fires_look_home_and_nooks_lean_on_what_is_nearer(name, place, front):
    """A table looks away from the house; a fire turns its back away from it; a nook has it to house or boundary."""
    assert front_at(name, *place) == front


@pytest.mark.parametrize(("place", "front"), [((0, 20, 8, 8), "+x"), ((10, 25, 8, 8), "-y"), ((51, 20, 8, 8), "-x")])
def test_a_square_looks_along_the_axis_on_which_it_lies_farther_off(place, front):
    """West, north and east of the house."""
    assert front_at("fire", *place) == front
