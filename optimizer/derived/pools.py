"""What a pool needs beside its own ground: a closed barrier, alarms on doors inside it, and a pad for its equipment."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import shapely
from shapely import LineString, MultiLineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import pool_figure
from optimizer.derived.pool_pads import pad_places
from optimizer.fields import BUILT_UP_FT, site_shapes
from optimizer.fields.site_walls import open_edge_ft
from optimizer.layout import TOLERANCE_FT, Placed, PlacedRoom
from optimizer.site import Site

_LEAST_MET_SQFT = 1.0  # less of a landing at a terrace is its corner
_STRIP_FT = 6.0  # common practice, no source: a barrier across the ends of such a strip is shorter than one along it
_OUT_FT = 0.5  # from the paving to the middle of the barrier; common practice, no source
_WALL_FT = 0.1  # what lies so near a house wall ends at it


@dataclass(frozen=True, slots=True, eq=False)
class PoolSite:
    """One pool. `barrier` is lines on the plan [ft], house walls left out; empty where another pool's barrier encloses
    it too. `doors` open inside it. `pad` is None where there is no place for one; `pipe_ft` are the pipes to it.
    """

    room: str
    barrier: BaseGeometry = field(default_factory=LineString)
    doors: tuple[str, ...] = ()
    pad: Polygon | None = None
    pipe_ft: float = 0.0


def pool_sites(site: Site, placed: Placed, paths: BaseGeometry) -> tuple[PoolSite, ...]:
    """Each pool of a layout whose ways pave `paths`.

    The barrier runs round the terrace that the pool is part of, paved rooms that touch each other, with strips between
    it and a house and the landings that it meets; walls of the house close it.
    """
    return tuple(_sites(site, placed, paths))


def _sites(site: Site, placed: Placed, paths: BaseGeometry) -> Iterator[PoolSite]:
    fenced = set[str]()
    for pool in (room for room in placed if room.rules.has_deck):
        terrace = _terrace(site, placed, pool)
        doors, enclosed = _with_landings(site, _up_to_house(site, [room.shape for room in terrace]))
        is_new = pool.name not in fenced
        fenced |= {room.name for room in terrace}
        off_ft = _OUT_FT + pool_figure("pad_off_barrier")
        pad, pipe_ft = _pad(site, placed, pool, [paths, enclosed.buffer(off_ft, join_style="mitre")])
        barrier = _barrier(site, enclosed) if is_new else LineString()
        yield PoolSite(pool.name, barrier, doors if is_new else (), pad, pipe_ft)


def _terrace(site: Site, placed: Placed, pool: PlacedRoom) -> Sequence[PlacedRoom]:
    """The pool, and the paved rooms that touch it or each other."""
    found, others = [pool], [room for room in placed.paved if room.name != pool.name]
    for room in found:
        touching = [o for o in others if open_edge_ft(site, room.placement, o.placement) > TOLERANCE_FT]
        found += touching
        others = [other for other in others if other not in touching]
    return found


def _up_to_house(site: Site, shapes: Sequence[Polygon]) -> BaseGeometry:
    """A terrace with the strips that it leaves before a house: too narrow for a barrier on their far side."""
    houses, half = shapely.union_all(site_shapes(site).buildings), _STRIP_FT / 2 + TOLERANCE_FT
    terrace = shapely.union_all(shapes)
    near = shapely.union(terrace, houses).buffer(half, join_style="mitre").buffer(-half, join_style="mitre")
    strips = shapely.get_parts(near.difference(shapely.union(houses, terrace)))
    return shapely.union_all([terrace, *(strip for strip in strips if _is_between(strip, terrace, houses))])


def _is_between(strip: BaseGeometry, terrace: BaseGeometry, houses: BaseGeometry) -> bool:
    """Whether a strip lies along both."""
    return all(strip.buffer(_WALL_FT).intersection(shape).area > _WALL_FT for shape in (terrace, houses))


def _with_landings(site: Site, terrace: BaseGeometry) -> tuple[tuple[str, ...], BaseGeometry]:
    """Doors whose landings a terrace meets, and the terrace with these landings and what lies between."""
    near = terrace.buffer(BUILT_UP_FT + TOLERANCE_FT, join_style="mitre")
    met = [(door.name, zone) for door, zone in site_shapes(site).door_zones if _meets(near, zone)]
    gap = BUILT_UP_FT / 2 + TOLERANCE_FT
    whole = shapely.union_all([terrace, *(zone for _, zone in met)]).buffer(gap, join_style="mitre")
    return tuple(name for name, _ in met), whole.buffer(-gap, join_style="mitre")


def _meets(near: BaseGeometry, zone: Polygon) -> bool:
    return bool(near.intersection(zone).area > _LEAST_MET_SQFT)


def _barrier(site: Site, enclosed: BaseGeometry) -> BaseGeometry:
    """Line just outside the ground that is closed in, where no house stands."""
    wider = enclosed.buffer(_OUT_FT, join_style="mitre").intersection(site_shapes(site).boundary)
    outlines = [part.exterior for part in shapely.get_parts(wider) if isinstance(part, Polygon)]
    walls = shapely.union_all([house.buffer(_WALL_FT, join_style="mitre") for house in site_shapes(site).buildings])
    return shapely.line_merge(MultiLineString(outlines).difference(walls))


def _pad(site: Site, placed: Placed, pool: PlacedRoom, taken: Sequence[BaseGeometry]) -> tuple[Polygon | None, float]:
    """The place for a pad to which the pipes are shortest, and their length along the axes [ft]."""
    ground = shapely.union_all([*placed.shapes, *taken])
    free = [place for place in pad_places(site) if place.intersection(ground).area <= TOLERANCE_FT]
    middle = pool.water.centroid
    runs = [(round(_run_ft(at, pool.water), 2), round(at.centroid.distance(middle), 2), at) for at in free]
    run_ft, _, pad = min(runs, key=lambda found: found[:2], default=(0.0, 0.0, None))
    return pad, run_ft


def _run_ft(one: Polygon, other: Polygon) -> float:
    """Distance of two boxes along the axes [ft]."""
    (left, low, right, top), (x0, y0, x1, y1) = one.bounds, other.bounds
    return float(max(x0 - right, left - x1, 0.0) + max(y0 - top, low - y1, 0.0))
