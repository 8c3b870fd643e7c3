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
from optimizer.drawing.label_forms import Lines, extent, forms, names_alone, set_lines
from optimizer.drawing.marks import Box, Line, Text
from optimizer.drawing.outlines import inner_box_of, polygon_of
from optimizer.drawing.words import Units
from optimizer.layout import Placement, footprint
from optimizer.site import Point

LEADER_REACHES_FT: Final = (24.0, 48.0)
"""How far from its room a label is looked for: near first, farther only where nothing is free."""
BAND_FT: Final = 1.0
"""Left free around every room, in sizes of type: its own edge stays legible."""
EDGE_FT: Final = 0.5
"""Left free within a room's edge, where a dark border course may run; with a label's own margin about its width."""
NEAR: Final = 2.2
"""A label this near to its room, in sizes of type, and nearer to it than to any other, needs no leader."""
_CLEARLY_FT: Final = 1.0
_APART: Final = 0.7


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
    as beds; `measures` are dimension lines with their `figures`; no leader crosses these or what is `solid`; a label
    within a room lies on what is `banded`, the way in of a machine, only where the room has no other place.
    """

    taken: tuple[BaseGeometry, ...]
    shunned: BaseGeometry
    measures: BaseGeometry
    figures: BaseGeometry
    solid: BaseGeometry
    banded: BaseGeometry
    plan_box: Box


@dataclass(frozen=True, slots=True)
class _Room:
    """One room to be labelled: its floor, the others, what stands and what is only dashed on it, all labels before."""

    placement: Placement
    floor: Polygon
    others: tuple[Polygon, ...]
    fittings: BaseGeometry
    outlines: BaseGeometry
    earlier: BaseGeometry


class _Place(NamedTuple):
    """A free place for a label beside its room, and the leader that it needs there."""

    centre: Point
    leader: BaseGeometry | None
    is_plain: bool


def label_rooms(
    placements: Sequence[Placement],
    fittings: Sequence[tuple[BaseGeometry, BaseGeometry]],
    ground: Ground,
    *,
    measured: frozenset[str],
    purposes: Mapping[str, Sequence[str]],
    units: Units,
    scale: float,
) -> tuple[Label, ...]:
    """Labels of all rooms, each clear of those before it.

    `fittings[i]` is what stands in room i, and what is only dashed in it; `measured` are rooms whose width and depth
    are dimensioned, `purposes` what ground is kept for, by room.
    """
    wanted = [
        tuple(
            forms(
                placement,
                units,
                scale,
                is_measured=placement.room in measured,
                purpose=purposes.get(placement.room, ()),
            )
        )
        for placement in placements
    ]
    return _set_all(placements, fittings, ground, wanted, scale)


def name_rooms(
    placements: Sequence[Placement],
    fittings: Sequence[tuple[BaseGeometry, BaseGeometry]],
    ground: Ground,
    *,
    scale: float,
) -> tuple[Label, ...]:
    """Names of all rooms alone, set in the same way."""
    return _set_all(placements, fittings, ground, [tuple(names_alone(p, scale)) for p in placements], scale)


def _set_all(
    placements: Sequence[Placement],
    fittings: Sequence[tuple[BaseGeometry, BaseGeometry]],
    ground: Ground,
    wanted: Sequence[tuple[Lines, ...]],
    scale: float,
) -> tuple[Label, ...]:
    floors = [footprint(placement) for placement in placements]
    bands = (union_of(*(floor.buffer(BAND_FT * scale) for floor in floors)), *ground.taken, ground.measures)
    labels: tuple[Label, ...] = ()
    for index, placement in enumerate(placements):
        others = (*floors[:index], *floors[index + 1 :])
        earlier = union_of(*(part for label in labels for part in _covered(label)))
        room = _Room(placement, floors[index], others, *fittings[index], earlier)
        labels += (_inside(room, wanted[index], ground) or _outside(room, wanted[index], ground, bands),)
    return labels


def _covered(label: Label) -> tuple[BaseGeometry, ...]:
    """Ground that the labels after it leave free: a line of type about it, so that no name seems to be another's."""
    apart = polygon_of(label.box).buffer(_APART * label.texts[0].size_ft, join_style="mitre")
    return (apart, *(LineString(leader.points) for leader in label.leaders))


def _inside(room: _Room, wanted: Sequence[Lines], ground: Ground) -> Label | None:
    """Label on the floor, off the furniture; over a band or dashed outlines rather than outside."""
    taken = (room.fittings, room.earlier, ground.measures)
    for lighter in ((room.outlines, ground.banded), (room.outlines,), ()):
        for lines in wanted:
            if (centre := _centre_on(room, lines, *taken, *lighter)) is not None:
                return Label(*set_lines(lines, centre))
    return None


def _centre_on(room: _Room, lines: Lines, *taken: BaseGeometry) -> Point | None:
    width, height = extent(lines)
    x1, y1, x2, y2 = inner_box_of(room.placement)
    within = (x1 + EDGE_FT, y1 + EDGE_FT, x2 - EDGE_FT, y2 - EDGE_FT)
    centres = centres_within(within, width_ft=width, height_ft=height, step_ft=0.5)
    return first_free(by_distance(centres, room.placement.centre), *taken, width_ft=width, height_ft=height)


def _outside(room: _Room, wanted: Sequence[Lines], ground: Ground, bands: Sequence[BaseGeometry]) -> Label:
    """Label beside the room, near and on plain ground even if it says less.

    Where no leader comes to it without crossing something, one that does; on a plan without any free ground the
    shortest in the room's middle.
    """
    solid = union_of(*room.others, room.earlier, ground.figures, ground.solid)
    shunned: list[Label] = []
    for reach_ft in LEADER_REACHES_FT:
        for lines in dict.fromkeys((wanted[0], wanted[-2], wanted[-1])):
            plain, other = _best_beside(room, lines, ground, bands, reach_ft, solid)
            if plain is not None:
                return _label(lines, plain)
            shunned += [] if other is None else [_label(lines, other)]
        if shunned:
            return shunned[0]
    for place in _places_beside(room, wanted[-1], ground, bands, LEADER_REACHES_FT[-1], union_of()):
        return _label(wanted[-1], place)
    return Label(*set_lines(wanted[-1], room.placement.centre))


def _label(lines: Lines, place: _Place) -> Label:
    leaders = () if place.leader is None else (_leader(place.leader),)
    return Label(*set_lines(lines, place.centre), leaders)


def _best_beside(
    room: _Room, lines: Lines, ground: Ground, bands: Sequence[BaseGeometry], reach_ft: float, solid: BaseGeometry
) -> tuple[_Place | None, _Place | None]:
    """The nearest place on plain ground, and the nearest on a bed, a band or outside the yard before it."""
    shunned = None
    for place in _places_beside(room, lines, ground, bands, reach_ft, solid):
        if place.is_plain:
            return place, shunned
        shunned = shunned or place
    return None, shunned


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
        near = _needs_no_leader(room, boxes, others, NEAR * lines[0][2])
        lines_to = leader_lines(boxes, inner, is_disc=room.placement.is_circle)
        is_plain = ~shapely.intersects(ground.shunned, boxes)
        for i in map(int, np.flatnonzero(near | ~shapely.intersects(solid, lines_to))):
            yield _Place(_point(free, i), None if near[i] else lines_to[i], bool(is_plain[i]))


def _needs_no_leader(
    room: _Room, boxes: NDArray[np.object_], others: BaseGeometry, near_ft: float
) -> NDArray[np.bool_]:
    own_ft = shapely.distance(boxes, room.floor)
    others_ft = shapely.distance(boxes, others) if room.others else np.full(len(own_ft), np.inf)
    return np.asarray((own_ft < near_ft) & (own_ft + _CLEARLY_FT <= others_ft))


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
