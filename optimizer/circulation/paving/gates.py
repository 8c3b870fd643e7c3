"""The points that candidate lines join: gates in front of openings, and straight links between facing sides."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import dist
from typing import Final

import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.paving.land import Land
from optimizer.circulation.paving.terminals import Opening, Terminal
from optimizer.layout.arrangement import TOLERANCE_FT
from optimizer.site import Point

_FACING: Final = -0.999  # cosine between two sides that look at each other
_LINK_FT: Final = 16.0  # sides farther apart are joined by candidate lines like any other
_TOUCH_FT: Final = 1e-3
SPARE_FT: Final = 10.0
"""What a way must save to leave a landing over its side, where the steps would have to be turned."""
_OFF_MIDDLE_FT: Final = 1.0  # what a way must save to leave the middle of an opening
_SAME_FT: Final = 1.0  # gates nearer than this to each other are one

Trips = Mapping[int, Collection[int]]
"""By a terminal's number, those that trips lead to or from."""


@dataclass(frozen=True, slots=True)
class Gate:
    """A point where a way leaves a terminal: its number, the corners from the anchor up to it, and the heading out."""

    terminal: int
    inside: tuple[Point, ...]
    at: Point
    out: Point
    shy_ft: float = 0.0
    """Length by which a way from here counts as longer than it is."""

    @property
    def inside_ft(self) -> float:
        """Length from the anchor to the gate [ft]."""
        return sum(dist(a, b) for a, b in pairwise((*self.inside, self.at)))

    @property
    def stub_ft(self) -> float:
        """Paved length between the terminal's edge and the gate; a link begins at the edge itself [ft]."""
        return dist(self.inside[-1], self.at) if len(self.inside) > 1 else 0.0


@dataclass(frozen=True, slots=True)
class Link:
    """Two gates on edges that face each other, joined by a straight paved strip or, where the edges touch, by none."""

    first: Gate
    second: Gate


def gates_of(land: Land, terminals: Sequence[Terminal], trips: Trips) -> tuple[Gate, ...]:
    """Gates of the terminals that trips join and that lie on the ground, half a way's width outside the edge."""
    return tuple(gate for number in sorted(trips) for gate in _gates_at(land, terminals, trips, number))


def _gates_at(land: Land, terminals: Sequence[Terminal], trips: Trips, number: int) -> Iterator[Gate]:
    partners = [terminals[other].anchor for other in sorted(trips) if other != number]
    yield from _gates(land, terminals[number], number, terminals[number].openings, partners)
    for gate in _gates(land, terminals[number], number, terminals[number].spare, partners):
        yield replace(gate, shy_ft=SPARE_FT)


def links_of(land: Land, terminals: Sequence[Terminal], trips: Trips) -> tuple[Link, ...]:
    """Straight links between sides of trips' ends that face each other with free land between."""
    free = land.free.buffer(_TOUCH_FT)
    return tuple(
        link
        for i in sorted(trips)
        for j in sorted(trips[i])
        if i < j
        for a in (*terminals[i].openings, *terminals[i].spare)
        for b in (*terminals[j].openings, *terminals[j].spare)
        if (link := _link(land, free, (i, terminals[i], a), (j, terminals[j], b))) is not None
    )


def _gates(
    land: Land, terminal: Terminal, number: int, openings: Sequence[Opening], partners: Sequence[Point]
) -> list[Gate]:
    half, found = land.width_ft / 2, []
    for opening in openings:
        for along in _stations_ft(opening, half, partners):
            edge = opening.at(along)
            shy_ft = 0.0 if along == opening.length_ft / 2 else _OFF_MIDDLE_FT
            inside = (*terminal.inside(edge), edge)
            found += [Gate(number, inside, at, opening.out, shy_ft) for at in _before(opening, edge, half)]
    on_ground = shapely.covers(land.ground, shapely.points([gate.at for gate in found])) if found else ()
    kept = {gate.inside: gate for gate, is_inside in zip(found[::-1], on_ground[::-1], strict=True) if is_inside}
    return list(kept.values())[::-1]


def _before(opening: Opening, edge: Point, half_ft: float) -> tuple[Point, Point]:
    """Where a way turns towards an opening, the best first: half its width outside, in line with the ways that pass
    there, else on the edge itself, as on a terrace that leaves no way beside it.
    """
    x, y = edge
    away = half_ft - TOLERANCE_FT
    return (x + away * opening.out[0], y + away * opening.out[1]), edge


def _stations_ft(opening: Opening, half_ft: float, partners: Sequence[Point]) -> Iterator[float]:
    """Where along an opening ways may step over: its middle, in line with where they lead, and beside its ends."""
    length = opening.length_ft
    kept: list[float] = []
    ends = (half_ft, length - half_ft)
    for along in (length / 2, *(opening.along_ft(partner) for partner in partners), *ends):
        fits = half_ft - _TOUCH_FT <= along <= length - half_ft + _TOUCH_FT or along == length / 2
        if fits and all(abs(along - one) >= _SAME_FT for one in kept):
            kept.append(along)
    yield from kept


def _link(
    land: Land, free: BaseGeometry, one: tuple[int, Terminal, Opening], other: tuple[int, Terminal, Opening]
) -> Link | None:
    (i, first, a), (j, second, b) = one, other
    if a.out[0] * b.out[0] + a.out[1] * b.out[1] > _FACING:
        return None
    gap = (b.ends[0][0] - a.ends[0][0]) * a.out[0] + (b.ends[0][1] - a.ends[0][1]) * a.out[1]
    low, high = sorted((a.along_ft(b.ends[0]), a.along_ft(b.ends[1])))
    low, high = max(0.0, low), min(a.length_ft, high)
    if land.walls and abs(gap) <= _TOUCH_FT:
        low, high = _between_walls(land, a, low, high)
    if not -_TOUCH_FT <= gap <= _LINK_FT or high - low < CLEAR_WIDTH_FT - _TOUCH_FT:
        return None
    width = min(land.width_ft, high - low)
    along = min(max(_preferred_ft(a, b), low + width / 2), high - width / 2)
    x, y = start = a.at(along)
    end = (x + gap * a.out[0], y + gap * a.out[1])
    strip = LineString([start, end]).buffer(width / 2 - _TOUCH_FT, cap_style="flat") if gap > _TOUCH_FT else None
    if strip is not None and not free.covers(strip):
        return None
    shy = [SPARE_FT if opening in at.spare else 0.0 for at, opening in ((first, a), (second, b))]
    return Link(Gate(i, first.inside(start), start, a.out, shy[0]), Gate(j, second.inside(end), end, b.out, shy[1]))


def _between_walls(land: Land, edge: Opening, low: float, high: float) -> tuple[float, float]:
    """The longest part of a stretch of an edge on which no wall stands."""
    whole = LineString([edge.at(low), edge.at(max(low, high))])
    longest = max(shapely.get_parts(whole.difference(land.walled)), key=shapely.length)
    if longest.is_empty:
        return low, low
    low, high = sorted(map(edge.along_ft, longest.coords))
    return low, high


def _preferred_ft(a: Opening, b: Opening) -> float:
    """In line with the middle of the shorter of two facing openings: a door's rather than a terrace's."""
    shorter = a if a.length_ft <= b.length_ft else b
    return a.along_ft(shorter.at(shorter.length_ft / 2))
