"""A planting plan derived from a layout: beds with a reason, lawn in useful pieces, and what can be neither."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation
from optimizer.fields import SITES, open_yard, site_shapes
from optimizer.fields.existing_paving import standing_paving
from optimizer.fields.ground import steep_ground
from optimizer.layout import TOLERANCE_FT, Placed, areas_only
from optimizer.planting.bed import Bed, BedReason
from optimizer.planting.joined import SAME_SQFT, SCRAP_SQFT, joined
from optimizer.planting.service import at_services
from optimizer.planting.strips import (
    along_buildings,
    at_entrances,
    at_terraces,
    between_rooms,
    inner_roots,
    round_trees,
    round_water,
    screens,
)
from optimizer.site import Site

NARROW_FT: Final = 4.0
"""Ground narrower than this is no lawn: a mower turns badly there; common practice, no source."""
LEAST_LAWN_SQFT: Final = 80.0
"""Smaller pieces are planted; common practice, no source."""
STEEPEST_MOWN: Final = 1 / 3
"""Rise per run above which ground is not mown, but a bank; common practice, no source."""
_NOTHING_SQFT: Final = 1e-4
_HAIR_FT: Final = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class Planting:
    """Beds and pieces of lawn beside the wished ones; ground that is left as it is: before an entrance or a service
    point, and the `bank`, wide ground that may be planted and not mown; and ground of which nothing may be made.
    """

    beds: tuple[Bed, ...]
    lawns: tuple[Polygon, ...]
    left: BaseGeometry
    bank: BaseGeometry
    unused: BaseGeometry


def planting_of(site: Site, relations: Sequence[Relation], placed: Placed, paths: BaseGeometry) -> Planting:
    """Planting of a layout whose ways pave `paths`.

    Each bed takes what those before it left: round trees, where other beds would be dug among roots too, along the
    house, between rooms, as a screen before whom a room must not be seen by, round later water. What is then too narrow
    or small for lawn joins the bed that it lies along.
    """
    free, kept_open, unplanted, unmown = _free(site, placed, paths), *_kept_from(site)
    may_plant = areas_only(free.difference(unplanted))
    beds = tuple(_wanted(site, relations, placed, may_plant))
    rest = areas_only(free.difference(shapely.union_all([bed.outline for bed in beds])))
    # Areas that meet are one, or what is wide together would be narrow.
    may_mow = shapely.union_all(shapely.get_parts(areas_only(rest.difference(unmown))))
    lawns = tuple(_pieces(_wide(may_mow), least_sqft=LEAST_LAWN_SQFT - SAME_SQFT))
    rest = _without_hairs(rest.difference(shapely.union_all(lawns)))
    bank = areas_only(areas_only(_wide(areas_only(rest.difference(may_mow)))).intersection(may_plant))
    left = areas_only(shapely.union(bank, kept_open.intersection(rest)))
    scraps = list(_pieces(areas_only(rest.intersection(may_plant)).difference(left), least_sqft=_NOTHING_SQFT))
    return Planting(joined(beds, scraps), lawns, left, bank, areas_only(rest.difference(may_plant)).difference(left))


def _wanted(site: Site, relations: Sequence[Relation], placed: Placed, may_plant: BaseGeometry) -> Iterator[Bed]:
    """Beds with a reason of their own."""
    strips: tuple[tuple[BedReason, BaseGeometry], ...] = (
        ("along the house", shapely.union(along_buildings(site), at_terraces(site, placed))),
        ("between rooms", between_rooms(placed)),
        ("as a screen", screens(site, relations, placed)),
        ("round the water", round_water(placed)),
    )
    dug = areas_only(shapely.union_all([strip for _, strip in strips]))
    mulched = shapely.union(round_trees(site), inner_roots(site).intersection(dug))
    for reason, strip in (("round a tree", mulched), *strips):
        pieces = list(_pieces(areas_only(areas_only(strip).intersection(may_plant)), least_sqft=SCRAP_SQFT - SAME_SQFT))
        if pieces:
            may_plant = areas_only(may_plant.difference(shapely.union_all(pieces)))
        yield from (Bed(piece, reason) for piece in pieces)


def _free(site: Site, placed: Placed, paths: BaseGeometry) -> BaseGeometry:
    zones = [zone for _, zone in site_shapes(site).door_zones]
    taken = [paths, *zones, *placed.shapes, standing_paving(site, placed.shapes)]
    return areas_only(open_yard(site).difference(areas_only(shapely.union_all(taken))))


@lru_cache(maxsize=SITES)
def _kept_from(site: Site) -> tuple[BaseGeometry, BaseGeometry, BaseGeometry]:
    """Ground before entrances and service points; with that, ground on which no bed may lie; and that of no lawn."""
    shapes, kept_open = site_shapes(site), shapely.union(at_entrances(site), at_services(site))
    unmown = shapely.union(shapes.forbidding("lawn"), steep_ground(site, STEEPEST_MOWN))
    return kept_open, shapely.union(shapes.forbidding("bed"), kept_open), unmown


def _wide(ground: BaseGeometry) -> BaseGeometry:
    """The part of the ground that a square as wide as a mower's turn passes over."""
    half = NARROW_FT / 2 - TOLERANCE_FT  # ground of just that width is wide enough
    return ground.buffer(-half, join_style="mitre").buffer(half, join_style="mitre").intersection(ground)


def _without_hairs(ground: BaseGeometry) -> BaseGeometry:
    """Ground without what rounding leaves along the edge of a lawn: a hair would make a scrap long, or join two."""
    snapped = shapely.set_precision(ground, _HAIR_FT)
    return areas_only(shapely.set_precision(snapped, 0))  # or all that is cut with it would be snapped too


def _pieces(ground: BaseGeometry, *, least_sqft: float) -> Iterator[Polygon]:
    for part in shapely.get_parts(ground):
        if isinstance(part, Polygon) and part.area >= least_sqft:
            yield part
