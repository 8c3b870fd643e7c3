"""Levels of the paved rooms: where cut and fill balance, at a door's floor, or one terrace with a neighbour."""

from collections.abc import Sequence
from math import ceil
from typing import Final

import shapely

from optimizer.catalogue.steps import step_rules
from optimizer.grading.overlay import on_slab_ft
from optimizer.grading.paved import HUNDREDTH, Paved, Sill, sills
from optimizer.layout import TOLERANCE_FT

_BY_A_DOOR_FT: Final = 2.0  # common practice, no source: nearer to a door's zone a room is stepped out to
_EVEN: Final = 1e-7  # halves of a hundredth round up, whatever the datum
Terrace = frozenset[int]


def room_levels(paved: Paved, balanced_ft: Sequence[float]) -> tuple[float, ...]:
    """Level of each paved room [ft], in hundredths, from the levels at which cut and fill balance.

    A room by a door lies at its flush sill if that is within one riser, else one on a slab that may carry it at the
    top of its overlay. A kitchen and the gathering it serves, and touching rooms less than two risers apart, become
    one terrace: at the lowest sill or slab of its rooms, else at the mean by area, never above the floor of a house
    that it touches. The nearest pair joins first, until all touching rooms are level or two risers apart.
    """
    tied = [_tied(paved, room, wanted) for room, wanted in enumerate(balanced_ft)]
    tied = [on_slab_ft(paved, room, balanced_ft[room]) if at is None else at for room, at in enumerate(tied)]
    caps = [_cap(paved, room) for room in range(len(balanced_ft))]
    terraces: list[Terrace] = [frozenset([room]) for room in range(len(balanced_ft))]
    while True:
        level = {t: _level(paved, t, balanced_ft, tied, caps) for t in terraces}
        of_room = {room: t for t in terraces for room in t}
        joined = _next_pair(paved, of_room, level)
        if joined is None:
            return tuple(level[of_room[room]] for room in range(len(balanced_ft)))
        terraces = [t for t in terraces if t not in joined] + [joined[0] | joined[1]]


def _next_pair(
    paved: Paved, of_room: dict[int, Terrace], level: dict[Terrace, float]
) -> tuple[Terrace, Terrace] | None:
    """Two terraces to make one: those that must, else the nearest two that touch less than two risers apart."""
    for room, other in paved.serving:
        if of_room[room] != of_room[other]:
            return of_room[room], of_room[other]
    pairs = [(of_room[room], of_room[other]) for room, other in paved.touching]
    apart = [pair for pair in pairs if 0 < _gap(pair, level) < _two_risers_ft()]
    return min(apart, key=lambda pair: _gap(pair, level), default=None)


def _gap(pair: tuple[Terrace, Terrace], level: dict[Terrace, float]) -> float:
    return abs(level[pair[0]] - level[pair[1]])


def _two_risers_ft() -> float:
    rules = step_rules()
    return rules.least_risers * rules.least_riser_in / 12


def _level(
    paved: Paved,
    terrace: Terrace,
    balanced_ft: Sequence[float],
    tied: Sequence[float | None],
    caps: Sequence[float],
) -> float:
    at_sills = [sill for room in terrace if (sill := tied[room]) is not None]
    areas = {room: paved.rooms[room].placement.area_sqft for room in sorted(terrace)}
    mean = sum(area * balanced_ft[room] for room, area in areas.items()) / sum(areas.values())
    wanted = min(at_sills) if at_sills else round(mean + _EVEN, 2)
    return min(wanted, *(caps[room] for room in terrace))


def _tied(paved: Paved, room: int, wanted_ft: float) -> float | None:
    """Flush sill of the door that a room lies at, the lowest of several; None where there is none within one riser."""
    shape = paved.rooms[room].shape
    near = [sill for sill in sills(paved.site) if _lies_at(shape, sill)]
    reach = step_rules().highest_riser_in / 12
    return min((sill.flush_ft for sill in near if abs(sill.flush_ft - wanted_ft) < reach), default=None)


def _lies_at(shape: shapely.Polygon, sill: Sill) -> bool:
    away = sill.zone.distance(shape)
    if away <= TOLERANCE_FT:
        return True
    return bool(away <= _BY_A_DOOR_FT and sill.house.distance(shape) <= TOLERANCE_FT)


def _cap(paved: Paved, room: int) -> float:
    """Highest level of a room: a flush sill below the floor of each house that it touches."""
    shape = paved.rooms[room].shape
    floors = [
        building.floor_z_ft
        for building, house in zip(paved.site.buildings, paved.houses, strict=True)
        if building.floor_z_ft is not None and house.distance(shape) <= TOLERANCE_FT
    ]
    flush = step_rules().flush_sill_in / 12
    return min((ceil((floor - flush) * HUNDREDTH - 1e-6) / HUNDREDTH for floor in floors), default=float("inf"))
