"""Ground that rooms keep off, for a square and for the circle in it, against the shapes themselves."""

import numpy as np
import pytest
import shapely

from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.variants import Variant

LATTICE = Lattice(1.0, 0.0, 0.0, columns=20, rows=15)
ACROSS = 4
POND = shapely.box(9, 6, 12, 8)


def variant(*, is_round: bool) -> Variant:
    """A room of 4 x 4 ft."""
    return Variant(0, ACROSS, ACROSS, None, (ACROSS, ACROSS), is_round=is_round)


def standing(column: int, row: int, *, is_round: bool):
    """The ground of the room with its corner there."""
    half = ACROSS / 2
    middle = shapely.Point(column + half, row + half)
    return middle.buffer(half, quad_segs=64) if is_round else shapely.box(column, row, column + 4, row + 4)


@pytest.mark.parametrize("is_round", [True, False])
@pytest.mark.parametrize("distance_ft", [None, 1.5, 3.0])
def test_of_every_corner(is_round, distance_ft):
    """Where the room would leave the grid it may not stand, whatever lies there; else where it takes such ground."""
    found = on_any(LATTICE, variant(is_round=is_round), (KeptOff(POND, distance_ft),))
    for row, column in np.ndindex(found.shape):
        ground = standing(column, row, is_round=is_round)
        leaves = column + ACROSS > LATTICE.columns or row + ACROSS > LATTICE.rows
        if distance_ft is None:
            takes = ground.intersection(POND).area > 0.05
        else:
            takes = ground.distance(POND) < distance_ft - 0.01
        assert found[row, column] == (leaves or takes), (column, row)
