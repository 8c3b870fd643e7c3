"""Name, area and size of each room, where the furniture leaves space for them; else beside the room, if need be with a
leader: never on furniture, and on a bed only where nothing else is free.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.free_space import (
    Points,
    boxes_about,
    by_distance,
    centres_within,
    first_free,
    free_places,
    union_of,
)
from optimizer.drawing.label_forms import Lines, extent, forms, set_lines
from optimizer.drawing.marks import Box, Line, Text
from optimizer.drawing.outlines import inner_box_of, polygon_of
from optimizer.drawing.words import Units
from optimizer.layout import Placement, footprint
from optimizer.site import Point

LEADER_REACHES_FT: Final = (24.0, 48.0)
"""How far from its room a label is looked for: near first, farther only where nothing is free."""
BAND_FT: Final = 2.5
"""Left free around every room: its own edge and what stands along it stay legible."""
EDGE_FT: Final = 0.5
"""Left free within a room's edge, where a dark border course may run; with a label's own margin about its width."""
NEAR_FT: Final = 3.8
"""A label this near to its room, and nearer to it than to any other, needs no leader."""
_CLEARLY_FT: Final = 1.0


@dataclass(frozen=True, slots=True)
class Label:
    """The lines of a room's label, what it covers, and its leader."""

    texts: tuple[Text, ...]
    box: Box
    leaders: tuple[Line, ...] = ()


@dataclass(frozen=True, slots=True)
class Ground:
    """What the labels of a plan have to keep off.

    `taken` is what a label beside a room may not cover, `shunned` what it covers only where nothing else is free, such
    as beds; `measures` are dimension lines with their figures; no leader crosses what is `solid`.
    """

    taken: tuple[BaseGeometry, ...]
    shunned: BaseGeometry
    measures: BaseGeometry
    solid: BaseGeometry
    plan_box: Box


@dataclass(frozen=True, slots=True)
class _Room:
    """One room to be labelled: its floor, the others, what stands on it, and all labels before."""

    placement: Placement
    floor: Polygon
    others: tuple[Polygon, ...]
    fittings: BaseGeometry
    earlier: BaseGeometry


class _Place(NamedTuple):
    """A free place for a label beside its room, and the leader that it needs there."""

    centre: Point
    leader: BaseGeometry | None
    is_plain: bool


def label_rooms(
    placements: Sequence[Placement],
    fittings: Sequence[BaseGeometry],
    ground: Ground,
    *,
    measured: frozenset[str],
    purposes: Mapping[str, Sequence[str]],
    units: Units,
    scale: float,
) -> tuple[Label, ...]:
    """Labels of all rooms, each clear of those before it.

    `fittings[i]` is what stands in room i; `measured` are rooms whose width and depth are dimensioned, `purposes`
    what ground is kept for, by room.
    """
    floors = [footprint(placement) for placement in placements]
    bands = (union_of(*(floor.buffer(BAND_FT * scale) for floor in floors)), *ground.taken, ground.measures)
    labels: tuple[Label, ...] = ()
    for index, placement in enumerate(placements):
        others = (*floors[:index], *floors[index + 1 :])
        earlier = union_of(*(part for label in labels for part in _covered(label)))
        room = _Room(placement, floors[index], others, fittings[index], earlier)
        is_measured, purpose = placement.room in measured, purposes.get(placement.room, ())
        wanted = tuple(forms(placement, units, scale, is_measured=is_measured, purpose=purpose))
        labels += (_inside(room, wanted, ground) or _outside(room, wanted, ground, bands),)
    return labels


def _covered(label: Label) -> tuple[Box | BaseGeometry, ...]:
    return (label.box, *(LineString(leader.points) for leader in label.leaders))


def _inside(room: _Room, wanted: Sequence[Lines], ground: Ground) -> Label | None:
    """Label on the floor, off the furniture."""
    for lines in wanted:
        if (centre := _centre_on(room, lines, room.fittings, room.earlier, ground.measures)) is not None:
            return Label(*set_lines(lines, centre))
    return None


def _centre_on(room: _Room, lines: Lines, *taken: BaseGeometry) -> Point | None:
    width, height = extent(lines)
    x1, y1, x2, y2 = inner_box_of(room.placement)
    within = (x1 + EDGE_FT, y1 + EDGE_FT, x2 - EDGE_FT, y2 - EDGE_FT)
    centres = centres_within(within, width_ft=width, height_ft=height, step_ft=0.5)
    return first_free(by_distance(centres, room.placement.centre), *taken, width_ft=width, height_ft=height)


def _outside(room: _Room, wanted: Sequence[Lines], ground: Ground, bands: Sequence[BaseGeometry]) -> Label:
    """Label beside the room; where no leader comes to it without crossing something, one that does; on a plan without
    any free ground the shortest in the room's middle.
    """
    for lines, is_clear in ((wanted[0], True), (wanted[-1], True), (wanted[-1], False)):
        if (place := _best_beside(room, lines, ground, bands, is_clear=is_clear)) is not None:
            leaders = () if place.leader is None else (_leader(place.leader),)
            return Label(*set_lines(lines, place.centre), leaders)
    return Label(*set_lines(wanted[-1], room.placement.centre))


def _best_beside(
    room: _Room, lines: Lines, ground: Ground, bands: Sequence[BaseGeometry], *, is_clear: bool
) -> _Place | None:
    """The nearest place on plain ground, else the nearest on a bed or outside the yard; with a clear leader or any."""
    solid = union_of(*room.others, room.earlier, ground.measures, ground.solid) if is_clear else union_of()
    for reach_ft in LEADER_REACHES_FT:
        shunned = None
        for place in _places_beside(room, lines, ground, bands, reach_ft, solid):
            if place.is_plain:
                return place
            shunned = shunned or place
        if shunned is not None:
            return shunned
    return None


def _places_beside(
    room: _Room, lines: Lines, ground: Ground, bands: Sequence[BaseGeometry], reach_ft: float, solid: BaseGeometry
) -> Iterator[_Place]:
    """Free places for a label, the nearest first, that need no leader or one that crosses nothing solid."""
    width, height = extent(lines)
    window = room.floor.buffer(reach_ft).intersection(polygon_of(ground.plan_box)).bounds
    centres = centres_within(window, width_ft=width, height_ft=height, step_ft=1.0)
    centres = by_distance(centres, room.placement.centre, edge_of=room.floor)
    inner = room.floor.buffer(-min(room.floor.length / 40, 0.8))
    others = union_of(*room.others)
    for free in free_places(centres, *bands, room.earlier, width_ft=width, height_ft=height):
        boxes = boxes_about(free, width_ft=width, height_ft=height)
        near = _needs_no_leader(room, boxes, others)
        lines_to = leader_lines(boxes, inner, is_disc=room.placement.is_circle)
        is_plain = ~shapely.intersects(ground.shunned, boxes)
        for i in map(int, np.flatnonzero(near | ~shapely.intersects(solid, lines_to))):
            yield _Place(_point(free, i), None if near[i] else lines_to[i], bool(is_plain[i]))


def _needs_no_leader(room: _Room, boxes: NDArray[np.object_], others: BaseGeometry) -> NDArray[np.bool_]:
    own_ft = shapely.distance(boxes, room.floor)
    others_ft = shapely.distance(boxes, others) if room.others else np.full(len(own_ft), np.inf)
    return np.asarray((own_ft < NEAR_FT) & (own_ft + _CLEARLY_FT <= others_ft))


def leader_lines(boxes: NDArray[np.object_], inner: Polygon, *, is_disc: bool) -> NDArray[np.object_]:
    """Shortest lines from boxes to a floor; from the middle of what the two turn to each other where there are many.

    At an end of that a leader would run along the next room or dimension, and seem to be theirs.
    """
    shortest = np.atleast_1d(shapely.shortest_line(boxes, inner))
    if is_disc:
        return shortest
    box, room = shapely.bounds(boxes), np.array(inner.bounds)
    low, high = np.maximum(box[:, :2], room[:2]), np.minimum(box[:, 2:], room[2:])
    if inner.is_empty:
        return shortest
    ends = shapely.get_coordinates(shortest).reshape(-1, 2, 2)
    faces = (low < high)[:, None, :]
    return np.asarray(shapely.linestrings(np.where(faces, ((low + high) / 2)[:, None, :], ends)))


def _leader(line: BaseGeometry) -> Line:
    start, end = line.coords
    return Line("leader", (start, end))


def _point(centres: Points, index: int) -> Point:
    return (float(centres[index, 0]), float(centres[index, 1]))
