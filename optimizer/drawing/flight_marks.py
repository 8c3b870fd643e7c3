"""Steps between rooms and on ways: a line for each riser, as wide as the flight."""

from collections.abc import Iterator, Sequence

from optimizer.circulation import Way
from optimizer.drawing.marks import Line, Mark
from optimizer.grading import Flight, grade
from optimizer.layout import Placed, shared_edge_ft
from optimizer.site import Site


def flight_marks(site: Site, placed: Placed, ways: Sequence[Way]) -> Iterator[Mark]:
    """Risers of every flight that the levels ask for; those at a door stand in its zone and are drawn with it."""
    pairs = {way.between for way in ways}
    for flight in grade(site, placed, ways).flights:
        if _between_rooms(flight, placed) or flight.between in pairs:
            yield from _risers(flight)


def _between_rooms(flight: Flight, placed: Placed) -> bool:
    one, other = (placed.of(name) for name in flight.between)
    return one is not None and other is not None and shared_edge_ft(one.placement, other.placement) > 0


def _risers(flight: Flight) -> Iterator[Mark]:
    """Lines across the way that one climbs, from the top riser down."""
    (x, y), half, tread_ft = flight.going, flight.width_ft / 2, flight.tread_in / 12
    for step in range(flight.risers):
        at = (flight.at[0] - step * tread_ft * x, flight.at[1] - step * tread_ft * y)
        yield Line("riser", ((at[0] - half * y, at[1] + half * x), (at[0] + half * y, at[1] - half * x)))
