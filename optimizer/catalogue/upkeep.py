"""How long rooms take to build, and what they ask of their owners each year, as ranges."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Final

from optimizer.brief import RoomKind
from optimizer.catalogue.data_files import data

SIDE_BY_SIDE: Final = 0.7
"""Share of the sum of all rooms' weeks that a crew needs at the best, since work on them overlaps; common practice, no
source.
"""
_NONE: Final = "none"


@dataclass(frozen=True, slots=True)
class Upkeep:
    """Weeks on the site and hours a year, each from low to high; what the hours go into by kind, what is serviced."""

    weeks: tuple[float, float]
    hours: tuple[float, float]
    tasks: tuple[tuple[RoomKind, str], ...]
    service: tuple[str, ...]


def upkeep_of(kinds: Iterable[RoomKind]) -> Upkeep:
    """Time and upkeep of rooms of these kinds, each as often as it is named, on one site."""
    rooms = tuple(kinds)
    each = tuple(dict.fromkeys(rooms))
    weeks, hours = (_sum(key, rooms) for key in ("weeks", "hours"))
    return Upkeep(
        weeks=(SIDE_BY_SIDE * weeks[0], weeks[1]),
        hours=hours,
        tasks=tuple((kind, _record(kind)["tasks"]) for kind in each),
        service=tuple(_record(kind)["service"] for kind in each if _record(kind)["service"] != _NONE),
    )


def _sum(key: str, rooms: Iterable[RoomKind]) -> tuple[float, float]:
    records = [_record("site"), *map(_record, rooms)]
    return (float(sum(record[key][0] for record in records)), float(sum(record[key][1] for record in records)))


def _record(kind: str) -> dict[str, Any]:
    record: dict[str, Any] = data("upkeep.yaml")[kind]
    return record
