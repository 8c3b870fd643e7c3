"""What a pool must be careful about: its barrier, the doors inside it, electricity and suction, its equipment."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Final

from optimizer.catalogue import barrier_height_ft, pool_figure, pool_gallons
from optimizer.catalogue.sides import SideKind, side_of_item
from optimizer.circulation import Leg, way_polygon
from optimizer.concepts.words import listed
from optimizer.derived import PoolSite, pool_sites
from optimizer.layout import Placed, PlacedRoom
from optimizer.scenario import Scenario

_ELECTRIC: Final = (
    "Pool: bonding of metal near the water, lights, pump and circuits are for licensed trades under local codes."
)
_GALLON_M3: Final = 0.003785411784
_SUCTION: Final = "Pool: suction fittings must not be able to trap anybody; the maker and local codes say how."


def pool_cautions(scenario: Scenario, placed: Placed, legs: Sequence[Leg]) -> Iterator[str]:
    """All cautions of the pools of a layout; none without one."""
    pools = pool_sites(scenario.site, placed, way_polygon(scenario.site, placed, legs))
    for pool in pools:
        yield from _barrier(scenario, pool)
        yield from _climbed(scenario, placed, pool)
        yield from _equipment(scenario, pool)
        if (room := placed.of(pool.room)) is not None:
            yield _volume(scenario, room)
    if pools:
        yield from (_ELECTRIC, _SUCTION)


def _barrier(scenario: Scenario, pool: PoolSite) -> Iterator[str]:
    if pool.barrier.is_empty:
        return
    high, clear = _length(scenario, barrier_height_ft()), _length(scenario, pool_figure("pad_off_barrier"))
    yield (
        f"Pool barrier: {_length(scenario, round(pool.barrier.length))} of closed barrier, at least {high} high, round "
        f"the {pool.room}; gates close and latch by themselves, and nothing to climb stands within {clear} of it. "
        "Local codes decide."
    )
    if pool.doors:
        said = "opens inside it and needs an alarm" if len(pool.doors) == 1 else "open inside it and need an alarm each"
        yield f"Pool barrier: the {listed(pool.doors)} {said}; local codes decide."


def _climbed(scenario: Scenario, placed: Placed, pool: PoolSite) -> Iterator[str]:
    """Rooms that have something built to climb on too near the barrier."""
    clear_ft = float(pool_figure("pad_off_barrier"))
    found = [
        room.name
        for room in placed
        for item, ground in room.furniture
        if _is_climbed(side_of_item(room.kind, item)) and pool.barrier.distance(ground) < clear_ft
    ]
    if found and not pool.barrier.is_empty:
        names, clear = listed(tuple(dict.fromkeys(found))), _length(scenario, clear_ft)
        yield (
            f"Pool barrier: counters, walls or benches of the {names} stand within {clear} of it and can be climbed; "
            "raise the barrier there, or lead it farther out."
        )


def _is_climbed(side: SideKind | None) -> bool:
    """Whether it bears a child and leads up the barrier: no bed, and no panel that is higher."""
    return side is not None and (side.is_solid or side.is_sat_on) and side.height_ft < barrier_height_ft()


def _equipment(scenario: Scenario, pool: PoolSite) -> Iterator[str]:
    if pool.pad is None:
        long, deep = (_length(scenario, side) for side in pool_figure("pad"))
        yield (
            f"Pool equipment: no free place for its pad, {long} x {deep}, was found at a wall or the boundary; "
            f"find one before the {pool.room} is priced."
        )


def _volume(scenario: Scenario, room: PlacedRoom) -> str:
    left, low, right, top = room.water.bounds
    depth_ft = float(pool_figure("mean_depth"))
    gallons = pool_gallons(right - left, top - low, depth_ft)
    held = f"{gallons:,.0f} gal" if scenario.units == "ft" else f"{gallons * _GALLON_M3:,.0f} cubic metres"
    deep = _length(scenario, depth_ft)
    return (
        f"Pool: the {room.name} holds about {held} at a mean depth of {deep}; local rules say how to fill and drain it."
    )


def _length(scenario: Scenario, length_ft: float) -> str:
    figure = Decimal(str(round(length_ft / scenario.unit_ft, 1))).normalize()
    return f"{figure:f} {scenario.units}"
