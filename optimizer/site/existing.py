"""What somebody built or grew in the yard before, beside buildings: walls with their openings. Lengths in feet."""

from dataclasses import dataclass
from typing import Literal

from optimizer.site.things import Point

WallKind = Literal["wall", "fence", "hedge"]
Gate = Literal["locked", "unlocked"]


@dataclass(frozen=True, slots=True)
class WallOpening:
    """A gap in a wall round a point of its line; a gate hides what the wall hides, and a locked one stops feet."""

    at: Point
    width_ft: float
    gate: Gate | None = None


@dataclass(frozen=True, slots=True)
class Wall:
    """A wall, fence or hedge that stays, along a line of two points or more."""

    name: str
    line: tuple[Point, ...]
    kind: WallKind
    height_ft: float | None = None
    openings: tuple[WallOpening, ...] = ()
