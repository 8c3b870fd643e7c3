"""What a look is made of: fill, line and hatch of marks, letters of texts.

Weights and dashes are in points (1/72 in) on a sheet 11 in wide, whatever the yard; hatches are in feet of the ground.
"""

from dataclasses import dataclass
from typing import Final

INK: Final = "#2b3036"
SANS: Final = "'Helvetica Neue', Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif"


@dataclass(frozen=True, slots=True)
class Look:
    """Fill, line and hatch of a role; None where it has none."""

    fill: str | None = None
    line: str | None = None
    weight_pt: float = 0.5
    dash_pt: tuple[float, ...] = ()
    hatch: str | None = None
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Hatch:
    """A tile of fine lines: size and path in feet of the ground (y down), and its line."""

    width_ft: float
    height_ft: float
    path: str
    line: str
    weight_pt: float = 0.3
    turn_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class Letters:
    """Colour and style of a text role."""

    fill: str = INK
    family: str = SANS
    weight: int = 400
    italic: bool = False
    halo: str | None = None
