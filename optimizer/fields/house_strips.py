"""Strips between a wall and the terrace that lies before one of its doors."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import shapely
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from optimizer.fields.door_zones import BUILT_UP_FT
from optimizer.fields.site_shapes import site_shapes
from optimizer.fields.terraces import SHARED_EDGE_FT, TERRACE_KINDS
from optimizer.layout import TOLERANCE_FT, Placed
from optimizer.site import Door, Site

BESIDE_DOOR_FT: Final = 3.0
"""How far the strip is paved to each side of a door; layout rule 24, common practice, no source."""
BED_FT: Final = (3.0, 6.0)
"""Least depth and length of a bed in the rest of the strip; layout rule 24, common practice, no source."""
_AT_WALL_FT: Final = 0.1
_ON_AXIS: Final = 1e-6

Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True, eq=False)
class HouseStrip:
    """Ground from wall to terrace [ft], and the part of it before doors, which is paved."""

    ground: BaseGeometry
    before_doors: BaseGeometry

    def beds(self, paved: BaseGeometry) -> BaseGeometry:
        """What is a bed where so much is paved already: pieces deep and long enough."""
        half = BED_FT[0] / 2 - TOLERANCE_FT
        rest = self.ground.difference(shapely.union(self.before_doors, paved))
        deep = rest.buffer(-half, join_style="mitre").buffer(half, join_style="mitre").intersection(rest)
        return shapely.union_all([part for part in shapely.get_parts(deep) if _length_ft(part) >= BED_FT[1]])


def house_strips(site: Site, placed: Placed) -> tuple[HouseStrip, ...]:
    """Strips of a layout's terraces, one for each terrace that lies before the landing of a door.

    Walls off the axes have none, as rooms lie along the axes.
    """
    return tuple(_strips(site, placed))


def _strips(site: Site, placed: Placed) -> Iterator[HouseStrip]:
    zones = site_shapes(site).door_zones
    for room in placed.of_kind(*TERRACE_KINDS):
        bounds = tuple(room.shape.bounds)
        wholes = {door: strip for door, zone in zones if (strip := _strip(site, door, zone, bounds)) is not None}
        ground = shapely.union_all(list(wholes.values()))
        if not ground.is_empty:
            fronts = [
                _before(other, strip)
                for door, strip in wholes.items()
                for other, _ in zones
                if _axis(other) == _axis(door) and _lies_at(other, strip)
            ]
            yield HouseStrip(ground, shapely.union_all(fronts).intersection(ground))


def _lies_at(door: Door, ground: BaseGeometry) -> bool:
    return bool(ground.distance(shapely.Point(door.at)) <= _AT_WALL_FT)


def _strip(site: Site, door: Door, zone: Polygon, room: Bounds) -> BaseGeometry | None:
    """Ground between the door's wall and a room that lies before its landing, as long as the room."""
    axis = _axis(door)
    if axis is None:
        return None
    out, along = door.outward[axis], 1 - axis
    near, edge = (room[axis], zone.bounds[axis + 2]) if out > 0 else (room[axis + 2], zone.bounds[axis])
    shared = min(room[along + 2], zone.bounds[along + 2]) - max(room[along], zone.bounds[along])
    if not abs(near - edge) <= BUILT_UP_FT + TOLERANCE_FT or shared < SHARED_EDGE_FT - TOLERANCE_FT:
        return None
    low, high = sorted((door.at[axis], near))
    whole = box(*_bounds(axis, (low, high), (room[along], room[along + 2])))
    free = whole.difference(shapely.union_all(site_shapes(site).buildings))
    return shapely.union_all([part for part in shapely.get_parts(free) if part.intersects(zone)])


def _axis(door: Door) -> int | None:
    """Axis that a door opens along, 0 for x and 1 for y; None off the axes."""
    return next((axis for axis in (0, 1) if abs(door.outward[1 - axis]) <= _ON_AXIS), None)


def _before(door: Door, ground: BaseGeometry) -> Polygon:
    """Ground before a door and so far to each side of it, as deep as the strip."""
    axis = _axis(door)
    assert axis is not None
    half = door.width_ft / 2 + BESIDE_DOOR_FT
    middle, across = door.at[1 - axis], (ground.bounds[axis], ground.bounds[axis + 2])
    return box(*_bounds(axis, across, (middle - half, middle + half)))


def _bounds(axis: int, across: tuple[float, float], along: tuple[float, float]) -> Bounds:
    """Bounds of a box by its extent along an axis that doors open along, and along the wall."""
    (low, high), (start, end) = across, along
    return (low, start, high, end) if axis == 0 else (start, low, end, high)


def _length_ft(part: BaseGeometry) -> float:
    left, low, right, top = part.bounds
    return float(max(right - left, top - low)) + TOLERANCE_FT
