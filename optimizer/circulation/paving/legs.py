"""From routes to legs: what several trips share is paved once, as wide as its use needs and the land allows."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, compress
from typing import Final, Literal

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.paving.choices import MAIN_COUNT
from optimizer.circulation.paving.land import Land
from optimizer.site import Point

LegUse = Literal["arrival", "main", "service"]
WIDTH_FT: Final[dict[LegUse, float]] = {"arrival": 5.0, "main": 4.0, "service": 3.0}
"""Width that each use wants; a plan has no others. Common practice, no source."""
_GRID_FT: Final = 0.02
_SAME_FT: Final = 0.03
_LEAST_FT: Final = 0.05

Pair = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Leg:
    """A paved stretch between two ends or branchings: its centre line [ft], its use, and the trips that walk on it."""

    points: tuple[Point, ...]
    width_ft: float
    use: LegUse
    trips: tuple[Pair, ...]


def legs_of(
    land: Land, lines: Mapping[Pair, Sequence[Point]], counts: Mapping[Pair, float], arrivals: Collection[Pair]
) -> tuple[Leg, ...]:
    """Legs of the lines that trips take outside what they join [ft].

    `counts` says how often each is walked, `arrivals` names those by which guests come and go.
    """
    there = shapely.union_all([*land.paved, *land.lawns])
    outside = _outside(there, list(lines.values()))
    pieces = list(_pieces(outside))
    middles = shapely.line_interpolate_point(np.array(pieces, dtype=object), 0.5, normalized=True)
    walked = shapely.distance(outside[:, None], middles) <= _SAME_FT
    users: dict[tuple[Pair, ...], list[LineString]] = {}
    for piece, on_it in zip(pieces, walked.T, strict=True):
        users.setdefault(tuple(compress(lines, on_it)), []).append(piece)
    room = land.free.difference(shapely.union_all(land.lawns)).buffer(_SAME_FT, join_style="mitre")
    shapely.prepare(room)
    legs = [
        _leg(room, line, trips, _use(trips, counts, arrivals))
        for trips, parts in users.items()
        for line in _merged(parts)
    ]
    return tuple(_evened(legs))


def _outside(there: BaseGeometry, lines: Sequence[Sequence[Point]]) -> NDArray[np.object_]:
    """The part of each line that is to be paved, what is there left out."""
    whole = [LineString(points) if len(points) > 1 else LineString() for points in lines]
    return np.asarray(shapely.difference(np.array(whole, dtype=object), there))


def _pieces(lines: NDArray[np.object_]) -> Iterator[LineString]:
    """Lines broken wherever they meet, each piece once."""
    # Routes that run together to within the grid become one line, or two would leave hairpins between them.
    snapped = shapely.set_precision(lines, _GRID_FT)
    for part in shapely.get_parts(shapely.node(shapely.union_all(snapped, grid_size=_GRID_FT))):
        if part.length > _LEAST_FT:
            yield part


def _merged(pieces: Sequence[LineString]) -> Iterator[LineString]:
    merged = shapely.line_merge(shapely.MultiLineString(list(pieces)))
    yield from (part.simplify(_SAME_FT) for part in shapely.get_parts(merged))


def _use(trips: Sequence[Pair], counts: Mapping[Pair, float], arrivals: Collection[Pair]) -> LegUse:
    if not set(trips).isdisjoint(arrivals):
        return "arrival"
    return "main" if sum(counts[trip] for trip in trips) >= MAIN_COUNT else "service"


def _leg(room: BaseGeometry, line: LineString, trips: tuple[Pair, ...], use: LegUse) -> Leg:
    points = tuple((float(x), float(y)) for x, y in line.coords)
    return Leg(points, _width_ft(room, line, WIDTH_FT[use]), use, trips)


def _width_ft(room: BaseGeometry, line: LineString, wanted_ft: float) -> float:
    """The widest of the usual widths that lies in the room there is, up to what is wanted."""
    for width in sorted(WIDTH_FT.values(), reverse=True):
        half = width / 2 - _SAME_FT
        if width <= wanted_ft and room.covers(line.buffer(half, cap_style="flat", join_style="mitre")):
            return width
    return CLEAR_WIDTH_FT


def _evened(legs: Sequence[Leg]) -> Iterator[Leg]:
    """Legs of which those of one use that go on into each other are one way, as wide as its narrowest."""
    width = [leg.width_ft for leg in legs]
    ends = [{(round(x, 1), round(y, 1)) for x, y in (leg.points[0], leg.points[-1])} for leg in legs]
    pairs = [
        (i, j)
        for i, j in combinations(range(len(legs)), 2)
        if legs[i].use == legs[j].use and not ends[i].isdisjoint(ends[j])
    ]
    for _ in legs:
        for i, j in pairs:
            width[i] = width[j] = min(width[i], width[j])
    yield from (replace(leg, width_ft=width_ft) for leg, width_ft in zip(legs, width, strict=True))
