"""What stands in the yard already, beside buildings: `site.paving` and `site.walls`. Lengths come out in feet."""

from typing import Annotated, Final

from pydantic import Field

from optimizer.scenario.part import Part
from optimizer.scenario.values import Coordinate, Corners, Name, Point, Size
from optimizer.site import Gate, PavingFate, Surface, WallKind

MOST_THINGS: Final = 100
"""Pieces of paving or walls of a yard, and openings of a wall, at most."""


class PavingPart(Part):
    """Ground that is paved already."""

    name: Name
    """Name by which relations know it."""
    outline: Corners
    """Corners of the paving."""
    surface: Surface
    """What it is paved with."""
    then: PavingFate
    """What becomes of it: `keep` stays and bears no room, `lift` is broken up and carted away at a price, `reuse` (a
    concrete slab) carries a paved room that lies wholly on it and is lifted where another room stands on it."""
    z: Coordinate | None = None
    """Height of the paving above the datum; where nothing is said it lies on the ground."""


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
