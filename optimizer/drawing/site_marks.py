"""The marks of what is there: ground, boundary, house and openings, walls, structures, trees, keep-outs, neighbours."""

from collections.abc import Iterator
from functools import lru_cache

from shapely import LineString, Polygon, union_all

from optimizer.catalogue import root_rings
from optimizer.drawing.bed_marks import bed_marks
from optimizer.drawing.marks import Area, Box, Circle, Line, Mark
from optimizer.drawing.opening_marks import door_marks, entrance_marks, window_marks
from optimizer.drawing.outlines import areas_of, loose_ring, polygon_of
from optimizer.drawing.sheet_size import text_scale
from optimizer.drawing.wall_marks import wall_marks
from optimizer.planting import Planting
from optimizer.site import Site, Surrounding, Tree

UTILITY_RADIUS = 0.85
"""Of the ring round a utility's letter, in sizes of type."""


def ground_marks(site: Site, planting: Planting, plan_box: Box) -> tuple[Mark, ...]:
    """Draw what lies under everything: neighbours, open ground, lawn, beds and their plants, keep-outs, setbacks."""
    yard = Polygon(site.boundary)
    return (
        *(mark for thing in site.surroundings for mark in surrounding_marks(thing, plan_box)),
        *areas_of("ground", yard),
        *(mark for lawn in planting.lawns for mark in areas_of("grass", lawn)),
        *areas_of("bank", planting.bank),
        *bed_marks(planting.beds),
        *(Area("keep_out", (keep_out.outline,)) for keep_out in site.keep_outs),
        *_setback(site),
    )


@lru_cache(maxsize=8)
def standing_marks(site: Site) -> tuple[Mark, ...]:
    """Draw what stands over the rooms: house, openings, walls, roofs, trees, utilities, and the boundary itself."""
    return (
        *(Area("building", (building.outline,)) for building in site.buildings),
        *(mark for window in site.windows for mark in window_marks(window)),
        *(mark for door in site.doors for mark in door_marks(door)),
        *wall_marks(site),
        *(Area("roof", (structure.outline,)) for structure in site.structures),
        *(mark for structure in site.structures for mark in _posts(structure.outline)),
        *(mark for tree in site.trees for mark in _tree(site, tree)),
        Area("boundary", (site.boundary,)),
        *(mark for entrance in site.entrances for mark in entrance_marks(entrance)),
        *(Circle("utility", utility.at, UTILITY_RADIUS * text_scale(site)) for utility in site.utilities),
    )


@lru_cache(maxsize=8)
def _setback(site: Site) -> tuple[Mark, ...]:
    """Line behind which paving may lie; none where the whole yard may be paved."""
    corners = (*site.boundary, site.boundary[0])
    strips = [
        LineString(corners[i : i + 2]).buffer(setbacks.paving)
        for i, setbacks in enumerate(site.setbacks)
        if setbacks.paving > 0
    ]
    if not strips:
        return ()
    return areas_of("setback", Polygon(site.boundary).difference(union_all(strips)))


def _posts(outline: tuple[tuple[float, float], ...]) -> Iterator[Mark]:
    for x, y in outline:
        yield Area("post", (((x - 0.3, y - 0.3), (x + 0.3, y - 0.3), (x + 0.3, y + 0.3), (x - 0.3, y + 0.3)),))


def _tree(site: Site, tree: Tree) -> tuple[Mark, ...]:
    trunk_ft = max(tree.trunk_diameter_ft / 2, 0.4)
    return (
        Circle("root_zone", tree.at, root_rings(site).inner_trunks * tree.trunk_diameter_ft),
        Area("crown", (loose_ring(tree.at, radius_ft=tree.canopy_radius_ft),)),
        Area("crown_inner", (loose_ring(tree.at, radius_ft=0.8 * tree.canopy_radius_ft, lobes=8),)),
        Circle("trunk", tree.at, trunk_ft),
    )


def surrounding_marks(thing: Surrounding, plan_box: Box) -> Iterator[Mark]:
    """Draw what stands outside the yard, as far as it is within the plan."""
    frame = polygon_of(plan_box)
    if thing.outline is not None:
        yield from areas_of("neighbour", Polygon(thing.outline).intersection(frame))
    if thing.line is not None:
        yield Line("fence", thing.line)
    if thing.at is not None and frame.buffer(-1.0).covers(polygon_of((*thing.at, *thing.at)).centroid):
        yield Circle("eye", thing.at, 0.7)
