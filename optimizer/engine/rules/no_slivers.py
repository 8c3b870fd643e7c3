"""Rooms share at least 3 ft of edge or stand at least 3 ft apart, with no thin strip by a landing."""

from functools import lru_cache
from typing import Final

import numpy as np
from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells, any_in_window
from optimizer.engine.grid.raster import covered, flush_or_clear
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Contact
from optimizer.engine.rules.part import Part
from optimizer.fields import BUILT_UP_FT, door_zone, faced_part, free_sides, ground_beside

LEAST_GAP_FT: Final = 3.0
_NEAR_SLACK_FT = 0.02  # what the check lets pass, so that a place just near enough has cells that are near


def _apart_or_flush(context: Context, room: SizedRoom, variant: Variant) -> Cells:
    """Positions that leave no sliver to a building, a landing, or a structure under which the room does not stand."""
    may_stand_under = frozenset(s.name for s in context.site.structures if room.name in s.may_hold)
    return _of_size(context, variant.width, variant.depth, may_stand_under)


@lru_cache(maxsize=256)
def _of_size(context: Context, width: int, depth: int, may_stand_under: frozenset[str]) -> Cells:
    allowed = np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)
    size = {"width": width, "depth": depth}
    for outline in context.buildings:
        allowed &= flush_or_clear(context.lattice, outline, **size, gap_ft=LEAST_GAP_FT)
    for structure in context.site.structures:
        roof = Polygon(structure.outline)
        fits = flush_or_clear(context.lattice, roof, **size, gap_ft=LEAST_GAP_FT)
        if structure.name in may_stand_under:
            fits |= any_in_window(covered(context.lattice, roof), **size)
        allowed &= fits
    return np.asarray(allowed & ~_beside_landings(context, **size))


def _beside_landings(context: Context, *, width: int, depth: int) -> Cells:
    """Positions that face a side of a door zone across a strip."""
    strips = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    zones = [door_zone(context.site, b, door) for b in context.site.buildings for door in b.doors]
    for side in (side for zone in zones for side in free_sides(zone)):
        before, close = ground_beside(faced_part(side), LEAST_GAP_FT), ground_beside(side, BUILT_UP_FT + _NEAR_SLACK_FT)
        faces = any_in_window(covered(context.lattice, before), width=width, depth=depth)
        near = any_in_window(covered(context.lattice, close), width=width, depth=depth)
        strips |= faces & ~near
    return strips


def _gap_or_share(context: Context, first: int, second: int) -> Contact:
    """The open side of a kitchen may be touched only by ground that can be walked on."""
    rooms = context.rooms[first].rules, context.rooms[second].rules
    shut = tuple(end for end in (0, 1) if rooms[end].has_front and not rooms[1 - end].walkable)
    steps = context.lattice.need(LEAST_GAP_FT)
    return Contact(gap=steps, share=steps, shut=shut)


PART = Part(positions=_apart_or_flush, contact=_gap_or_share)
