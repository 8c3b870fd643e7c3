"""Distances on foot from edge to edge, round the furniture of the rooms that people walk through on their way."""

from math import isfinite
from typing import Final

from shapely import union_all
from shapely.geometry.base import BaseGeometry

from optimizer.check.case import TOLERANCE_FT, CheckCase
from optimizer.circulation import (
    CLEAR_WIDTH_FT,
    Network,
    Stop,
    access_of,
    network_of,
    stop_beside,
    walked_line,
    walking_ft,
)
from optimizer.layout import PlacedRoom

_BESIDE_FT: Final = CLEAR_WIDTH_FT / 2 - TOLERANCE_FT
Ends = tuple[tuple[str, BaseGeometry], tuple[str, BaseGeometry]]
"""Names and shapes of what a walk joins."""


def on_foot_ft(case: CheckCase, ends: Ends) -> float:
    """Distance on foot [ft] where rooms on the way count as empty; infinite where no way leads."""
    return walking_ft(case.network, *_stops(case.network, ends))


def round_furniture_ft(case: CheckCase, ends: Ends) -> float:
    """Distance on foot [ft] round the furniture of third rooms.

    Where furniture leaves no clear way at all it is the distance past it: that a way is blocked is another rule's.
    """
    plain = on_foot_ft(case, ends)
    if not _is_furniture_in_the_way(case, ends):
        return plain
    standing = [item for room in _walked_through(case, ends) for _, item in room.furniture]
    network = network_of(access_of(case.site, case.placed, standing))
    found = walking_ft(network, *_stops(network, ends))
    return max(plain, found) if isfinite(found) else plain


def _is_furniture_in_the_way(case: CheckCase, ends: Ends) -> bool:
    """Whether the shortest walk would lead through the furniture of a third room."""
    rooms = _walked_through(case, ends)
    line = walked_line(case.network, *_stops(case.network, ends)) if rooms else None
    return line is not None and any(_is_crossed(room, line) for room in rooms)


def _walked_through(case: CheckCase, ends: Ends) -> list[PlacedRoom]:
    names = {name for name, _ in ends}
    return [room for room in case.placed if room.rules.walkable and room.furniture and room.name not in names]


def _is_crossed(room: PlacedRoom, line: BaseGeometry) -> bool:
    return bool(line.distance(union_all([item for _, item in room.furniture])) < _BESIDE_FT)


def _stops(network: Network, ends: Ends) -> tuple[Stop, Stop]:
    access = network.access
    one, other = (access.stop(name) or stop_beside(name, shape, access.ground) for name, shape in ends)
    return one, other
