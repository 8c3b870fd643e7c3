"""Rules about what lies in the ground: known lines, septic ground and overhead lines, the roots of kept trees."""

from dataclasses import replace

import numpy as np
from shapely import LineString, Polygon

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom, keep_out_ft, line_clear_ft
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells
from optimizer.instance.raster import covered, within
from optimizer.instance.root_rings import root_rings_of, taken_sqft
from optimizer.instance.rules.part import Part
from optimizer.instance.rules.yard import any_of
from optimizer.instance.variants import Variant


def utility_lines(context: Context, room: SizedRoom) -> Cells | None:
    """Cells nearer to a known line than its clear width, for rooms that are built."""
    if not room.rules.built_as:
        return None
    site = context.site
    near = [within(context.lattice, LineString(line.line), line_clear_ft(site, line)) for line in site.utility_lines]
    return any_of(context, near)


def septic(context: Context, room: SizedRoom) -> Cells | None:
    """Cells too near to septic ground or an overhead line for what the room is built as, and all of a septic field."""
    if not room.rules.built_as:
        return None
    found = []
    for area in context.site.keep_outs:
        outline, asked = Polygon(area.outline), keep_out_ft(context.site, area.kind, room.rules.built_as)
        found.append(within(context.lattice, outline, asked))
        if area.kind == "septic field":
            found.append(covered(context.lattice, outline))
    return any_of(context, found)


def root_ring(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions where the room alone covers no more of a tree's outer ring than all may together."""
    if not room.rules.built_as or not context.site.trees:
        return None
    fits = [taken_sqft(ring, variant.width, variant.depth) <= ring.most_sqft for ring in root_rings_of(context)]
    return np.asarray(np.logical_and.reduce(fits))


PARTS: dict[RuleId, Part] = {
    "utility_lines": Part(cells=utility_lines),
    "septic": Part(cells=septic),
    "root_ring": Part(positions=root_ring, limits=lambda limits: replace(limits, rings=True)),
}
