"""Whether the line of sight straight out of the house meets something on purpose, and where ways meet."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from typing import Final

import numpy as np
import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from optimizer.appraisal.grounds import ground_of
from optimizer.brief import RoomKind
from optimizer.circulation import CLEAR_WIDTH_FT, Way
from optimizer.fields import LINE_TOLERANCE_FT, SITES, main_openings, open_yard
from optimizer.fields.order import ON_AXIS_FT
from optimizer.layout import Layout, Placed, Placement, outline, side_ends
from optimizer.scenario import Scenario
from optimizer.site import Door, Point, Site, Window

_AIMS: Final[tuple[RoomKind, ...]] = ("fire", "nook", "bed", "arrival", "pool", "reserve")
_CLEAR_OF_WALL_FT: Final = 0.1  # an opening may stand so far within its wall
_FAR_FT: Final = 1e5


@dataclass(frozen=True, slots=True)
class AxisHit:
    """What the centre line of an opening meets within 1 ft; `off_ft` is how far the nearest centre lies off the line.

    Both are None where there is nothing to meet in the yard; `meets` alone where all is farther off.
    """

    opening: str
    meets: str | None
    off_ft: float | None


def axis_hits(scenario: Scenario, placed: Placed) -> tuple[AxisHit, ...]:
    """Centre lines of the widest door and of the widest window, out to the boundary or the next building.

    They may meet the centre of a tree, a structure, a fire, nook, pool, reserve, arrival or bed, or a bed's end.
    """
    aims, lines = tuple(_aims(scenario.site, placed)), _centre_lines(scenario.site)
    return tuple(_hit(opening, lines[opening], aims) for opening in main_openings(scenario.site))


def centred_rooms(site: Site, layout: Layout) -> tuple[str, ...]:
    """Rooms whose middle lies within 1 in of the centre line of any door or window."""
    lines = _centre_lines(site).values()
    return tuple(
        place.room
        for place in layout.placements
        if any(line.distance(shapely.Point(place.centre)) <= LINE_TOLERANCE_FT for line in lines if not line.is_empty)
    )


def focal_point(ways: Sequence[Way], layout: Layout) -> tuple[Point, int] | None:
    """Point of open ground that most ways pass within a way's clear width, and how many; None where no two meet."""
    whole = np.array([LineString(way.points) for way in ways], dtype=object)
    lines = np.asarray(shapely.difference(whole, ground_of(layout.placements)))
    spots = np.array([spot for pair in combinations(lines, 2) for spot in _meetings(*pair)]).reshape(-1, 2)
    if not len(spots):
        return None
    near_ft = shapely.distance(shapely.points(spots)[:, None], lines[None, :])
    counts = (near_ft <= CLEAR_WIDTH_FT).sum(axis=1)
    # Of points with as many ways, the one that all of them pass nearest.
    best = int(np.lexsort((np.where(near_ft <= CLEAR_WIDTH_FT, near_ft, 0.0).sum(axis=1), -counts))[0])
    return (float(spots[best, 0]), float(spots[best, 1])), int(counts[best])


def _meetings(one: BaseGeometry, other: BaseGeometry) -> Iterator[Point]:
    """Points that two lines share: crossings, and the ends of stretches that they run together."""
    for x, y in shapely.get_coordinates(one.intersection(other)):
        yield (float(x), float(y))


def _aims(site: Site, placed: Placed) -> Iterator[tuple[str, Point]]:
    """Names and points that are worth a line of sight."""
    yield from ((tree.name, tree.at) for tree in site.trees)
    for structure in site.structures:
        middle = outline(structure.outline).centroid
        yield structure.name, (middle.x, middle.y)
    for room in placed.of_kind(*_AIMS):
        yield room.name, room.heart
        if room.kind == "bed":
            yield from ((room.name, end) for end in _bed_ends(room.placement))


def _bed_ends(bed: Placement) -> Iterator[Point]:
    """Middles of the two short edges."""
    for side in ("+x", "-x") if bed.width_ft >= bed.depth_ft else ("+y", "-y"):
        (x0, y0), (x1, y1) = side_ends(bed, side)
        yield ((x0 + x1) / 2, (y0 + y1) / 2)


def _hit(opening: Door | Window, line: BaseGeometry, aims: Sequence[tuple[str, Point]]) -> AxisHit:
    offs = [(float(line.distance(shapely.Point(at))), name) for name, at in aims]
    if line.is_empty or not offs:
        return AxisHit(opening.name, None, None)
    off_ft, name = min(offs, key=lambda entry: entry[0])
    return AxisHit(opening.name, name if off_ft <= ON_AXIS_FT else None, off_ft)


@lru_cache(maxsize=SITES)
def _centre_lines(site: Site) -> dict[Door | Window, BaseGeometry]:
    """Centre lines of the doors and windows."""
    openings: tuple[Door | Window, ...] = (*site.doors, *site.windows)
    return {opening: _centre_line(opening, open_yard(site)) for opening in openings}


def _centre_line(opening: Door | Window, yard: BaseGeometry) -> BaseGeometry:
    """Straight out from the middle of an opening as far as the yard goes without a break; empty outside it."""
    (x, y), (out_x, out_y) = opening.at, opening.outward
    start, end = ((x + away * out_x, y + away * out_y) for away in (_CLEAR_OF_WALL_FT, _FAR_FT))
    pieces = shapely.get_parts(LineString([start, end]).intersection(yard))
    at = shapely.Point(start)
    return next((piece for piece in pieces if piece.distance(at) <= _CLEAR_OF_WALL_FT), LineString())
