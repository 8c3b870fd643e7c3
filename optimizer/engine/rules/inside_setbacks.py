"""Every room lies inside the boundary and keeps the setbacks that apply to it."""

import numpy as np
import shapely
from shapely import LineString

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells, any_in_window
from optimizer.engine.grid.raster import within
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_off
from optimizer.engine.rules.part import Part
from optimizer.site import BuiltClass

_CONVERSION_FT = 0.01  # a cell may poke out by what conversion from metres adds, never more


def _outside(context: Context, room: SizedRoom) -> Cells:
    """Cells outside the boundary, or closer to an edge than the largest setback of what the room is built as."""
    grown = context.boundary.buffer(_CONVERSION_FT, join_style="mitre")
    inside = np.asarray(shapely.covers(grown, context.lattice.boxes()), dtype=bool)
    return np.asarray(~inside | _before_setbacks(context, room.rules.built_to_edge))


def _of_choice(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions behind the setbacks of what a choice adds to its kind, a roof or a screen, and of water in its deck."""
    added = room.built_as(room.choices[variant.choice])[len(room.rules.built_as) :]
    kept = ~any_in_window(_before_setbacks(context, added), width=variant.width, depth=variant.depth)
    if room.rules.has_deck:
        kept &= water_off(context.lattice, room, variant, _before_setbacks(context, ("water",)))
    return kept if added or room.rules.has_deck else None


def _before_setbacks(context: Context, built_as: tuple[BuiltClass, ...]) -> Cells:
    corners = context.site.boundary
    blocked = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    for start, end, setbacks in zip(corners, corners[1:] + corners[:1], context.site.setbacks, strict=True):
        depth_ft = max((setbacks.of(built) for built in built_as), default=0.0)
        blocked |= within(context.lattice, LineString([start, end]), depth_ft - _CONVERSION_FT)
    return blocked


PART = Part(cells=_outside, positions=_of_choice)
