"""Rule 31 of water in real geometry where no layout is refused for it: what may come later, and equipment by a barrier.

A future that does not fit costs a layout nothing but that future. So these are claims of a result, not rules.
"""

from collections.abc import Iterator, Sequence

from shapely import LineString, MultiLineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import (
    FutureKind,
    distance_ft,
    future_kind,
    futures_of_wish,
    keep_out_ft,
    line_clear_ft,
    pool_figure,
    root_rings,
)
from optimizer.check.case import TOLERANCE_FT, CheckCase
from optimizer.check.finding import Finding
from optimizer.derived import Fit
from optimizer.derived.boxes import jambs
from optimizer.layout import PlacedRoom
from optimizer.site import Door, Window

Kept = tuple[str, BaseGeometry, float]
"""What water keeps off, by its name, and how far [ft]."""


def later_water(case: CheckCase, name: str, future: str, fit: Fit) -> Iterator[Finding]:
    """What a future that is said to fit on the ground of a room breaks there, measured from the water's edge."""
    room, kind = case.placed.of(name), future_kind(future)
    if room is None:
        yield Finding("water_clear", (name,), 1, "room", f"no ground is held for the {future}")
        return
    water, ground = Polygon(fit.water), Polygon(fit.ground)
    if not (_holds(room.shape, ground) and _holds(ground, water) and _is_whole(kind, ground, water)):
        words = f"the {future} with its deck does not lie whole on the ground of {name}"
        yield Finding("water_clear", (name,), 1, "place", words)
    for thing, shape, asked in _kept_off(case, room, kind):
        found = float(water.distance(shape))
        if found < asked - TOLERANCE_FT:
            words = f"the {future} would be {case.length(found)} from {thing}, it keeps {case.length(asked)}"
            yield Finding("water_clear", (name, thing), asked - found, "ft", words)
    if fit.pad is not None and fit.barrier:
        lines = MultiLineString([line for line in fit.barrier if len(line) > 1])
        yield from _by_barrier(case, future, Polygon(fit.pad), lines)


def equipment(case: CheckCase) -> Iterator[Finding]:
    """Equipment of pools that are built, which a child could climb the barrier from."""
    for pool in case.derived.pools:
        if pool.pad is not None and not pool.barrier.is_empty:
            yield from _by_barrier(case, pool.room, pool.pad, pool.barrier)


def held_for_later(case: CheckCase) -> Iterator[Finding]:
    """Ground held for later that is larger than its largest future needs, each way by more than a step of the grid."""
    for room in case.placed.of_kind("reserve"):
        wish = case.scenario.brief.room(room.name)
        needs = [kind.needs_ft for kind in futures_of_wish(wish)] if wish else []
        sides = sorted((room.placement.width_ft, room.placement.depth_ft), reverse=True)
        asked = [max(need[n] for need in needs) for n in (0, 1)] if needs else sides
        over = max(side - most for side, most in zip(sides, asked, strict=True)) - case.scenario.grid_step_ft
        if over > TOLERANCE_FT:
            words = f"{room.name} is {case.length(over)} larger than its largest future needs"
            yield Finding("known_choice", (room.name,), over, "ft", words)


def _holds(outer: Polygon, inner: Polygon) -> bool:
    return bool(outer.buffer(TOLERANCE_FT, join_style="mitre").covers(inner))


def _is_whole(kind: FutureKind, ground: Polygon, water: Polygon) -> bool:
    """Whether ground and water have their sizes, either way round."""
    pairs = ((ground, kind.needs_ft), (water, kind.body_ft))
    return all(_same(side, own) for shape, sides in pairs for side, own in zip(_sides(shape), sides, strict=True))


def _same(one: float, other: float) -> bool:
    return abs(one - other) <= TOLERANCE_FT


def _sides(shape: Polygon) -> Sequence[float]:
    left, low, right, top = shape.bounds
    return sorted((right - left, top - low), reverse=True)


def _kept_off(case: CheckCase, room: PlacedRoom, kind: FutureKind) -> Iterator[Kept]:
    site, shapes, rings = case.site, case.shapes, root_rings(case.site)
    dig_ft = float(pool_figure("over_dig")) if kind.is_dug else 0.0
    for name, edge, setbacks in zip(site.edge_names, shapes.edges, site.setbacks, strict=True):
        yield name, edge, setbacks.water
    yield from ((door.name, _across(door), distance_ft(site, "ahead_of_door")) for door in site.doors)
    panes = [pane for pane in site.windows if pane.opens]
    yield from ((pane.name, _across(pane), distance_ft(site, "beside_window")) for pane in panes)
    for area, (name, ground) in zip(site.keep_outs, case.keep_outs, strict=True):
        yield name, ground, keep_out_ft(site, area.kind, ("water",))
    for line in site.utility_lines:
        yield line.name, LineString(line.line), max(dig_ft, line_clear_ft(site, line))
    trunks = rings.outer_trunks if kind.is_dug else rings.inner_trunks
    yield from ((tree.name, Point(tree.at), trunks * tree.trunk_diameter_ft) for tree in site.trees)
    yield from ((name, ground, dig_ft) for name, ground in _permanent(case, room))


def _across(opening: Door | Window) -> LineString:
    return LineString(jambs(opening.at, opening.outward, opening.width_ft))


def _permanent(case: CheckCase, room: PlacedRoom) -> Iterator[tuple[str, BaseGeometry]]:
    """Houses, walls and paved rooms of phase 1: nobody digs beside them."""
    yield from case.buildings
    yield from ((wall.name, LineString(wall.line)) for wall in case.site.walls)
    yield from ((p.name, p.shape) for p in case.placed.paved if p.phase == 1 and p.name != room.name)


def _by_barrier(case: CheckCase, name: str, pad: Polygon, barrier: BaseGeometry) -> Iterator[Finding]:
    asked, found = float(pool_figure("pad_off_barrier")), float(pad.distance(barrier))
    if found < asked - TOLERANCE_FT:
        words = f"the equipment of {name} is {case.length(found)} from the barrier, nothing to climb is within"
        yield Finding("water_clear", (name,), asked - found, "ft", f"{words} {case.length(asked)} of it")
