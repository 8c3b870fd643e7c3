"""Rule about fire: under no roof or crown, and far from what burns."""

from collections.abc import Iterator
from typing import Final

from shapely import Point
from shapely.geometry.base import BaseGeometry

from optimizer.check.case import TOLERANCE_FT, Case, Placed
from optimizer.check.finding import Finding

FIRE_CLEAR_FT: Final = {"gas": 10.0, "wood": 25.0}
"""From building, structure and boundary. Wood: model fire code's recreational fire; gas: common practice, no source."""


def fire_clear(case: Case) -> Iterator[Finding]:
    """Every fire under a crown, or too near to a building, structure or boundary; under a roof the distance is 0."""
    for placed in case.placed:
        if placed.room.rules.kind == "fire":
            yield from _near_solid(case, placed)
            yield from _under_crowns(case, placed)


def _near_solid(case: Case, placed: Placed) -> Iterator[Finding]:
    asked = FIRE_CLEAR_FT[placed.room.fuel or "gas"]
    things = (*case.buildings, *case.structures, ("the boundary", case.boundary.exterior))
    yield from (finding for name, thing in things for finding in _within(case, placed, name, thing, asked))


def _under_crowns(case: Case, placed: Placed) -> Iterator[Finding]:
    for tree in case.site.trees:
        yield from _within(case, placed, tree.name, Point(tree.at), tree.canopy_radius_ft)


def _within(case: Case, placed: Placed, name: str, thing: BaseGeometry, asked: float) -> Iterator[Finding]:
    found = float(placed.shape.distance(thing))
    if found < asked - TOLERANCE_FT:
        words = f"{placed.name} is {case.length(found)} from {name}, fire keeps {case.length(asked)}"
        yield Finding("fire_clear", (placed.name, name), asked - found, "ft", words)
