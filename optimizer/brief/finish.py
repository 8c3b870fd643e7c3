"""What the ground is to be finished with: a palette of four parts, and the pattern that a field is laid in."""

from dataclasses import dataclass
from typing import Final, Literal

Material = Literal[
    "concrete unit paver",
    "clay brick",
    "natural flag",
    "exposed aggregate concrete",
    "gravel",
    "timber deck",
    "composite deck",
]
Pattern = Literal["running bond", "stacked", "herringbone", "random flag", "panels", "loose", "boards"]
WORTH_DIGITS: Final = 6
"""So that sums of worth that are alike compare alike."""
FinishPartName = Literal["field", "border", "accent", "cap"]


@dataclass(frozen=True, slots=True)
class Finish:
    """A material and the name of its color; None: the first that the catalogue knows."""

    material: Material
    color: str | None = None


@dataclass(frozen=True, slots=True)
class FinishWish:
    """Palette of a yard; None where the catalogue chooses, `by_room` where a room's terrace has a pattern of its own.

    `like` names the building or structure that gave the border its material.
    """

    field: Finish | None = None
    border: Finish | None = None
    accent: Finish | None = None
    cap: Finish | None = None
    pattern: Pattern | None = None
    by_room: tuple[tuple[str, Pattern], ...] = ()
    like: str | None = None


@dataclass(frozen=True, slots=True)
class FinishLevel:
    """A finish that the yard may be built in, and how many times its choices' worth everything is worth in it."""

    name: str
    finish: FinishWish
    worth_factor: float

    def worth(self, of_choices: float) -> float:
        """Worth in this level of choices of so much worth."""
        return round(round(of_choices, WORTH_DIGITS) * self.worth_factor, WORTH_DIGITS)
