"""Whether rooms keep what a person holds of them."""

from collections.abc import Iterator
from math import dist

from shapely import Polygon

from optimizer.brief import Hold
from optimizer.check.case import TOLERANCE_FT, TOLERANCE_SQFT, CheckCase, overlap_sqft
from optimizer.check.finding import Finding
from optimizer.layout import PlacedRoom


def held(case: CheckCase) -> Iterator[Finding]:
    """Rooms off the place, area, front or choice that they are held to; that a room is there is a rule of its own."""
    for hold in case.scenario.brief.holds:
        placed = case.placed.of(hold.room)
        if placed is not None:
            yield from _place(case, hold, placed)
            yield from _areas(hold, placed)
            yield from _kind(hold, placed)


def _place(case: CheckCase, hold: Hold, placed: PlacedRoom) -> Iterator[Finding]:
    if hold.at_ft is None:
        return
    off_ft = dist((placed.placement.x_ft, placed.placement.y_ft), hold.at_ft)
    if off_ft > TOLERANCE_FT:
        words = f"{placed.name} stands {case.length(off_ft)} off the place where it is held"
        yield Finding("held", (placed.name,), off_ft, "ft", words)


def _areas(hold: Hold, placed: PlacedRoom) -> Iterator[Finding]:
    if hold.within is not None:
        outside = float(placed.shape.difference(Polygon(hold.within)).area)
        if outside > TOLERANCE_SQFT:
            words = f"{placed.name} reaches {outside:.1f} sq ft out of the area that it is held in"
            yield Finding("held", (placed.name,), outside, "sq ft", words)
    shared = 0.0 if hold.not_in is None else overlap_sqft(placed.shape, Polygon(hold.not_in))
    if shared:
        words = f"{placed.name} takes {shared:.1f} sq ft of the area that it is held out of"
        yield Finding("held", (placed.name,), shared, "sq ft", words)


def _kind(hold: Hold, placed: PlacedRoom) -> Iterator[Finding]:
    if hold.front not in {None, placed.front}:
        words = f"{placed.name} opens to {placed.front} and is held to {hold.front}"
        yield Finding("held", (placed.name,), 1, "side", words)
    if hold.choice not in {None, placed.placement.choice}:
        words = f"{placed.name} is {placed.placement.choice!r} and is held to {hold.choice!r}"
        yield Finding("held", (placed.name,), 1, "choice", words)
