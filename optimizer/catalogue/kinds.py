"""What holds for every room of a kind."""

from functools import cache
from typing import Final

from optimizer.brief import RoomKind
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import KindRules

FOCAL_KIND: Final[RoomKind] = "fire"
"""Kind of room that a line of sight out of the house should end at; common practice, no source."""


@cache
def kind_rules(kind: RoomKind) -> KindRules:
    """Rules of a kind, from the file of kinds."""
    entry = data("kinds.yaml")[kind]
    return KindRules(
        kind=kind,
        built_as=tuple(entry["built_as"]),
        walkable=entry["walkable"],
        paved=entry["paved"],
        has_front=entry["has_front"],
        longest_ratio=float(entry["longest_ratio"]),
        keeps_from_openings=entry["keeps_from_openings"],
        passed=entry.get("passed", False),
        grows=entry["grows"],
    )
