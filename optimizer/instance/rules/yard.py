"""Rules about the yard alone: which cells a room may not cover."""

from dataclasses import replace

import numpy as np
import shapely
from shapely import LineString, Point, Polygon

from optimizer.brief import RuleId
from optimizer.catalogue import SizedRoom, distance_ft, fire_clear_ft, root_rings
from optimizer.fields import door_zone
from optimizer.instance.context import Context
from optimizer.instance.lattice import Cells, any_in_window
from optimizer.instance.pairs import Pair
from optimizer.instance.raster import covered, within
from optimizer.instance.rules.part import Part
from optimizer.instance.variants import Variant
from optimizer.site import BuiltClass, DistanceName

OPENING_DISTANCES: tuple[DistanceName, DistanceName] = ("ahead_of_door", "beside_window")


def inside_setbacks(context: Context, room: SizedRoom) -> Cells:
    """Cells outside the boundary, or closer to an edge than the largest setback of what the room is built as."""
    return np.asarray(~_inside(context) | _before_setbacks(context, room.rules.built_as))


def setbacks_of_choice(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions behind the setbacks of what a choice adds to its kind: a roof, a screen."""
    added = room.built_as(room.choices[variant.choice])[len(room.rules.built_as) :]
    if not added:
        return None
    return ~any_in_window(_before_setbacks(context, added), width=variant.width, depth=variant.depth)


def _before_setbacks(context: Context, built_as: tuple[BuiltClass, ...]) -> Cells:
    corners = context.site.boundary
    blocked = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    for start, end, setbacks in zip(corners, corners[1:] + corners[:1], context.site.setbacks, strict=True):
        depth_ft = max((setbacks.of(built) for built in built_as), default=0.0)
        blocked |= within(context.lattice, LineString([start, end]), depth_ft - 0.01)
    return blocked


def off_buildings(context: Context, _room: SizedRoom) -> Cells:
    """Cells in a building."""
    return any_of(context, [covered(context.lattice, building) for building in context.buildings])


def doors(context: Context, _room: SizedRoom) -> Cells:
    """Cells in the landing and steps of a door."""
    zones = [door_zone(context.site, b, door) for b in context.site.buildings for door in b.doors]
    return any_of(context, [covered(context.lattice, zone) for zone in zones])


def clear_of_openings(context: Context, room: SizedRoom) -> Cells | None:
    """Cells straight out of a door or beside a window that opens, for kitchen, fire and water."""
    if not room.rules.keeps_from_openings:
        return None
    out_ft, beside_ft = (distance_ft(context.site, name) for name in OPENING_DISTANCES)
    strips = [covered(context.lattice, _strip(d.at, d.outward, d.width_ft, out_ft)) for d in context.site.doors]
    panes = [
        within(context.lattice, _pane(w.at, w.outward, w.width_ft), beside_ft) for w in context.site.windows if w.opens
    ]
    return any_of(context, strips + panes)


def root_zone(context: Context, _room: SizedRoom) -> Cells:
    """Cells in the inner ring round a kept tree."""
    trunks, trees = root_rings(context.site).inner_trunks, context.site.trees
    return any_of(context, [within(context.lattice, Point(t.at), trunks * t.trunk_diameter_ft) for t in trees])


def under_structure(context: Context, room: SizedRoom) -> Cells:
    """Cells under a structure that may not hold the room."""
    roofs = [Polygon(s.outline) for s in context.site.structures if room.name not in s.may_hold]
    return any_of(context, [covered(context.lattice, roof) for roof in roofs])


def second_roof(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions of a covered choice that lie under no structure."""
    roofs = [covered(context.lattice, Polygon(s.outline)) for s in context.site.structures if room.name in s.may_hold]
    if not variant.covered or not roofs:
        return None
    return ~any_in_window(any_of(context, roofs), width=variant.width, depth=variant.depth)


def keep_outs(context: Context, room: SizedRoom) -> Cells:
    """Cells of kept-out ground that does not allow the room's kind."""
    areas = [Polygon(k.outline) for k in context.site.keep_outs if room.rules.kind not in k.allow]
    return any_of(context, [covered(context.lattice, area) for area in areas])


def fire_clear(context: Context, room: SizedRoom) -> Cells | None:
    """Cells under a roof or crown, or closer to building, structure or boundary than the fuel asks."""
    if room.rules.kind != "fire":
        return None
    depth_ft = fire_clear_ft(context.site, room.fuel)
    roofs = [Polygon(structure.outline) for structure in context.site.structures]
    crowns = [within(context.lattice, Point(t.at), t.canopy_radius_ft) for t in context.site.trees]
    solid = [*context.buildings, *roofs, context.boundary.exterior]
    return any_of(context, [within(context.lattice, thing, depth_ft) for thing in solid] + crowns)


def fire_from_new_roofs(context: Context, pair: Pair) -> Pair:
    """Fire keeps its distance from a roof that is bought over the other room."""
    for end, other in ((0, 1), (1, 0)):
        rooms = [context.rooms[pair.first], context.rooms[pair.second]]
        if rooms[end].rules.kind == "fire" and any(choice.cover for choice in rooms[other].choices):
            depth_ft = fire_clear_ft(context.site, rooms[end].fuel)
            return replace(pair, cover_apart_ft=depth_ft, cover_end=other)
    return pair


PARTS: dict[RuleId, Part] = {
    "inside_setbacks": Part(cells=inside_setbacks, positions=setbacks_of_choice),
    "off_buildings": Part(cells=off_buildings),
    "door_zone": Part(cells=doors),
    "clear_of_openings": Part(cells=clear_of_openings),
    "root_zone": Part(cells=root_zone),
    "under_structure": Part(cells=under_structure, positions=second_roof),
    "keep_outs": Part(cells=keep_outs),
    "fire_clear": Part(cells=fire_clear, pair=fire_from_new_roofs),
}


def _inside(context: Context) -> Cells:
    # A cell may poke out by what conversion from metres adds, never more.
    grown = context.boundary.buffer(0.01, join_style="mitre")
    return np.asarray(shapely.covers(grown, context.lattice.boxes()), dtype=bool)


def any_of(context: Context, cells: list[Cells]) -> Cells:
    """Cells that are in any of these."""
    none = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    return np.asarray(np.logical_or.reduce([none, *cells]))


def _pane(at: tuple[float, float], outward: tuple[float, float], width_ft: float) -> LineString:
    along = (-outward[1] * width_ft / 2, outward[0] * width_ft / 2)
    return LineString([(at[0] - along[0], at[1] - along[1]), (at[0] + along[0], at[1] + along[1])])


def _strip(at: tuple[float, float], outward: tuple[float, float], width_ft: float, out_ft: float) -> Polygon:
    near = _pane(at, outward, width_ft).coords
    far = [(x + outward[0] * out_ft, y + outward[1] * out_ft) for x, y in reversed(near)]
    return Polygon([*near, *far])
