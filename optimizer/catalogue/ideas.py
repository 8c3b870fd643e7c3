"""Ideas: schemes that a whole plan can follow, and what makes one."""

from dataclasses import dataclass
from functools import cache
from typing import Final, Literal, get_args

from optimizer.brief import RoomKind
from optimizer.catalogue.data_files import data

IdeaName = Literal[
    "round the water",
    "under the old roof",
    "beside the house",
    "out in the garden",
    "along one axis",
    "stepping down",
    "a court and a garden room",
    "one court at the house",
    "in a row along the house",
]
IDEAS: tuple[IdeaName, ...] = get_args(IdeaName)
"""The most telling first: a plan is called by the first that it follows."""
Tie = Literal["stepping down", "with a garden room", "in one court"]
TIES: tuple[Tie, ...] = get_args(Tie)
"""What ties the rest to a table whose place is the idea: a further part of the plan's name, the first that holds."""


AWAY_KINDS: Final[tuple[RoomKind, ...]] = ("fire", "nook")
"""Rooms that people go to and sit in, beside the table."""
AIM_KINDS: Final[tuple[RoomKind, ...]] = ("fire", "nook", "pool", "reserve")
"""Rooms that may end a line of sight with the table on it."""


@dataclass(frozen=True, slots=True)
class IdeaRules:
    """Figures of `ideas.yaml`, where each has its meaning; the unit is in the name."""

    table_walk_ft: float
    table_risers: float
    at_house_ft: float
    in_garden_ft: float
    court_ft: float
    apart_ft: float
    step_down_ft: float
    levels: float


@cache
def idea_rules() -> IdeaRules:
    """Figures from the file of ideas."""
    return IdeaRules(**{name: float(value) for name, value in data("ideas.yaml").items()})
