"""Ground that no part of a room may take: as cells for rectangles, as distances from the middle for circles.

A rectangle is the union of its cells, so it keeps off exactly if none of its cells is taken. A circle is no union of
cells: it keeps off exactly if its middle keeps the radius more.
"""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry, Polygon

from optimizer.engine.grid.crossed import TOUCHING_FT
from optimizer.engine.grid.lattice import Cells, Lattice, any_in_window
from optimizer.engine.grid.raster import NEAR_SLACK_FT, any_of, covered, within
from optimizer.engine.grid.variants import Variant
from optimizer.layout.shapes import QUARTER_STEPS

_FAR_FT = 1e4  # beyond every yard
_GRAZED_SQFT = 0.05
"""What the check lets a circle share with an area: its `TOLERANCE_SQFT`, which a test holds equal."""
_GRAZED_FT = 0.5  # from deeper in it shares more


class KeptOff(NamedTuple):
    """All that lies nearer to a thing than a distance [ft]; None: the thing itself."""

    thing: Geometry
    distance_ft: float | None = None


def outside(area: Polygon) -> KeptOff:
    """All ground outside an area."""
    left, low, right, top = area.bounds
    return KeptOff(shapely.box(left - _FAR_FT, low - _FAR_FT, right + _FAR_FT, top + _FAR_FT).difference(area))


def cells_of(lattice: Lattice, kept: Iterable[KeptOff]) -> Cells:
    """Cells of which some part may not be taken."""
    found = (
        covered(lattice, thing) if distance_ft is None else within(lattice, thing, distance_ft)
        for thing, distance_ft in kept
    )
    return any_of(lattice, list(found))


def on_any(lattice: Lattice, variant: Variant, kept: Sequence[KeptOff]) -> Cells:
    """Lower left corners at which some part of a room takes such ground; True where it leaves the grid."""
    if variant.is_round:
        return _leaves_grid(lattice, variant) | any_of(lattice, [_disc_on(lattice, variant.width, one) for one in kept])
    return any_in_window(cells_of(lattice, kept), width=variant.width, depth=variant.depth)


def _leaves_grid(lattice: Lattice, variant: Variant) -> Cells:
    result = np.ones((lattice.rows, lattice.columns), dtype=bool)
    result[: max(0, lattice.rows - variant.depth + 1), : max(0, lattice.columns - variant.width + 1)] = False
    return result


@lru_cache(maxsize=256)
def _disc_on(lattice: Lattice, across: int, kept: KeptOff) -> Cells:
    """Lower left corners of the square round a circle so many steps across, from which it takes such ground."""
    result = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    if kept.thing.is_empty or (kept.distance_ft is not None and kept.distance_ft <= 0):
        return result
    more_ft = -TOUCHING_FT if kept.distance_ft is None else kept.distance_ft - NEAR_SLACK_FT
    reach_ft = across * lattice.step_ft / 2 + more_ft
    x = lattice.x0_ft + lattice.step_ft * (np.arange(lattice.columns) + across / 2)
    y = lattice.y0_ft + lattice.step_ft * (np.arange(lattice.rows) + across / 2)
    left, low, right, top = kept.thing.bounds
    near_x = slice(*np.searchsorted(x, (left - reach_ft, right + reach_ft)).tolist())
    near_y = slice(*np.searchsorted(y, (low - reach_ft, top + reach_ft)).tolist())
    middles = shapely.points(*np.meshgrid(x[near_x], y[near_y]))
    shapely.prepare(kept.thing)
    found = shapely.dwithin(kept.thing, middles, reach_ft)
    if kept.distance_ft is None and kept.thing.area > 0:
        found &= ~_grazes(kept.thing, middles, found, across * lattice.step_ft / 2)
    result[near_y, near_x] = found
    return result


def _grazes(thing: Geometry, middles: NDArray[np.object_], found: Cells, radius_ft: float) -> Cells:
    """Where a circle shares no more with an area than the check lets pass, as at a corner."""
    result = found & ~shapely.dwithin(thing, middles, max(0.0, radius_ft - _GRAZED_FT))
    discs = shapely.buffer(middles[result], radius_ft, quad_segs=QUARTER_STEPS)
    result[result] = shapely.area(shapely.intersection(discs, thing)) <= _GRAZED_SQFT
    return np.asarray(result)
