"""Destinations: how far the fire and the nook lie from the gathering and from the house."""

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

import shapely
from shapely import LineString, Point
from shapely.geometry.base import BaseGeometry

from optimizer.brief import RoomKind
from optimizer.catalogue import rates
from optimizer.layout import Placed
from optimizer.planting import Planting
from optimizer.site import Site

FROM_GATHERING_FT: Final[dict[RoomKind, tuple[float, float]]] = {"fire": (6.0, 30.0), "nook": (15.0, 45.0)}
"""Edge to edge: nearer is no place of its own, farther is not gone to; common practice, no source."""
BEHIND_A_BED_FT: Final = 8.0
"""So near may a nook be to the gathering with a bed between the two; common practice, no source."""
FROM_A_DOOR_FT: Final = 60.0
"""Farther from every door of the house nobody goes; common practice, no source."""


class Destination(NamedTuple):
    """How far a fire or nook lies from the nearest gathering and door [ft], None without; by how much that is off."""

    room: str
    from_gathering_ft: float | None
    from_door_ft: float | None
    off_ft: float


def destinations(site: Site, placed: Placed, planting: Planting) -> tuple[Destination, ...]:
    """Every placed fire and nook."""
    return tuple(_destinations(site, placed, planting))


def destinations_loss(found: Sequence[Destination]) -> float:
    """Feet off as a loss in money, before weighing."""
    return rates().destination * sum(destination.off_ft for destination in found)


def _destinations(site: Site, placed: Placed, planting: Planting) -> Iterator[Destination]:
    tables = [table.shape for table in placed.of_kind("gathering")]
    wished_beds = (bed.shape for bed in placed.of_kind("bed"))
    beds = shapely.union_all([*(bed.outline for bed in planting.beds), *wished_beds])
    for room in placed.of_kind(*FROM_GATHERING_FT):
        ground = room.shape
        table = min(tables, key=ground.distance, default=None)
        apart = None if table is None else float(ground.distance(table))
        door = min((float(ground.distance(Point(door.at))) for door in site.doors), default=None)
        least, most = FROM_GATHERING_FT[room.kind]
        if room.kind == "nook" and table is not None and middle_line(ground, table).intersects(beds):
            least = BEHIND_A_BED_FT
        off = 0.0 if apart is None else max(0.0, least - apart, apart - most)
        off += 0.0 if door is None else max(0.0, door - FROM_A_DOOR_FT)
        yield Destination(room.name, _rounded(apart), _rounded(door), round(off, 2))


def middle_line(one: BaseGeometry, other: BaseGeometry) -> LineString:
    """Of the shortest lines between two rectangles along the axes the middle one: the same however the yard lies."""
    x0, y0, x1, y1 = one.bounds
    u0, v0, u1, v1 = other.bounds
    (x, u), (y, v) = _nearest(x0, x1, u0, u1), _nearest(y0, y1, v0, v1)
    return LineString([(x, y), (u, v)])


def _nearest(low: float, high: float, other_low: float, other_high: float) -> tuple[float, float]:
    """Where two stretches of an axis are nearest to each other: in the middle of what they share, if they do."""
    least, most = max(low, other_low), min(high, other_high)
    if least <= most:
        return (least + most) / 2, (least + most) / 2
    return (high, other_low) if high < other_low else (low, other_high)


def _rounded(length_ft: float | None) -> float | None:
    return None if length_ft is None else round(length_ft, 2)
