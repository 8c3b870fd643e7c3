"""Where the water of each paved room runs: its low edge and what takes it there."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.catalogue.steps import step_rules
from optimizer.grading.edges import OPEN, Strip
from optimizer.grading.paved import Paved, built, yard
from optimizer.layout import FRONT_VECTORS, TOLERANCE_FT, Front, side_ends
from optimizer.layout.shapes import SIDES, middle
from optimizer.site import Point

_CLEAR_FT: Final = 10.0
"""Ground falls away for the first 10 ft; source: IRC R401.3."""
_OPEN_SHARE: Final = 0.5  # common practice, no source: at least so much of a low edge is open


@dataclass(frozen=True, slots=True)
class Fall:
    """A room's fall towards one side: the level of its low edge, and what takes the water.

    `outfall` is "drain", "open ground", the room across which the water runs on, None where it is trapped, or "" where
    no levels are known. `towards` is the best there is even then.
    """

    room: str
    towards: Front
    slope: float
    low_z_ft: float
    outfall: str | None


@dataclass(frozen=True, slots=True)
class _Ahead:
    """Ground 10 ft out of the middle of each room's sides, shape (rooms, sides): its level, whether it is free and in
    the yard, and whether a house stands on the way there. Drains with the level of the ground at them.
    """

    paved: Paved
    z_ft: NDArray[np.float64]
    is_free: NDArray[np.bool_]
    has_a_house: NDArray[np.bool_]
    drains: tuple[tuple[Point, float], ...]


def falls_of(paved: Paved, levels_ft: Sequence[float], strips: Sequence[Strip]) -> tuple[Fall, ...]:
    """Fall of each paved room, away from a house, to a side with an outfall where there is one.

    Without one the water runs across a neighbour that is no higher, if that has an outfall.

    A room's level is that of its middle, or of its high edge where it touches a house. The ground beyond the low edge
    may not rise above the room's level; the little that the edge lies below it is graded off.
    """
    ahead = _ahead(paved)
    falls = list(_own_falls(ahead, levels_ft, strips))
    while True:
        passed = list(_passed_on(ahead, levels_ft, strips, falls))
        if passed == falls:
            return tuple(falls)
        falls = passed


def _ahead(paved: Paved) -> _Ahead:
    ends = [side_ends(room.placement, side) for room in paved.rooms for side in SIDES]
    shape = (len(paved.rooms), len(SIDES))
    out = _CLEAR_FT * np.tile([FRONT_VECTORS[side] for side in SIDES], (len(paved.rooms), 1)).reshape(-1, 2)
    spots = np.array([middle(side) for side in ends]).reshape(-1, 2) + out
    corners = np.array(ends).reshape(-1, 4)
    low, high = (edge(corners[:, :2], corners[:, 2:]) for edge in (np.minimum, np.maximum))
    strips = shapely.box(*np.minimum(low, corners[:, :2] + out).T, *np.maximum(high, corners[:, :2] + out).T)
    inner = shapely.buffer(strips, -TOLERANCE_FT, join_style="mitre")
    houses = shapely.intersects(np.array(paved.houses, dtype=object)[:, None], inner).any(axis=0)
    marks, drains = shapely.points(spots), [u.at for u in paved.site.utilities if u.kind == "drain"]
    is_free = shapely.covers(yard(paved.site), marks) & ~shapely.covers(built(paved.site), marks)
    is_free &= paved.index_at(spots) < 0
    z = paved.ground.z_ft(np.concatenate([spots, np.array(drains).reshape(-1, 2)]))
    levels = tuple(zip(drains, z[len(spots) :].tolist(), strict=True))
    return _Ahead(paved, z[: len(spots)].reshape(shape), is_free.reshape(shape), houses.reshape(shape), levels)


def _own_falls(ahead: _Ahead, levels_ft: Sequence[float], strips: Sequence[Strip]) -> Iterator[Fall]:
    for room, level in enumerate(levels_ft):
        own = [strip for strip in strips if strip.room == room]
        falls = [_fall(ahead, room, level, side) for side in SIDES]
        usable = [fall for fall in falls if _is_usable(ahead, room, level, fall.towards, own)]
        best = min(usable or falls, key=lambda fall: _rank(ahead, room, fall))
        yield best if usable or not ahead.paved.ground.is_known else _trapped(best)


def _fall(ahead: _Ahead, room: int, level_ft: float, side: Front) -> Fall:
    placement, slope = ahead.paved.rooms[room].placement, step_rules().paving_fall
    run = placement.width_ft if FRONT_VECTORS[side][0] else placement.depth_ft
    low = level_ft - slope * run * (1.0 if _by_a_house(ahead.paved, room) else 0.5)
    outfall = _outfall(ahead, room, side, low) if ahead.paved.ground.is_known else ""
    return Fall(placement.room, side, slope, low, outfall)


def _passed_on(
    ahead: _Ahead, levels_ft: Sequence[float], strips: Sequence[Strip], falls: Sequence[Fall]
) -> Iterator[Fall]:
    """Falls with those that were trapped handed on to a neighbour that takes the water from them."""
    for room, fall in enumerate(falls):
        takers = [
            strip
            for strip in strips
            if fall.outfall is None
            and strip.room == room
            and _takes(ahead.paved, levels_ft, strip, falls)
            and not ahead.has_a_house[room, SIDES.index(strip.side)]
        ]
        longest = max(takers, key=lambda strip: strip.length_ft, default=None)
        if longest is None:
            yield fall
        else:
            onward = _fall(ahead, room, levels_ft[room], longest.side)
            yield replace(onward, outfall=ahead.paved.rooms[longest.neighbour].name)


def _takes(paved: Paved, levels_ft: Sequence[float], strip: Strip, falls: Sequence[Fall]) -> bool:
    """Whether the room along a strip is no higher, has an outfall, and does not fall back across the strip."""
    if strip.neighbour < 0 or levels_ft[strip.neighbour] > levels_ft[strip.room]:
        return False
    taker, placement = falls[strip.neighbour], paved.rooms[strip.room].placement
    side_ft = placement.depth_ft if FRONT_VECTORS[strip.side][0] else placement.width_ft
    falls_back = SIDES.index(taker.towards) == (SIDES.index(strip.side) + 2) % 4
    return bool(taker.outfall) and not falls_back and strip.length_ft >= _OPEN_SHARE * side_ft


def _trapped(fall: Fall) -> Fall:
    return replace(fall, outfall=None)


def _by_a_house(paved: Paved, room: int) -> bool:
    shape = paved.rooms[room].shape
    return any(house.distance(shape) <= TOLERANCE_FT for house in paved.houses)


def _is_usable(ahead: _Ahead, room: int, level_ft: float, side: Front, own: Sequence[Strip]) -> bool:
    """Whether at least half of a side is open and not uphill, and no house stands within 10 ft."""
    strips = [strip for strip in own if strip.side == side]
    free = sum(
        strip.length_ft * float((strip.outside_ft <= level_ft + TOLERANCE_FT).mean())
        for strip in strips
        if strip.neighbour == OPEN
    )
    is_open = free >= _OPEN_SHARE * sum(strip.length_ft for strip in strips)
    return is_open and not ahead.has_a_house[room, SIDES.index(side)]


def _outfall(ahead: _Ahead, room: int, side: Front, low_ft: float) -> str | None:
    """What takes the water from the middle of a low edge: a drain that it reaches at 1 %, or ground that falls away."""
    fall, drain_ft = step_rules().ground_fall, step_rules().drain_depth_ft
    low_edge = middle(side_ends(ahead.paved.rooms[room].placement, side))
    if any(z - drain_ft <= low_ft - fall * dist(at, low_edge) for at, z in ahead.drains):
        return "drain"
    spot = room, SIDES.index(side)
    falls_away = ahead.z_ft[spot] <= low_ft - fall * _CLEAR_FT
    return "open ground" if ahead.is_free[spot] and falls_away else None


def _rank(ahead: _Ahead, room: int, fall: Fall) -> tuple[bool, float, float, float]:
    """First where the water gets away, then away from the nearest house, the lowest ground in front, a drain near."""
    placement = ahead.paved.rooms[room].placement
    at = middle(side_ends(placement, fall.towards))
    beyond = float(ahead.z_ft[room, SIDES.index(fall.towards)])
    to_drain = min((dist(drain, at) for drain, _ in ahead.drains), default=0.0)
    away = _away(ahead.paved, placement.centre, FRONT_VECTORS[fall.towards])
    return fall.outfall is None, -round(away, 6), round(beyond, 6), to_drain


def _away(paved: Paved, centre: Point, towards: tuple[int, int]) -> float:
    """1 straight away from the nearest house, -1 straight at it, 0 without houses."""
    spot = shapely.Point(centre)
    if not paved.houses:
        return 0.0
    line = shapely.shortest_line(min(paved.houses, key=spot.distance), spot)
    (x0, y0), (x1, y1) = line.coords
    return float((x1 - x0) * towards[0] + (y1 - y0) * towards[1]) / max(float(line.length), TOLERANCE_FT)
