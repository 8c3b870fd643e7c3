"""What somebody built or grew in the yard before, beside buildings: walls with openings, paving. Lengths in feet."""

from dataclasses import dataclass
from typing import Literal

from optimizer.site.things import Point, Ring

WallKind = Literal["wall", "fence", "hedge"]
Gate = Literal["locked", "unlocked"]
Surface = Literal["asphalt", "brick", "concrete", "gravel", "pavers", "stone"]
PavingFate = Literal["keep", "lift", "reuse"]


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


@dataclass(frozen=True, slots=True)
class Paving:
    """Ground that is paved already, and what becomes of it: it stays, is lifted, or may carry a room.

    `z_ft` is its level above the datum; None where it lies on the ground.
    """

    name: str
    outline: Ring
    surface: Surface
    then: PavingFate
    z_ft: float | None = None
