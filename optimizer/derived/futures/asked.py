"""Distances that the edge of later water keeps: by the rules of built water, and for a dig from all that stays."""

from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LineString, Point
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import FutureKind, distance_ft, keep_out_ft, line_clear_ft, pool_figure, root_rings
from optimizer.derived.boxes import jambs
from optimizer.derived.futures.obstacles import PhaseOne, obstacles
from optimizer.fields import site_shapes
from optimizer.layout import PlacedRoom
from optimizer.site import Door, Site, Window


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """A distance that the water's edge keeps from a thing [ft]."""

    rule: str
    name: str
    ground: BaseGeometry
    feet: float


def asked_of(built: PhaseOne, room: PlacedRoom, future: FutureKind) -> Iterator[Asked]:
    """All distances of the water's edge: of every water, and of what is dug from all that stays beside the dig."""
    site, shapes = built.site, site_shapes(built.site)
    for name, edge, setbacks in zip(site.edge_names, shapes.edges, site.setbacks, strict=True):
        yield Asked("setback", name, edge, setbacks.water)
    yield from _openings(site)
    for area, ground in zip(site.keep_outs, shapes.keep_outs, strict=True):
        yield Asked(area.kind, area.name, ground, keep_out_ft(site, area.kind, ("water",)))
    dig_ft = float(pool_figure("over_dig")) if future.is_dug else 0.0
    for line in site.utility_lines:
        yield Asked("line in the ground", line.name, LineString(line.line), max(dig_ft, line_clear_ft(site, line)))
    rings = root_rings(site)
    trunks = rings.outer_trunks if future.is_dug else rings.inner_trunks
    yield from (Asked("roots", tree.name, Point(tree.at), trunks * tree.trunk_diameter_ft) for tree in site.trees)
    if future.is_dug:
        yield from (Asked("over-dig", name, ground, dig_ft) for name, ground in _staying(built, room))


def _openings(site: Site) -> Iterator[Asked]:
    """Water keeps off the ground straight out of a door, and round a window that opens."""
    yield from (Asked("ahead of a door", d.name, _opening(d), distance_ft(site, "ahead_of_door")) for d in site.doors)
    beside_ft = distance_ft(site, "beside_window")
    yield from (Asked("beside a window", w.name, _opening(w), beside_ft) for w in site.windows if w.opens)


def _opening(opening: Door | Window) -> LineString:
    return LineString(jambs(opening.at, opening.outward, opening.width_ft))


def _staying(built: PhaseOne, room: PlacedRoom) -> Iterator[tuple[str, BaseGeometry]]:
    """What stands beside a dig and stays: what is built, and paved rooms."""
    ground = {*(area.name for area in built.site.keep_outs), *(tree.name for tree in built.site.trees)}
    for thing in obstacles(built, 0.0):
        if thing.name not in ground:
            yield thing.name, thing.ground
    for other in built.placed.paved:
        if other.phase == 1 and other.name != room.name:
            yield other.name, other.shape
