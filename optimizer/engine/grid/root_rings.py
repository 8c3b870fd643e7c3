"""Outer rings round kept trees, cell by cell: how much of each ring a room takes wherever it stands."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Point

from optimizer.catalogue import Rings, root_rings
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Lattice, window_sums
from optimizer.site import Tree

QUARTER_STEPS = 64
SLACK_SQFT = 0.05

Areas = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class RootRing:
    """A ring: what of it lies in each cell [sq ft], shape (rows, columns), and what built rooms may take together."""

    cells: Areas
    most_sqft: float


def root_rings_of(context: Context) -> tuple[RootRing, ...]:
    """Rings of the site's kept trees, in their order."""
    return tuple(_ring(context.lattice, tree, root_rings(context.site)) for tree in context.site.trees)


@lru_cache(maxsize=512)
def taken_sqft(ring: RootRing, width: int, depth: int) -> Areas:
    """What a room of that size takes of the ring at each lower left corner [sq ft]; 0 where it leaves the grid."""
    result = np.zeros_like(ring.cells)
    rows, columns = ring.cells.shape
    if width <= columns and depth <= rows:
        sums = window_sums(ring.cells, width=width, depth=depth)
        result[: rows - depth + 1, : columns - width + 1] = sums
    return result


@lru_cache(maxsize=64)
def _ring(lattice: Lattice, tree: Tree, rings: Rings) -> RootRing:
    at, boxes = Point(tree.at), lattice.boxes()
    inner = at.buffer(rings.inner_trunks * tree.trunk_diameter_ft, quad_segs=QUARTER_STEPS)
    shape = at.buffer(rings.outer_trunks * tree.trunk_diameter_ft, quad_segs=QUARTER_STEPS).difference(inner)
    cells = np.zeros(boxes.shape)
    near = shapely.intersects(shape, boxes)
    cells[near] = shapely.area(shapely.intersection(boxes[near], shape))
    return RootRing(cells, rings.paved_share * float(shape.area) + SLACK_SQFT)
