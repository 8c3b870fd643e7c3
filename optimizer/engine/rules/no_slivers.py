"""Rooms share at least 3 ft of edge or stand at least 3 ft apart, with no thin strip by a landing."""

from functools import lru_cache
from typing import Final

import numpy as np
from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import flush_or_clear
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Contact
from optimizer.engine.rules.part import Part
from optimizer.fields import BUILT_UP_FT, door_zone, faced_part, free_sides, ground_beside
from optimizer.fields.terraces import TERRACE_KINDS

LEAST_GAP_FT: Final = 3.0
_NEAR_SLACK_FT = 0.02  # what the check lets pass, so that a place just near enough has cells that are near


def _apart_or_flush(context: Context, room: SizedRoom, variant: Variant) -> Cells:
    """Positions that leave no sliver to a building, a landing, or a structure under which the room does not stand."""
    may_stand_under = frozenset(s.name for s in context.site.structures if room.name in s.may_hold)
    built_up_ft = BUILT_UP_FT if room.rules.kind in TERRACE_KINDS else 0.0
    return _of_size(context, _plain(variant), may_stand_under, built_up_ft)


def _plain(variant: Variant) -> Variant:
    """A variant of the same size and shape, and nothing more: what is worked out for it holds for all of them."""
    return Variant(0, variant.width, variant.depth, None, (variant.width, variant.depth), is_round=variant.is_round)


@lru_cache(maxsize=256)
def _of_size(context: Context, variant: Variant, may_stand_under: frozenset[str], built_up_ft: float) -> Cells:
    allowed = np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)
    for outline in context.buildings:
        allowed &= _flush_or_clear(context, variant, outline, built_up_ft)
    for structure in context.site.structures:
        roof = Polygon(structure.outline)
        fits = _flush_or_clear(context, variant, roof)
        if structure.name in may_stand_under:
            fits |= on_any(context.lattice, variant, [KeptOff(roof)])
        allowed &= fits
    return np.asarray(allowed & ~_beside_landings(context, variant))


def _flush_or_clear(context: Context, variant: Variant, outline: Polygon, built_up_ft: float = 0.0) -> Cells:
    """Positions clear of a thing, or flush with it; a circle has no edge to be flush with."""
    if variant.is_round:
        return ~on_any(context.lattice, variant, [KeptOff(outline, LEAST_GAP_FT)])
    size = {"width": variant.width, "depth": variant.depth}
    return flush_or_clear(context.lattice, outline, **size, gap_ft=LEAST_GAP_FT, built_up_ft=built_up_ft)


def _beside_landings(context: Context, variant: Variant) -> Cells:
    """Positions that face a side of a door zone across a strip; no landing is built up to a circle."""
    strips = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    zones = [door_zone(context.site, b, door) for b in context.site.buildings for door in b.doors]
    for side in (side for zone in zones for side in free_sides(zone)):
        before, close = ground_beside(faced_part(side), LEAST_GAP_FT), ground_beside(side, BUILT_UP_FT + _NEAR_SLACK_FT)
        faces, near = (on_any(context.lattice, variant, [KeptOff(strip)]) for strip in (before, close))
        strips |= faces if variant.is_round else faces & ~near
    return strips


def _gap_or_share(context: Context, first: int, second: int) -> Contact:
    """The open side of a kitchen may be touched only by ground that can be walked on, and a circle by nothing."""
    rooms = context.rooms[first].rules, context.rooms[second].rules
    shut = tuple(end for end in (0, 1) if rooms[end].has_front and not rooms[1 - end].walkable)
    steps = context.lattice.need(LEAST_GAP_FT)
    has_edges = not any(choice.shape == "circle" for end in (first, second) for choice in context.rooms[end].choices)
    return Contact(gap=steps, share=steps, shut=shut, may_touch=has_edges)


PART = Part(positions=_apart_or_flush, contact=_gap_or_share)
