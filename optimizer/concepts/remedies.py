"""What could be added to a concept to mend what one would rather not see, with its price: shown, not counted."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import atan2, degrees, dist
from typing import Final

import shapely
from shapely import Polygon, affinity
from shapely.geometry.base import BaseGeometry

from optimizer.appraisal import Appraisal
from optimizer.appraisal.arrival import ArrivalView, arrival_of, arrival_view
from optimizer.catalogue import PriceBook, to_cents
from optimizer.catalogue.sides import side_kind
from optimizer.circulation import way_polygon
from optimizer.concepts.option import Remedy
from optimizer.fields import ground_at_ft
from optimizer.fields.sight import Screen
from optimizer.grading import Flight, grade
from optimizer.layout import Placed
from optimizer.planting import at_services, planting_of
from optimizer.scenario import Scenario
from optimizer.site import Point, Ring, Site

BED_FT: Final = 5.0
"""Depth of a bed that screens, 5 to 8 ft; common practice, no source."""
BED_HEIGHT_FT: Final = 3.0
"""Height of grown shrubs in it; common practice, no source."""
_BEYOND_FT: Final = 1.0  # what a screen is longer than what it hides, at either end
_STEP_FT: Final = 1.0  # places are tried this far apart
_LEAST_FT: Final = 3.0  # nothing shorter is planted or built


@dataclass(frozen=True, slots=True)
class _Kind:
    """A screen that may be built: its name, depth and height [ft], and how the price book counts it."""

    name: str
    depth_ft: float
    height_ft: float
    item: str
    by_area: bool

    def amount(self, length_ft: float, book: PriceBook) -> Decimal:
        quantity = length_ft * self.depth_ft if self.by_area else length_ft
        return to_cents(Decimal(str(round(quantity, 2))) * book.of(self.item).price)


@dataclass(frozen=True, slots=True)
class _Built:
    kind: _Kind
    length_ft: float
    amount: Decimal
    outline: Ring


def _kinds() -> tuple[_Kind, ...]:
    wall = side_kind("seat wall")
    return (
        _Kind("bed", BED_FT, BED_HEIGHT_FT, "planting bed", by_area=True),
        _Kind("seat wall", wall.depth_ft, wall.height_ft, "seat wall", by_area=False),
    )


def remedies_for(scenario: Scenario, placed: Placed, book: PriceBook, appraisal: Appraisal) -> tuple[Remedy, ...]:
    """For each flight that a guest sees on arrival the cheapest bed or low wall that hides it, where one has room.

    A flight counts as hidden where its four corners are, taken at the height of the ground.
    """
    site = scenario.site
    arrival = arrival_of(site, scenario.brief.trips)
    if arrival is None or not appraisal.site.risers_seen_share:
        return ()
    view = arrival_view(site, placed, arrival)
    flights = grade(site, placed, appraisal.ways).built_flights
    seen = [flight for flight in flights if view.sees(flight.at, ground_at_ft(site, flight.at))]
    free = _plantable(scenario, placed, appraisal)
    found = [tuple(_screens(site, book, view, free, flight)) for flight in seen]
    cheapest = [
        (flight, min(ways, key=lambda built: built.amount)) for flight, ways in zip(seen, found, strict=True) if ways
    ]
    return tuple(Remedy(_words(scenario, book, f, b, arrival.name), b.amount, b.outline) for f, b in cheapest)


def _plantable(scenario: Scenario, placed: Placed, appraisal: Appraisal) -> BaseGeometry:
    """Ground that may bear a bed or a wall: all that is bed or lawn, and not kept from it or before a service point."""
    site = scenario.site
    paths = way_polygon(site, placed, appraisal.legs)
    planting = planting_of(site, scenario.brief.relations, placed, paths)
    kept = [Polygon(area.outline) for area in site.keep_outs if "bed" not in area.allow]
    free = shapely.union_all([*planting.lawns, *(bed.outline for bed in planting.beds)]).difference(
        shapely.union_all([*kept, at_services(site)])
    )
    shapely.prepare(free)
    return free


def _screens(site: Site, book: PriceBook, view: ArrivalView, free: BaseGeometry, flight: Flight) -> Iterator[_Built]:
    """Of each kind the nearest to the flight, square to the view, that hides it as far as there is room for it."""
    corners = _corners(flight)
    for kind in _kinds():
        for strip in _strips(kind, view.eye.at, flight.at, corners):
            piece = _with_room(strip, free)
            length_ft = piece.area / kind.depth_ft
            if length_ft >= _LEAST_FT and _hides(site, view, kind, piece, corners):
                outline = tuple((float(x), float(y)) for x, y in piece.exterior.coords[:-1])
                yield _Built(kind, length_ft, kind.amount(length_ft, book), outline)
                break


@dataclass(frozen=True, slots=True)
class _Strip:
    """A rectangle about the flight, in axes whose x runs from the flight at `at` to the eye, `turn_deg` from east."""

    flat: Polygon
    at: Point
    turn_deg: float

    def on_plan(self, shape: Polygon) -> Polygon:
        return affinity.translate(affinity.rotate(shape, self.turn_deg, origin=(0, 0)), *self.at)

    def from_plan(self, shape: BaseGeometry) -> BaseGeometry:
        moved = affinity.translate(shape, 0.0 - self.at[0], 0.0 - self.at[1])
        return affinity.rotate(moved, 0.0 - self.turn_deg, origin=(0, 0))


def _with_room(strip: _Strip, free: BaseGeometry) -> Polygon:
    """Longest part of a strip on the plan that is free over its whole depth; empty where none is."""
    x0, _, x1, _ = strip.flat.bounds
    blocked = shapely.get_parts(strip.from_plan(strip.on_plan(strip.flat).difference(free)))
    taken = [shapely.box(x0, part.bounds[1], x1, part.bounds[3]) for part in blocked]
    parts = shapely.get_parts(strip.flat.difference(shapely.union_all(taken)))
    longest = max((part for part in parts if isinstance(part, Polygon)), key=lambda part: part.area, default=Polygon())
    return strip.on_plan(longest)


def _corners(flight: Flight) -> tuple[Point, ...]:
    (x, y), half = flight.going, flight.width_ft / 2
    return tuple(
        (at[0] + sign * half * y, at[1] - sign * half * x) for at in (flight.at, flight.foot.at) for sign in (-1, 1)
    )


def _strips(kind: _Kind, eye: Point, at: Point, corners: Sequence[Point]) -> Iterator[_Strip]:
    """Strips square to the line from a flight to the eye, from the flight on, each as long as it must be there."""
    away_ft = dist(eye, at)
    if away_ft < kind.depth_ft:
        return
    to_x, to_y = (eye[0] - at[0]) / away_ft, (eye[1] - at[1]) / away_ft
    sideways = [(x - at[0]) * to_y - (y - at[1]) * to_x for x, y in corners]
    turn = degrees(atan2(to_y, to_x))
    for step in range(int((away_ft - kind.depth_ft) / _STEP_FT)):
        before_ft = kind.depth_ft / 2 + step * _STEP_FT
        nearer = 1 - (before_ft - kind.depth_ft / 2) / away_ft
        low, high = nearer * min(sideways) - _BEYOND_FT, nearer * max(sideways) + _BEYOND_FT
        flat = shapely.box(before_ft - kind.depth_ft / 2, -high, before_ft + kind.depth_ft / 2, -low)
        yield _Strip(flat, at, turn)


def _hides(site: Site, view: ArrivalView, kind: _Kind, piece: Polygon, corners: Sequence[Point]) -> bool:
    middle = piece.centroid
    screen = Screen(piece, ground_at_ft(site, (middle.x, middle.y)) + kind.height_ft)
    return not any(view.sees(at, ground_at_ft(site, at), (screen,)) for at in corners)


def _words(scenario: Scenario, book: PriceBook, flight: Flight, built: _Built, arrival: str) -> str:
    wide, long, high = (
        f"{ft / scenario.unit_ft:.1f}".removesuffix(".0") + f" {scenario.units}"
        for ft in (built.kind.depth_ft, built.length_ft, built.kind.height_ft)
    )
    steps = f"the {flight.risers} risers from {flight.between[0]} to {flight.between[1]} seen from {arrival}"
    screen = f"A {built.kind.name} {wide} wide, {long} long and {high} high"
    return f"{screen} hides {steps}: {built.amount:,.0f} {book.currency}"
