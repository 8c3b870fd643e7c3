"""Lengths and areas as a sheet writes them, in the scenario's own unit, and names cut to what a plan can bear."""

from datetime import datetime
from textwrap import wrap
from typing import Literal

from optimizer.brief import RoomWish
from optimizer.layout import Placement
from optimizer.units import feet_inches

Units = Literal["ft", "m"]
FT_IN_M = 0.3048
LONGEST_NAME = 34
_LABEL_LETTERS = 28  # of a line below a room's name


def length_text(length_ft: float, units: Units) -> str:
    """Write a length to the inch, or to the centimetre."""
    return f"{length_ft * FT_IN_M:.2f} m" if units == "m" else feet_inches(length_ft, denominator=1)


def size_text(placement: Placement, units: Units) -> str:
    """Width by depth, as placed; of a circle what it is across."""
    width = length_text(placement.width_ft, units)
    return f"{width} across" if placement.is_circle else f"{width} × {length_text(placement.depth_ft, units)}"


def area_text(area_sqft: float, units: Units) -> str:
    """Write an area in whole square feet, or in tenths of a square metre."""
    return f"{area_sqft * FT_IN_M**2:.1f} m²" if units == "m" else f"{area_sqft:,.0f} sq ft"


def kept_for(wish: RoomWish) -> tuple[str, ...]:
    """What ground is kept for, line by line: "kept free for a hot tub, a swim spa or a pool"; else for later."""
    names = [f"a {name.strip().lower()}" for name in wish.futures]
    listed = " or ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
    return tuple(wrap(f"kept free for {listed or 'later'}", _LABEL_LETTERS))


def short_name(name: str) -> str:
    """Put a name on one line, cut with an ellipsis where a plan has no room for all of it."""
    flat = " ".join(name.split())
    return flat if len(flat) <= LONGEST_NAME else flat[: LONGEST_NAME - 1].rstrip() + "…"


def level_text(z_ft: float, units: Units) -> str:
    """Write a level with its sign: feet to a tenth, or metres to the centimetre."""
    value = round(z_ft * FT_IN_M, 2) if units == "m" else round(z_ft, 1)
    digits = f"{abs(value):.2f}" if units == "m" else f"{abs(value):.1f}"
    return f"{'±' if value == 0 else '+' if value > 0 else '−'}{digits}"


def moment_text(when: datetime) -> str:
    """Write a moment as `21 June, 17:00`."""
    return f"{when.day} {when:%B}, {when:%H:%M}"
