"""Where the water of each paved room runs: its low edge and what takes it there."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist
from typing import Final

import numpy as np
import shapely

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


def falls_of(paved: Paved, levels_ft: Sequence[float], strips: Sequence[Strip]) -> tuple[Fall, ...]:
    """Fall of each paved room, away from a house, to a side with an outfall where there is one.

    Without one the water runs across a neighbour that is no higher, if that has an outfall.

    A room's level is that of its middle, or of its high edge where it touches a house. The ground beyond the low edge
    may not rise above the room's level; the little that the edge lies below it is graded off.
    """
    falls = list(_own_falls(paved, levels_ft, strips))
    while True:
        passed = list(_passed_on(paved, levels_ft, strips, falls))
        if passed == falls:
            return tuple(falls)
        falls = passed


def _own_falls(paved: Paved, levels_ft: Sequence[float], strips: Sequence[Strip]) -> Iterator[Fall]:
    for room, level in enumerate(levels_ft):
        own = [strip for strip in strips if strip.room == room]
        falls = [_fall(paved, room, level, side) for side in SIDES]
        usable = [fall for fall in falls if _is_usable(paved, room, level, fall.towards, own)]
        best = min(usable or falls, key=lambda fall: _rank(paved, room, fall))
        yield best if usable or not paved.ground.is_known else _trapped(best)


def _fall(paved: Paved, room: int, level_ft: float, side: Front) -> Fall:
    placement, slope = paved.rooms[room].placement, step_rules().paving_fall
    run = placement.width_ft if FRONT_VECTORS[side][0] else placement.depth_ft
    low = level_ft - slope * run * (1.0 if _by_a_house(paved, room) else 0.5)
    outfall = _outfall(paved, middle(side_ends(placement, side)), side, low) if paved.ground.is_known else ""
    return Fall(placement.room, side, slope, low, outfall)


def _passed_on(
    paved: Paved, levels_ft: Sequence[float], strips: Sequence[Strip], falls: Sequence[Fall]
) -> Iterator[Fall]:
    """Falls with those that were trapped handed on to a neighbour that takes the water from them."""
    for room, fall in enumerate(falls):
        takers = [
            strip
            for strip in strips
            if fall.outfall is None
            and strip.room == room
            and _takes(paved, levels_ft, strip, falls)
            and not _faces_a_house(paved, room, strip.side)
        ]
        longest = max(takers, key=lambda strip: strip.length_ft, default=None)
        if longest is None:
            yield fall
        else:
            onward = _fall(paved, room, levels_ft[room], longest.side)
            yield replace(onward, outfall=paved.rooms[longest.neighbour].name)


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


def _is_usable(paved: Paved, room: int, level_ft: float, side: Front, own: Sequence[Strip]) -> bool:
    """Whether at least half of a side is open and not uphill, and no house stands within 10 ft."""
    strips = [strip for strip in own if strip.side == side]
    free = sum(
        strip.length_ft * float((strip.outside_ft <= level_ft + TOLERANCE_FT).mean())
        for strip in strips
        if strip.neighbour == OPEN
    )
    is_open = free >= _OPEN_SHARE * sum(strip.length_ft for strip in strips)
    return is_open and not _faces_a_house(paved, room, side)


def _faces_a_house(paved: Paved, room: int, side: Front) -> bool:
    """Whether a house stands within 10 ft straight out of a side."""
    (x0, y0), (x1, y1) = side_ends(paved.rooms[room].placement, side)
    x, y = (_CLEAR_FT * step for step in FRONT_VECTORS[side])
    ahead = shapely.box(min(x0, x1, x0 + x), min(y0, y1, y0 + y), max(x0, x1, x0 + x), max(y0, y1, y0 + y))
    inner = ahead.buffer(-TOLERANCE_FT, join_style="mitre")
    return any(house.intersects(inner) for house in paved.houses)


def _outfall(paved: Paved, low_edge: Point, side: Front, low_ft: float) -> str | None:
    """What takes the water from the middle of a low edge: a drain that it reaches at 1 %, or ground that falls away."""
    fall, drain_ft = step_rules().ground_fall, step_rules().drain_depth_ft
    drains = [utility.at for utility in paved.site.utilities if utility.kind == "drain"]
    levels = paved.ground.z_ft(np.array(drains).reshape(-1, 2))
    if any(z - drain_ft <= low_ft - fall * dist(at, low_edge) for at, z in zip(drains, levels, strict=True)):
        return "drain"
    x, y = (at + _CLEAR_FT * step for at, step in zip(low_edge, FRONT_VECTORS[side], strict=True))
    spot = shapely.Point(x, y)
    is_free = not built(paved.site).covers(spot) and int(paved.index_at(np.array([(x, y)]))[0]) < 0
    falls_away = float(paved.ground.z_ft([(x, y)])[0]) <= low_ft - fall * _CLEAR_FT
    return "open ground" if is_free and yard(paved.site).covers(spot) and falls_away else None


def _rank(paved: Paved, room: int, fall: Fall) -> tuple[bool, float, float, float]:
    """First where the water gets away, then away from the nearest house, the lowest ground in front, a drain near."""
    x, y = FRONT_VECTORS[fall.towards]
    placement = paved.rooms[room].placement
    at_x, at_y = middle(side_ends(placement, fall.towards))
    beyond = float(paved.ground.z_ft([(at_x + _CLEAR_FT * x, at_y + _CLEAR_FT * y)])[0])
    to_drain = min((dist(u.at, (at_x, at_y)) for u in paved.site.utilities if u.kind == "drain"), default=0.0)
    return fall.outfall is None, -round(_away(paved, placement.centre, (x, y)), 6), round(beyond, 6), to_drain


def _away(paved: Paved, centre: Point, towards: tuple[int, int]) -> float:
    """1 straight away from the nearest house, -1 straight at it, 0 without houses."""
    spot = shapely.Point(centre)
    if not paved.houses:
        return 0.0
    line = shapely.shortest_line(min(paved.houses, key=spot.distance), spot)
    (x0, y0), (x1, y1) = line.coords
    return float((x1 - x0) * towards[0] + (y1 - y0) * towards[1]) / max(float(line.length), TOLERANCE_FT)
