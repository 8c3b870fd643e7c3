"""What stands in the yard already, beside buildings: `site.walls`, key by key. Lengths come out in feet."""

from typing import Annotated, Final

from pydantic import Field

from optimizer.scenario.part import Part
from optimizer.scenario.values import Name, Point, Size
from optimizer.site import Gate, WallKind

MOST_THINGS: Final = 100
"""Walls of a yard, and openings of a wall, at most."""


class WallOpeningPart(Part):
    """A gap in a wall, with or without a gate."""

    at: Point
    """Middle of the opening, on the wall's line."""
    width: Size
    """Clear width."""
    gate: Gate | None = None
    """The gate in it: `locked` stops people, `unlocked` lets them pass; both hide what the wall hides."""


class WallPart(Part):
    """A wall, fence or hedge inside the yard that stays: it stops people, sight and sun, and costs nothing."""

    name: Name
    """Name by which relations know it."""
    line: Annotated[tuple[Point, ...], Field(min_length=2, max_length=500)]
    """Points of its line."""
    height: Size | None = None
    """Height above the ground."""
    kind: WallKind
    """What it is."""
    openings: Annotated[tuple[WallOpeningPart, ...], Field(max_length=MOST_THINGS)] = ()
    """Gaps in it."""
