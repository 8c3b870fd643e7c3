"""A planting plan derived from a layout: beds with a reason, lawn in useful pieces, and what can be neither."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation
from optimizer.catalogue import SizedRoom
from optimizer.circulation import areas_only, rectangle
from optimizer.fields import door_zone, open_yard
from optimizer.layout import Layout
from optimizer.planting.strips import along_buildings, between_rooms, round_water, screens
from optimizer.site import Site

BedReason = Literal["along the house", "between rooms", "as a screen", "round the water", "narrow ground"]
NARROW_FT: Final = 4.0
"""Ground narrower than this is no lawn: a mower turns badly there; common practice, no source."""
LEAST_BED_SQFT: Final = 6.0
LEAST_LAWN_SQFT: Final = 40.0
"""Smaller pieces are planted; common practice, no source."""
_NOTHING_SQFT: Final = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class Bed:
    """A planted piece of ground [ft] and why it is there."""

    outline: Polygon
    reason: BedReason


@dataclass(frozen=True, slots=True, eq=False)
class Planting:
    """Beds and pieces of lawn beside the wished ones; wide ground that may be planted and not mown, such as a bank,
    which is left as it is; and ground of which neither may be made.
    """

    beds: tuple[Bed, ...]
    lawns: tuple[Polygon, ...]
    left: BaseGeometry
    unused: BaseGeometry


def planting_of(
    site: Site, relations: Sequence[Relation], rooms: Sequence[SizedRoom], layout: Layout, paths: BaseGeometry
) -> Planting:
    """Planting of a layout whose ways pave `paths`.

    Each bed takes what those before it left: along the house, between rooms, as a screen before whom a room must not
    be seen by, round later water; what is then too narrow for lawn is planted as well.
    """
    free = _free(site, layout, paths)
    may_plant, may_mow = (areas_only(free.difference(_forbidding(site, use))) for use in ("bed", "lawn"))
    wanted: tuple[tuple[BedReason, BaseGeometry], ...] = (
        ("along the house", along_buildings(site)),
        ("between rooms", between_rooms(layout)),
        ("as a screen", screens(site, relations, layout)),
        ("round the water", round_water(rooms, layout)),
    )
    beds: list[Bed] = []
    for reason, strip in wanted:
        pieces = _pieces(areas_only(strip).intersection(may_plant), least_sqft=LEAST_BED_SQFT)
        beds += [Bed(piece, reason) for piece in pieces]
        taken = shapely.union_all([bed.outline for bed in beds])
        may_plant, may_mow = (areas_only(ground.difference(taken)) for ground in (may_plant, may_mow))
    lawns = tuple(_pieces(_wide(may_mow), least_sqft=LEAST_LAWN_SQFT))
    rest = free.difference(shapely.union_all([*lawns, *(bed.outline for bed in beds)]))
    left = areas_only(_wide(areas_only(rest.difference(may_mow)))).intersection(may_plant)
    narrow = areas_only(rest.intersection(may_plant)).difference(left)
    beds += [Bed(piece, "narrow ground") for piece in _pieces(narrow, least_sqft=_NOTHING_SQFT)]
    return Planting(tuple(beds), lawns, areas_only(left), rest.difference(may_plant))


def _free(site: Site, layout: Layout, paths: BaseGeometry) -> BaseGeometry:
    zones = [door_zone(site, building, door) for building in site.buildings for door in building.doors]
    taken = [paths, *zones, *(rectangle(placement) for placement in layout.placements)]
    return areas_only(open_yard(site).difference(areas_only(shapely.union_all(taken))))


def _forbidding(site: Site, use: str) -> BaseGeometry:
    """Kept-out ground that does not allow a use."""
    return shapely.union_all([Polygon(area.outline) for area in site.keep_outs if use not in area.allow])


def _wide(ground: BaseGeometry) -> BaseGeometry:
    """The part of the ground that a square as wide as a mower's turn passes over."""
    half = NARROW_FT / 2
    return ground.buffer(-half, join_style="mitre").buffer(half, join_style="mitre").intersection(ground)


def _pieces(ground: BaseGeometry, *, least_sqft: float) -> Iterator[Polygon]:
    for part in shapely.get_parts(ground):
        if isinstance(part, Polygon) and part.area >= least_sqft:
            yield part
