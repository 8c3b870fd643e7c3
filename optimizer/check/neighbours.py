"""Rules about what stands side by side."""

from collections.abc import Iterator, Sequence
from itertools import chain, combinations
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.check.case import TOLERANCE_FT, TOLERANCE_SQFT, CheckCase, overlap_sqft
from optimizer.check.edges import shared_edge_ft, slot_sqft
from optimizer.check.finding import Finding
from optimizer.circulation.gaps import gaps_between
from optimizer.fields import BUILT_UP_FT, faced_part, free_sides, ground_beside
from optimizer.fields.terraces import meets_walls
from optimizer.layout import PlacedRoom

LEAST_FT: Final = 3.0
"""Least gap between neighbours, and least edge that they share where they touch; common practice, no source."""


def no_overlap(case: CheckCase) -> Iterator[Finding]:
    """Pairs of rooms that overlap."""
    for one, other in combinations(case.placed, 2):
        if shared := overlap_sqft(one.shape, other.shape):
            words = f"{one.name} and {other.name} overlap by {shared:.1f} sq ft"
            yield Finding("no_overlap", (one.name, other.name), shared, "sq ft", words)


def no_slivers(case: CheckCase) -> Iterator[Finding]:
    """Neighbours with a gap too narrow to use, or that touch along too short an edge."""
    rooms = (_between_rooms(case, one, other) for one, other in combinations(case.placed, 2))
    solid = (*case.buildings, *case.structures)
    things = (_beside_thing(case, placed, name, area) for placed, (name, area) in _near(case, solid))
    landings = (_beside_landing(case, placed, name, zone) for placed, (name, zone) in _near(case, case.landings))
    return chain.from_iterable(chain(rooms, things, landings))


def _near(case: CheckCase, things: Sequence[tuple[str, Polygon]]) -> Iterator[tuple[PlacedRoom, tuple[str, Polygon]]]:
    """Rooms with the things that are nearer to them than neighbours may be without touching."""
    rooms = np.array([room.shape for room in case.placed], dtype=object)
    shapes = np.array([shape for _, shape in things], dtype=object)
    for room, thing in np.argwhere(shapely.distance(rooms[:, None], shapes) < LEAST_FT):
        yield case.placed.rooms[room], things[thing]


def _between_rooms(case: CheckCase, one: PlacedRoom, other: PlacedRoom) -> Iterator[Finding]:
    """Rooms that touch along too little, or lie apart by too little along both axes; a circle touches nothing, and what
    is left in the corners of its square is as narrow, so it counts as its square here.
    """
    gaps = _gaps_ft(one, other)
    need = _least_share_ft(case, one.name, other.name) - TOLERANCE_FT
    has_edges = not (one.placement.is_circle or other.placement.is_circle)
    touching = has_edges and any(abs(gaps[i]) <= TOLERANCE_FT and -gaps[1 - i] >= need for i in (0, 1))
    apart = max(gaps) >= LEAST_FT - TOLERANCE_FT
    if not (touching or apart or overlap_sqft(one.shape, other.shape)):
        # Of two rooms that only meet over a corner the wider gap is what is missing least.
        yield _sliver(case, one.name, other.name, max(0.0, *gaps))


def _gaps_ft(one: PlacedRoom, other: PlacedRoom) -> tuple[float, float]:
    """Gaps between the rooms' ranges along x and along y; negative where the ranges overlap."""
    a, b = one.placement, other.placement
    gap_x = max(a.x_ft, b.x_ft) - min(a.right_ft, b.right_ft)
    gap_y = max(a.y_ft, b.y_ft) - min(a.top_ft, b.top_ft)
    return gap_x, gap_y


def _least_share_ft(case: CheckCase, one: str, other: str) -> float:
    """Least shared edge of a pair: a brief that asks two rooms to touch along less is given less."""
    asked = (
        relation.shared_edge_ft
        for relation in case.scenario.brief.relations
        if relation.kind == "touching" and relation.is_hard and set(relation.between) == {one, other}
    )
    return min((LEAST_FT, *(edge for edge in asked if edge is not None)))


def _beside_thing(case: CheckCase, placed: PlacedRoom, name: str, area: Polygon) -> Iterator[Finding]:
    gap = float(placed.shape.distance(area))
    if gap >= LEAST_FT - TOLERANCE_FT or overlap_sqft(placed.shape, area):
        return
    paved = _up_to_wall(placed, area) if name in {building.name for building in case.site.buildings} else placed.shape
    touching = paved.distance(area) <= TOLERANCE_FT and shared_edge_ft(paved, area) >= LEAST_FT - TOLERANCE_FT
    if not touching or slot_sqft(paved, area, LEAST_FT) > TOLERANCE_SQFT:
        yield _sliver(case, placed.name, name, gap)


def _up_to_wall(placed: PlacedRoom, building: Polygon) -> BaseGeometry:
    """A room with the ground between it and the walls of a building that it is paved up to."""
    if not meets_walls(placed):
        return placed.shape
    gaps = gaps_between([placed.shape], [building], BUILT_UP_FT + TOLERANCE_FT)
    return shapely.union_all([placed.shape, *(gap.difference(building) for gap in gaps)])


def _beside_landing(case: CheckCase, placed: PlacedRoom, door: str, zone: Polygon) -> Iterator[Finding]:
    """A strip between a room and a side of a door zone that it faces, too wide to build the landing up to the room.

    Up to a circle no landing is built.
    """
    built_up_ft = -1.0 if placed.placement.is_circle else BUILT_UP_FT
    for side in free_sides(zone):
        gap = float(LineString(side).distance(placed.shape.intersection(ground_beside(side, LEAST_FT))))
        faces = overlap_sqft(placed.shape, ground_beside(faced_part(side), LEAST_FT))
        if faces and built_up_ft + TOLERANCE_FT < gap < LEAST_FT - TOLERANCE_FT:
            words = f"{placed.name} leaves a strip of {case.length(gap)} beside the landing of {door}"
            yield Finding("no_slivers", (placed.name, door), LEAST_FT - gap, "ft", words)


def _sliver(case: CheckCase, one: str, other: str, gap_ft: float) -> Finding:
    words = f"{one} and {other} are {case.length(gap_ft)} apart with less than {case.length(LEAST_FT)} of room or edge"
    return Finding("no_slivers", (one, other), LEAST_FT - gap_ft, "ft", words)
