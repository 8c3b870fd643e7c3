"""Steps between rooms and on ways: a line for each riser, as wide as the flight."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import dist
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.circulation import Leg, Way
from optimizer.drawing.marks import Line
from optimizer.grading import Flight, grade
from optimizer.layout import Placed, shared_edge_ft
from optimizer.site import Point, Site

_EVERY_FT: Final = 0.25
_EVEN_FT: Final = 0.05


def flight_marks(
    site: Site, placed: Placed, ways: Sequence[Way], legs: Sequence[Leg] = (), paved: BaseGeometry | None = None
) -> Iterator[Line]:
    """Risers of every flight that the levels ask for; those at a door stand in its zone and are drawn with it.

    Steps on a way lie square across it on ground that its `legs` pave, outside landings and rooms: where the levels put
    them, or as near as they find room. Where the way is too short for them, as between a landing and the terrace that
    it is built up to, the landing's own treads are all that is drawn.
    """
    pairs = {way.between for way in ways}
    ground = (paved or Polygon()).buffer(_EVEN_FT)
    shapely.prepare(ground)
    for flight in grade(site, placed, ways).flights:
        if _between_rooms(flight, placed):
            yield from _risers(flight)
        elif flight.between in pairs and (laid := _on_its_way(flight, legs, ground)) is not None:
            yield from _risers(laid)


def _between_rooms(flight: Flight, placed: Placed) -> bool:
    one, other = (placed.of(name) for name in flight.between)
    return one is not None and other is not None and shared_edge_ft(one.placement, other.placement) > 0


def _on_its_way(flight: Flight, legs: Sequence[Leg], ground: BaseGeometry) -> Flight | None:
    """The flight at the place on its way that is nearest to its own and has room for all of its risers."""
    own = [leg for leg in legs if flight.between in leg.trips]
    places = sorted(_places(flight, own), key=lambda place: round(dist(place.at, flight.at), 3))
    lines = (shapely.multilinestrings([LineString(line.points) for line in _risers(place)]) for place in places)
    return next((place for place, drawn in zip(places, lines, strict=True) if ground.covers(drawn)), None)


def _places(flight: Flight, legs: Sequence[Leg]) -> Iterator[Flight]:
    """The flight at many places along the straight parts of legs, climbing as it does, as wide as the leg."""
    for leg in legs:
        for start, end in pairwise(leg.points):
            along = _unit(start, end)
            climb = along[0] * flight.going[0] + along[1] * flight.going[1]
            going = along if climb > 0 else (-along[0], -along[1])
            spots = np.arange(0.0, dist(start, end) + _EVEN_FT, _EVERY_FT)
            for x, y in (np.array(start) + spots[:, None] * np.array(along)).tolist():
                yield replace(flight, at=(x, y), going=going, width_ft=leg.width_ft)


def _unit(start: Point, end: Point) -> Point:
    length = dist(start, end) or 1.0
    return ((end[0] - start[0]) / length, (end[1] - start[1]) / length)


def _risers(flight: Flight) -> Iterator[Line]:
    """Lines across the way that one climbs, from the top riser down."""
    (x, y), half, tread_ft = flight.going, flight.width_ft / 2, flight.tread_in / 12
    for step in range(flight.risers):
        at = (flight.at[0] - step * tread_ft * x, flight.at[1] - step * tread_ft * y)
        yield Line("riser", ((at[0] - half * y, at[1] + half * x), (at[0] + half * y, at[1] - half * x)))
