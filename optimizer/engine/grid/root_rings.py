"""Outer rings round kept trees: how much of each ring a room takes wherever it stands. A rectangle takes the sum of its
cells; a circle, lens by lens, never more than is really under it.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import cos, pi

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Point as Spot

from optimizer.catalogue import Rings, root_rings
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Lattice, window_sums
from optimizer.layout.shapes import QUARTER_STEPS as DISC_STEPS
from optimizer.site import Point, Tree

QUARTER_STEPS = 64
SLACK_SQFT = 0.05
_EVEN_FT = 1e-9
_DRAWN = cos(pi / 4 / min(DISC_STEPS, QUARTER_STEPS))
"""Radius of the circle inside a drawn one, for its own: the circle lies wholly inside the edges."""

Areas = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Annulus:
    """Ground between two circles round a point of a grid [ft]."""

    lattice: Lattice
    at: Point
    inner_ft: float
    outer_ft: float

    def under_disc(self, across: int) -> Areas:
        """What of it a circle so many steps across takes at each lower left corner of its square [sq ft]."""
        lattice, radius_ft = self.lattice, across * self.lattice.step_ft / 2
        x = lattice.x0_ft + lattice.step_ft * (np.arange(lattice.columns) + across / 2) - self.at[0]
        y = lattice.y0_ft + lattice.step_ft * (np.arange(lattice.rows) + across / 2) - self.at[1]
        away_ft = np.hypot(x[None, :], y[:, None])
        # Circles are drawn with edges inside of them: what is counted as taken is under those.
        whole = lens_sqft(away_ft, radius_ft * _DRAWN, self.outer_ft * _DRAWN)
        return np.maximum(0.0, whole - lens_sqft(away_ft, radius_ft, self.inner_ft))


@dataclass(frozen=True, eq=False)
class RootRing:
    """A ring: what of it lies in each cell [sq ft], shape (rows, columns), and what built rooms may take together."""

    cells: Areas
    most_sqft: float
    ground: Annulus | None = None
    """What circles are asked of; None where no room is one."""


def lens_sqft(away_ft: Areas, one_ft: float, other_ft: float) -> Areas:
    """Area that two circles of these radii share, with their middles so far apart [sq ft]; by two segments."""
    if min(one_ft, other_ft) <= 0:
        return np.zeros_like(away_ft)
    apart = np.clip(away_ft, abs(one_ft - other_ft) + _EVEN_FT, one_ft + other_ft)
    to_chord = (apart**2 + one_ft**2 - other_ft**2) / (2 * apart)
    found = _segment_sqft(one_ft, to_chord) + _segment_sqft(other_ft, apart - to_chord)
    return np.asarray(np.where(away_ft <= abs(one_ft - other_ft), np.pi * min(one_ft, other_ft) ** 2, found))


def _segment_sqft(radius_ft: float, to_chord_ft: Areas) -> Areas:
    """Area of a circle beyond a chord, which lies behind the middle where its distance is negative [sq ft]."""
    along = np.clip(to_chord_ft, -radius_ft, radius_ft)
    return np.asarray(radius_ft**2 * np.arccos(along / radius_ft) - along * np.sqrt(radius_ft**2 - along**2))


def root_rings_of(context: Context) -> tuple[RootRing, ...]:
    """Rings of the site's kept trees, in their order."""
    return tuple(_ring(context.lattice, tree, root_rings(context.site)) for tree in context.site.trees)


@lru_cache(maxsize=512)
def taken_sqft(ring: RootRing, width: int, depth: int, is_round: bool) -> Areas:
    """What a room of that size takes of the ring at each lower left corner [sq ft]; 0 where it leaves the grid."""
    if is_round and ring.ground is not None:
        return ring.ground.under_disc(width)
    result = np.zeros_like(ring.cells)
    rows, columns = ring.cells.shape
    if width <= columns and depth <= rows:
        sums = window_sums(ring.cells, width=width, depth=depth)
        result[: rows - depth + 1, : columns - width + 1] = sums
    return result


@lru_cache(maxsize=64)
def _ring(lattice: Lattice, tree: Tree, rings: Rings) -> RootRing:
    at, boxes = Spot(tree.at), lattice.boxes()
    inner_ft, outer_ft = (trunks * tree.trunk_diameter_ft for trunks in (rings.inner_trunks, rings.outer_trunks))
    inner = at.buffer(inner_ft, quad_segs=QUARTER_STEPS)
    shape = at.buffer(outer_ft, quad_segs=QUARTER_STEPS).difference(inner)
    cells = np.zeros(boxes.shape)
    near = shapely.intersects(shape, boxes)
    cells[near] = shapely.area(shapely.intersection(boxes[near], shape))
    ground = Annulus(lattice, tree.at, inner_ft, outer_ft)
    return RootRing(cells, rings.paved_share * float(shape.area) + SLACK_SQFT, ground)
