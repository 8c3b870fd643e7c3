"""Rules about doors and windows."""

from collections.abc import Iterator
from itertools import product

from shapely import LineString

from optimizer.catalogue import distance_ft
from optimizer.check.case import TOLERANCE_FT, CheckCase, overlap_sqft
from optimizer.check.finding import Finding
from optimizer.derived.boxes import box_along, jambs
from optimizer.layout import PlacedRoom
from optimizer.site import Door, Window


def door_zones(case: CheckCase) -> Iterator[Finding]:
    """Rooms in the landing or steps of a door."""
    for placed, (name, zone) in product(case.placed, case.landings):
        if shared := overlap_sqft(placed.shape, zone):
            words = f"{placed.name} takes {shared:.1f} sq ft of the landing of {name}"
            yield Finding("door_zone", (placed.name, name), shared, "sq ft", words)


def clear_of_openings(case: CheckCase) -> Iterator[Finding]:
    """Kitchens, fire and water straight out of a door, or beside a window that opens; a pool's deck may lie there."""
    for placed in case.placed:
        if placed.rules.keeps_from_openings:
            yield from (found for door in case.site.doors for found in _out_of_door(case, placed, door))
            yield from (found for pane in case.site.windows if pane.opens for found in _at_window(case, placed, pane))


def _out_of_door(case: CheckCase, placed: PlacedRoom, door: Door) -> Iterator[Finding]:
    ahead = box_along(door.at, door.outward, door.width_ft, 0.0, distance_ft(case.site, "ahead_of_door"))
    if shared := overlap_sqft(placed.water, ahead):
        words = f"{placed.name} takes {shared:.1f} sq ft of the ground straight out of {door.name}"
        yield Finding("clear_of_openings", (placed.name, door.name), shared, "sq ft", words)


def _at_window(case: CheckCase, placed: PlacedRoom, window: Window) -> Iterator[Finding]:
    pane = LineString(jambs(window.at, window.outward, window.width_ft))
    asked, found = distance_ft(case.site, "beside_window"), float(placed.water.distance(pane))
    if found < asked - TOLERANCE_FT:
        words = f"{placed.name} is {case.length(found)} from {window.name}, which opens; it keeps {case.length(asked)}"
        yield Finding("clear_of_openings", (placed.name, window.name), asked - found, "ft", words)
