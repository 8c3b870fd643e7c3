"""Rules about the yard alone: which cells a room may not cover."""

import numpy as np
import shapely
from shapely import LineString, Point, Polygon

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom
from optimizer.fields import door_zone
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells
from optimizer.instance.raster import covered, within
from optimizer.instance.rules.part import Part

ROOT_RADIUS_IN_TRUNKS = 6.0
OPENING_DEPTH_FT = 10.0
WINDOW_CLEAR_FT = 5.0
FIRE_CLEAR_FT = {"gas": 10.0, "wood": 25.0}


def inside_setbacks(context: Context, room: SizedRoom) -> Cells:
    """Cells outside the boundary, or closer to an edge than the largest setback of what the room is built as."""
    corners = context.site.boundary
    blocked = ~_inside(context)
    for start, end, setbacks in zip(corners, corners[1:] + corners[:1], context.site.setbacks, strict=True):
        depth_ft = max((setbacks.of(built) for built in room.rules.built_as), default=0.0)
        blocked |= within(context.lattice, LineString([start, end]), depth_ft - 0.01)
    return blocked


def off_buildings(context: Context, _room: SizedRoom) -> Cells:
    """Cells in a building."""
    return _any(context, [covered(context.lattice, building) for building in context.buildings])


def doors(context: Context, _room: SizedRoom) -> Cells:
    """Cells in the landing and steps of a door."""
    zones = [door_zone(context.site, b, door) for b in context.site.buildings for door in b.doors]
    return _any(context, [covered(context.lattice, zone) for zone in zones])


def clear_of_openings(context: Context, room: SizedRoom) -> Cells | None:
    """Cells straight out of a door or beside a window that opens, for kitchen, fire and water."""
    if not room.rules.keeps_from_openings:
        return None
    strips = [covered(context.lattice, _strip(d.at, d.outward, d.width_ft)) for d in context.site.doors]
    panes = [
        within(context.lattice, _pane(w.at, w.outward, w.width_ft), WINDOW_CLEAR_FT)
        for w in context.site.windows
        if w.opens
    ]
    return _any(context, strips + panes)


def root_zone(context: Context, _room: SizedRoom) -> Cells:
    """Cells within six trunk diameters of a kept tree."""
    return _any(
        context,
        [
            within(context.lattice, Point(tree.at), ROOT_RADIUS_IN_TRUNKS * tree.trunk_diameter_ft)
            for tree in context.site.trees
        ],
    )


def under_structure(context: Context, room: SizedRoom) -> Cells:
    """Cells under a structure that may not hold the room."""
    roofs = [Polygon(s.outline) for s in context.site.structures if room.name not in s.may_hold]
    return _any(context, [covered(context.lattice, roof) for roof in roofs])


def keep_outs(context: Context, room: SizedRoom) -> Cells:
    """Cells of kept-out ground that does not allow the room's kind."""
    areas = [Polygon(k.outline) for k in context.site.keep_outs if room.rules.kind not in k.allow]
    return _any(context, [covered(context.lattice, area) for area in areas])


def fire_clear(context: Context, room: SizedRoom) -> Cells | None:
    """Cells under a roof or crown, or closer to building, structure or boundary than the fuel asks."""
    if room.rules.kind != "fire":
        return None
    depth_ft = FIRE_CLEAR_FT[room.fuel or "gas"]
    roofs = [Polygon(structure.outline) for structure in context.site.structures]
    crowns = [within(context.lattice, Point(t.at), t.canopy_radius_ft) for t in context.site.trees]
    solid = [*context.buildings, *roofs, context.boundary.exterior]
    return _any(context, [within(context.lattice, thing, depth_ft) for thing in solid] + crowns)


PARTS: dict[RuleId, Part] = {
    "inside_setbacks": Part(cells=inside_setbacks),
    "off_buildings": Part(cells=off_buildings),
    "door_zone": Part(cells=doors),
    "clear_of_openings": Part(cells=clear_of_openings),
    "root_zone": Part(cells=root_zone),
    "under_structure": Part(cells=under_structure),
    "keep_outs": Part(cells=keep_outs),
    "fire_clear": Part(cells=fire_clear),
}


def _inside(context: Context) -> Cells:
    # A cell may poke out by what conversion from metres adds, never more.
    grown = context.boundary.buffer(0.01, join_style="mitre")
    return np.asarray(shapely.covers(grown, context.lattice.boxes()), dtype=bool)


def _any(context: Context, cells: list[Cells]) -> Cells:
    none = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    return np.asarray(np.logical_or.reduce([none, *cells]))


def _pane(at: tuple[float, float], outward: tuple[float, float], width_ft: float) -> LineString:
    along = (-outward[1] * width_ft / 2, outward[0] * width_ft / 2)
    return LineString([(at[0] - along[0], at[1] - along[1]), (at[0] + along[0], at[1] + along[1])])


def _strip(at: tuple[float, float], outward: tuple[float, float], width_ft: float) -> Polygon:
    near = _pane(at, outward, width_ft).coords
    far = [(x + outward[0] * OPENING_DEPTH_FT, y + outward[1] * OPENING_DEPTH_FT) for x, y in reversed(near)]
    return Polygon([*near, *far])
