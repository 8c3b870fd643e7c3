"""Cells and positions against plane geometry."""

import numpy as np
import pytest
from shapely import Point, Polygon, box

from optimizer.engine.grid.lattice import Lattice, any_in_window
from optimizer.engine.grid.raster import covered, flush_or_clear, within
from optimizer.engine.grid.zones import zones_of

LATTICE = Lattice(1.0, 0.0, 0.0, 30, 20)


def test_a_window_keeps_the_distance_exactly():
    """A room keeps 6 ft from a point exactly where none of its cells comes closer."""
    near = any_in_window(within(LATTICE, Point(15, 10), 6.0), width=4, depth=3)
    for row, column in ((0, 0), (4, 9), (10, 15), (16, 13), (1, 13), (2, 13)):
        assert near[row, column] == (box(column, row, column + 4, row + 3).distance(Point(15, 10)) < 6)


def test_what_a_thing_covers_and_what_is_near_it():
    """Every cell by its own square: wholly in a thing, cut by it, touched along an edge, or off it."""
    thing = Polygon([(4, 3), (20, 3), (20.3, 15.6), (9, 17), (4, 12)])
    cells = {(row, column): box(column, row, column + 1, row + 1) for row in range(20) for column in range(30)}
    shared, near = covered(LATTICE, thing), within(LATTICE, thing, 2.5)
    assert all(shared[at] == (cell.intersection(thing).area > 1e-3) for at, cell in cells.items())
    assert all(near[at] == (cell.distance(thing) < 2.5) for at, cell in cells.items())


@pytest.mark.parametrize(("column", "fits"), [(10, True), (11, False), (12, False), (13, True)])
def test_flush_or_three_feet(column, fits):
    """Beside a house that ends at x = 10 a room is flush or 3 ft away, and never in between."""
    allowed = flush_or_clear(LATTICE, box(0, 0, 10, 20), width=5, depth=5, gap_ft=3.0)
    assert allowed[8, column] == fits


def test_a_wall_off_the_grid_keeps_its_gap():
    """No room on the grid is flush with a wall at x = 10.4: it stands 3 ft clear."""
    allowed = flush_or_clear(LATTICE, box(0, 0, 10.4, 20), width=5, depth=5, gap_ft=3.0)
    assert not allowed[8, 11:14].any()
    assert allowed[8, 14]


@pytest.mark.parametrize(
    ("right", "top", "built_up_ft", "fits"),
    [
        (10.4, 10.4, 1.0, [True, False, False]),  # before a wall off the grid
        (10.9, 10.1, 1.0, [True, False, False]),  # and one that leans from 10.1 to 10.9
        (10.4, 10.4, 0.9, [False, False, False]),  # a step is more than what is paved
        (9.4, 11.4, 1.0, [False, False, False]),  # a wall that leans by a tenth is a slanted one
    ],
)
def test_what_is_paved_up_to_walls_stands_on_the_line_before_them(right, top, built_up_ft, fits):
    """On the next grid line and on no other, if a step is no more than what is paved up to a wall."""
    house = Polygon([(0, 0), (right, 0), (top, 20), (0, 20)])
    allowed = flush_or_clear(LATTICE, house, width=5, depth=5, gap_ft=3.0, built_up_ft=built_up_ft)
    assert allowed[8, 11:14].tolist() == fits


def test_inner_corner_leaves_no_sliver():
    """In the corner of an L a room flush with one wall is not 1 ft from the other."""
    ell = Polygon([(0, 0), (20, 0), (20, 5), (5, 5), (5, 20), (0, 20)])
    allowed = flush_or_clear(LATTICE, ell, width=4, depth=4, gap_ft=3.0)
    assert allowed[5, 5]
    assert not allowed[5, 6]
    assert allowed[5, 8]


def test_zones_cover_the_mask_at_its_own_loss():
    """The cheapest zone round every allowed corner carries its loss, and no zone leaves the mask."""
    allowed = ~covered(LATTICE, Point(15, 10).buffer(5))
    losses = np.where(np.arange(30) < 12, 0, 400)[None, :] + np.zeros((20, 1), dtype=np.int64)
    best = np.full(allowed.shape, 10**9)
    for zone in zones_of(allowed, losses):
        part = (slice(zone.low, zone.top + 1), slice(zone.left, zone.right + 1))
        assert allowed[part].all()
        best[part] = np.minimum(best[part], zone.loss)
    assert (best[allowed] == losses[allowed]).all()
