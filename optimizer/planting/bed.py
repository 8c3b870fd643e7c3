"""A bed and why it is there."""

from dataclasses import dataclass
from typing import Literal

from shapely import Polygon

BedReason = Literal[
    "round a tree", "along the house", "between rooms", "as a screen", "round the water", "narrow ground"
]


@dataclass(frozen=True, slots=True, eq=False)
class Bed:
    """A planted piece of ground [ft] and why it is there. Round a tree it is mulch alone: nobody digs there."""

    outline: Polygon
    reason: BedReason
