"""Edges that run along an axis of the plan: what the eye lines rooms up with, and when two nearly meet."""

from collections.abc import Iterator
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.site import Ring, Site

LINE_TOLERANCE_FT: Final = 1 / 12
"""Edges within 1 in of a line lie on it; common practice, no source."""
_NEAR_MISS_FT: Final = 2.0  # edges this far apart look meant; common practice, no source
NEIGHBOUR_FT: Final = 12.0
"""Edges farther away from each other are not compared at a glance; common practice, no source."""
_ROUNDING_FT: Final = 1e-6  # so that a yard written in metres has the same neighbours


class Edge(NamedTuple):
    """An edge along one axis (0: upright, 1: level) at one coordinate [ft], from where to where, and its owner."""

    axis: int
    at_ft: float
    from_ft: float
    to_ft: float
    owner: str

    @property
    def length_ft(self) -> float:
        """Length [ft]."""
        return self.to_ft - self.from_ft


def site_edges(site: Site) -> Iterator[Edge]:
    """Edges of buildings and structures that run along an axis; their owner has no name that a room could have."""
    outlines = (*(thing.outline for thing in site.buildings), *(thing.outline for thing in site.structures))
    for outline in outlines:
        yield from ring_edges(outline)


def centre_lines(site: Site, axis: int) -> tuple[float, ...]:
    """Where the middle lines of the structures lie along an axis [ft]."""
    bounds = (Polygon(structure.outline).bounds for structure in site.structures)
    return tuple((bound[axis] + bound[axis + 2]) / 2 for bound in bounds)


def nearly_level(off_ft: Any) -> NDArray[np.bool_]:
    """Whether parallel edges that lie this far from each other are neither flush within 1 in nor 2 ft apart."""
    off = np.abs(off_ft)
    return np.asarray((off > LINE_TOLERANCE_FT) & (off < _NEAR_MISS_FT - LINE_TOLERANCE_FT))


def are_neighbours(from_ft: Any, to_ft: Any, other_from_ft: float, other_to_ft: float) -> NDArray[np.bool_]:
    """Whether stretches along one axis overlap another one or end at most 12 ft from it."""
    apart = np.maximum(from_ft, other_from_ft) - np.minimum(to_ft, other_to_ft)
    return np.asarray(apart <= NEIGHBOUR_FT + _ROUNDING_FT)


def ring_edges(ring: Ring) -> Iterator[Edge]:
    """Edges of a ring that run along an axis, with an owner that no room has."""
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        if abs(x0 - x1) <= LINE_TOLERANCE_FT:
            yield Edge(0, x0, min(y0, y1), max(y0, y1), "")
        elif abs(y0 - y1) <= LINE_TOLERANCE_FT:
            yield Edge(1, y0, min(x0, x1), max(x0, x1), "")
