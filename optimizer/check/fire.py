"""Rule about fire: under no roof or crown, and far from what burns."""

from collections.abc import Iterator

from shapely import Point
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import fire_clear_ft
from optimizer.check.case import TOLERANCE_FT, CheckCase
from optimizer.check.finding import Finding
from optimizer.layout import PlacedRoom


def fire_clear(case: CheckCase) -> Iterator[Finding]:
    """Every fire under a crown, or too near to a building, structure or boundary; under a roof the distance is 0."""
    for placed in case.placed:
        if placed.kind == "fire":
            yield from _near_solid(case, placed)
            yield from _under_crowns(case, placed)


def _near_solid(case: CheckCase, placed: PlacedRoom) -> Iterator[Finding]:
    asked = fire_clear_ft(case.site, placed.room.fuel)
    things = (*case.buildings, *case.structures, ("the boundary", case.boundary.exterior))
    yield from (finding for name, thing in things for finding in _within(case, placed, name, thing, asked))
    for name, roof in case.covers:
        yield from _within(case, placed, name, roof, asked, told=f"the roof over {name}")


def _under_crowns(case: CheckCase, placed: PlacedRoom) -> Iterator[Finding]:
    for tree in case.site.trees:
        yield from _within(case, placed, tree.name, Point(tree.at), tree.canopy_radius_ft)


def _within(
    case: CheckCase, placed: PlacedRoom, name: str, thing: BaseGeometry, asked: float, *, told: str | None = None
) -> Iterator[Finding]:
    """A fire nearer to a thing than asked; `told` is what it is called in words where that is not its name."""
    found = float(placed.shape.distance(thing))
    if found < asked - TOLERANCE_FT:
        words = f"{placed.name} is {case.length(found)} from {told or name}, fire keeps {case.length(asked)}"
        rooms = tuple(dict.fromkeys((placed.name, name)))
        yield Finding("fire_clear", rooms, asked - found, "ft", words)
