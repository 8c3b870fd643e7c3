"""A future fitted into the ground that is held for it: where it misses least, and what it misses."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import ceil
from typing import Final

import numpy as np
import shapely
from shapely import Polygon, box
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import (
    FutureKind,
    Item,
    SizedChoice,
    SizedRoom,
    kind_rules,
    pool_figure,
)
from optimizer.derived.futures.asked import Asked, asked_of
from optimizer.derived.futures.distances import Distance, distances_of
from optimizer.derived.futures.obstacles import PhaseOne
from optimizer.derived.pools import PoolSite, pool_sites
from optimizer.layout import TOLERANCE_FT, Layout, Placed, PlacedRoom, Placement, placed_of
from optimizer.site import Ring

_STEP_FT: Final = 0.5


@dataclass(frozen=True, slots=True)
class Miss:
    """What a future has too little of: it asks so much of `rule` from the thing named, and has `found_ft`."""

    rule: str
    name: str
    asked_ft: float
    found_ft: float

    @property
    def short_ft(self) -> float:
        """How much is missing [ft]."""
        return self.asked_ft - self.found_ft


@dataclass(frozen=True, slots=True)
class Fit:
    """Where a future lies in held ground: its water and its ground with deck and service space [ft].

    What is dug has a barrier of its own and a pad for its equipment, None where no place for one was found.
    `distances` are those that its water misses, and of each rule the one that comes nearest to it.
    """

    water: Ring
    ground: Ring
    misses: tuple[Miss, ...] = ()
    barrier: tuple[Ring, ...] = ()
    doors: tuple[str, ...] = ()
    pad: Ring | None = None
    distances: tuple[Distance, ...] = ()

    @property
    def is_kept(self) -> bool:
        """Whether nothing is missing."""
        return not self.misses


def fitted(built: PhaseOne, room: PlacedRoom, future: FutureKind) -> Fit:
    """Where the future misses least in the held ground of a room; of equal places the one nearest to its middle."""
    ground, water, asked = _least_missed(built, room, future)
    pool = _as_pool(built, room, ground, water) if future.is_dug else None
    misses = (*_too_small(room, future), *_missed(asked, water), *_no_pad(pool))
    barrier = () if pool is None else tuple(_lines(pool.barrier))
    pad = None if pool is None or pool.pad is None else _ring(pool.pad)
    doors = pool.doors if pool else ()
    return Fit(_ring(water), _ring(ground), misses, barrier, doors, pad, distances_of(asked, water))


def is_fitted(built: PhaseOne, room: PlacedRoom, future: FutureKind) -> bool:
    """Whether a future fits: `fitted(...).is_kept`, without what the answer does not need."""
    if any(_too_small(room, future)):
        return False
    ground, water, asked = _least_missed(built, room, future)
    if any(_missed(asked, water)):
        return False
    return not future.is_dug or _as_pool(built, room, ground, water).pad is not None


def _least_missed(built: PhaseOne, room: PlacedRoom, future: FutureKind) -> tuple[Polygon, Polygon, list[Asked]]:
    """Ground and water of the future where it misses least, and the distances that are asked of its water."""
    grounds = [*_grounds(room, future)]
    waters = np.array([_water(ground, future) for ground in grounds])
    asked = [*asked_of(built, room, future)]
    short = np.zeros(len(grounds))
    for one in asked:
        short += np.maximum(one.feet - TOLERANCE_FT - shapely.distance(waters, one.ground), 0.0)
    off = [round(ground.centroid.distance(room.shape.centroid), 3) for ground in grounds]
    best = min(range(len(grounds)), key=lambda n: (round(float(short[n]), 3), off[n], grounds[n].bounds))
    return grounds[best], waters[best], asked


def _grounds(room: PlacedRoom, future: FutureKind) -> Iterator[Polygon]:
    """Places for what the future needs, either way round; in the middle where the held ground is too small for it."""
    left, low, right, top = room.shape.bounds
    sizes = dict.fromkeys((future.needs_ft, future.needs_ft[::-1]))
    fits = [size for size in sizes if size[0] <= right - left + TOLERANCE_FT and size[1] <= top - low + TOLERANCE_FT]
    for wide, deep in fits or [_along(room, future.needs_ft)]:
        for x, y in product(_starts(left, right - wide), _starts(low, top - deep)):
            yield box(x, y, x + wide, y + deep)


def _along(room: PlacedRoom, size: tuple[float, float]) -> tuple[float, float]:
    """A size with its long side along that of the held ground."""
    return size if room.placement.width_ft >= room.placement.depth_ft else size[::-1]


def _starts(low: float, high: float) -> Sequence[float]:
    if high <= low + TOLERANCE_FT:
        return [(low + high) / 2]
    return [float(at) for at in np.linspace(low, high, ceil((high - low) / _STEP_FT) + 1)]


def _water(ground: Polygon, future: FutureKind) -> Polygon:
    """The water in the middle of its ground, long sides along each other."""
    left, low, right, top = ground.bounds
    across = right - left >= top - low
    wide, deep = future.body_ft if across else future.body_ft[::-1]
    x, y = (left + right) / 2, (low + top) / 2
    return box(x - wide / 2, y - deep / 2, x + wide / 2, y + deep / 2)


def _too_small(room: PlacedRoom, future: FutureKind) -> Iterator[Miss]:
    sides = zip(_along(room, future.needs_ft), (room.placement.width_ft, room.placement.depth_ft), strict=True)
    if min(future.needs_ft) <= min(room.placement.width_ft, room.placement.depth_ft) + TOLERANCE_FT:
        sides = zip(sorted(future.needs_ft), sorted((room.placement.width_ft, room.placement.depth_ft)), strict=True)
    for asked_ft, found_ft in sides:
        if found_ft < asked_ft - TOLERANCE_FT:
            yield Miss("held ground", room.name, asked_ft, found_ft)


def _missed(asked: Sequence[Asked], water: Polygon) -> Iterator[Miss]:
    """What is missing, the most first; of one thing only what misses most."""
    found = [(one, float(water.distance(one.ground))) for one in asked]
    short = [(one, found_ft) for one, found_ft in found if found_ft < one.feet - TOLERANCE_FT]
    said = set[str]()
    for one, found_ft in sorted(short, key=lambda pair: (round(pair[1] - pair[0].feet, 3), pair[0].name)):
        if one.name not in said:
            said.add(one.name)
            yield Miss(one.rule, one.name, round(one.feet, 4), round(found_ft, 4))


def _no_pad(pool: PoolSite | None) -> Iterator[Miss]:
    if pool is not None and pool.pad is None:
        yield Miss("equipment pad", "wall or boundary", float(pool_figure("pad")[0]), 0.0)


def _as_pool(built: PhaseOne, room: PlacedRoom, ground: Polygon, water: Polygon) -> PoolSite:
    """What the future needs around it, by the rules of a pool that is built now."""
    left, low, right, top = ground.bounds
    x0, y0, x1, y1 = water.bounds
    item = Item("water", x0 - left, y0 - low, x1 - x0, y1 - y0)
    choice = SizedChoice("later", right - left, top - low, seats=0, worth=0.0, furniture=(item,))
    pool = SizedRoom(room.name, kind_rules("pool"), required=False, phase=room.phase, choices=(choice,))
    there = Placement(room.name, "later", left, low, right - left, top - low, "+y")
    sites = pool_sites(built.site, _with(built.placed, pool, there), built.paths)
    return next(site for site in sites if site.room == room.name)


def _with(placed: Placed, pool: SizedRoom, there: Placement) -> Placed:
    others = placed.without(pool.name)
    rooms = [room for room in placed.wished if room.name != pool.name]
    return placed_of((*rooms, pool), Layout((*others.layout.placements, there)))


def _ring(ground: Polygon) -> Ring:
    return tuple((round(float(x), 4), round(float(y), 4)) for x, y in ground.exterior.coords[:-1])


def _lines(barrier: BaseGeometry) -> Iterator[Ring]:
    for line in shapely.get_parts(barrier):
        if points := tuple((round(float(x), 4), round(float(y), 4)) for x, y in shapely.get_coordinates(line)):
            yield points
