"""Terraces at garden doors: one steps from the house onto ground that one can use."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.brief import Brief, RoomKind
from optimizer.fields.door_zones import BUILT_UP_FT
from optimizer.fields.site_shapes import site_shapes
from optimizer.layout import PlacedRoom
from optimizer.site import Door, Site

Numbers = NDArray[np.float64]
TERRACE_KINDS: Final[tuple[RoomKind, ...]] = ("gathering", "arrival")
"""Rooms that one may step onto from a door."""
SHARED_EDGE_FT: Final = 3.0
"""Edge that a terrace and a landing share at least; layout rule 24, common practice, no source."""
_EVEN_FT: Final = 0.02  # what lies so near touches


def meets_walls(room: PlacedRoom) -> bool:
    """Whether a room is paved up to a wall that stands no farther from it than a landing is built up: walls lie a
    little askew, and a builder paves to them all the same.
    """
    return room.kind in TERRACE_KINDS and not room.placement.is_circle


def garden_doors(site: Site, brief: Brief) -> tuple[Door, ...]:
    """Doors that trips lead through, the one of most trips first; of as many trips the first in the file."""
    used = [(brief.ends_at({door.name}), door) for door in site.doors]
    return tuple(door for count, door in sorted(used, key=lambda entry: -entry[0]) if count > 0)


def meets_landing(
    site: Site, door: Door, x_ft: Numbers, y_ft: Numbers, *, width_ft: float, depth_ft: float
) -> NDArray[np.bool_]:
    """Whether a room lies along a door's landing and steps, at lower left corners: no farther than what is built up
    to it, on 3 ft of edge.

    Landings in front of a wall that lies off the axes are met by bounding box, as rooms lie along the axes.
    """
    zone = next(shape for other, shape in site_shapes(site).door_zones if other.name == door.name)
    left, low, right, top = zone.bounds
    gap_x, gap_y = _gap(x_ft, width_ft, left, right), _gap(y_ft, depth_ft, low, top)
    near, shared = BUILT_UP_FT + _EVEN_FT, SHARED_EDGE_FT - _EVEN_FT
    beside = (np.abs(gap_x) <= near) & (gap_y <= -shared)
    before = (np.abs(gap_y) <= near) & (gap_x <= -shared)
    return np.asarray(beside | before)


def _gap(at_ft: Numbers, length_ft: float, start: float, end: float) -> Numbers:
    """Distance along an axis between a stretch and another; below 0 by how much they overlap [ft]."""
    return np.maximum(start - (at_ft + length_ft), at_ft - end)
