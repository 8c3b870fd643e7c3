"""Rules about neighbours: no overlap, and no gap too narrow to walk or to plant."""

from dataclasses import replace

import numpy as np
from shapely import Polygon

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom
from optimizer.fields import BUILT_UP_FT, door_zone, faced_part, free_sides, ground_beside
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells, any_in_window
from optimizer.instance.pairs import Pair
from optimizer.instance.raster import covered, flush_or_clear
from optimizer.instance.rules.part import Part
from optimizer.instance.variants import Variant

LEAST_GAP_FT = 3.0
_NEAR_SLACK_FT = 0.02  # what the check lets pass, so that a place just near enough has cells that are near


def _apart_or_flush(context: Context, room: SizedRoom, variant: Variant) -> Cells:
    """Positions that leave no sliver to a building, a landing, or a structure under which the room does not stand."""
    allowed = np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)
    size = {"width": variant.width, "depth": variant.depth}
    for outline in context.buildings:
        allowed &= flush_or_clear(context.lattice, outline, **size, gap_ft=LEAST_GAP_FT)
    for structure in context.site.structures:
        roof = Polygon(structure.outline)
        fits = flush_or_clear(context.lattice, roof, **size, gap_ft=LEAST_GAP_FT)
        if room.name in structure.may_hold:
            fits |= any_in_window(covered(context.lattice, roof), **size)
        allowed &= fits
    return allowed & ~_beside_landings(context, **size)


def _beside_landings(context: Context, *, width: int, depth: int) -> Cells:
    """Positions that face a side of a door zone across a strip."""
    zones = [door_zone(context.site, b, door) for b in context.site.buildings for door in b.doors]
    strips = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    for side in (side for zone in zones for side in free_sides(zone)):
        before, close = ground_beside(faced_part(side), LEAST_GAP_FT), ground_beside(side, BUILT_UP_FT + _NEAR_SLACK_FT)
        faces = any_in_window(covered(context.lattice, before), width=width, depth=depth)
        near = any_in_window(covered(context.lattice, close), width=width, depth=depth)
        strips |= faces & ~near
    return strips


def _gap_or_share(context: Context, pair: Pair) -> Pair:
    steps = context.lattice.need(LEAST_GAP_FT)
    return replace(pair, gap=steps, share=steps)


PARTS: dict[RuleId, Part] = {
    "no_overlap": Part(pair=lambda _context, pair: replace(pair, may_overlap=False)),
    "no_slivers": Part(positions=_apart_or_flush, pair=_gap_or_share),
}
