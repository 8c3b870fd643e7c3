"""Feet walked in one gathering."""

from collections.abc import Sequence

from optimizer.brief import Trip
from optimizer.circulation import Network, Way, way_between
from optimizer.layout import Placed

TripLength = tuple[str, str, float]


def trip_lengths(trips: Sequence[Trip], ways: Sequence[Way]) -> tuple[TripLength, ...]:
    """Start, end and one-way length [ft] of every trip that has a way; a trip to a room left out has none."""
    lengths = {way.between: way.length_ft for way in ways}
    return tuple(
        (trip.start, trip.end, lengths[trip.start, trip.end]) for trip in trips if (trip.start, trip.end) in lengths
    )


def walking_ft(trips: Sequence[Trip], ways: Sequence[Way]) -> float:
    """Sum over trips of the way's length times how often it is walked [ft]."""
    lengths = {(start, end): length for start, end, length in trip_lengths(trips, ways)}
    return sum(trip.count * lengths.get((trip.start, trip.end), 0.0) for trip in trips)


def later_walking_ft(trips: Sequence[Trip], placed: Placed, network: Network) -> float:
    """Sum over trips to what is built on its pad later of the shortest way on foot times how often it will be
    walked [ft].

    Until then its pad stands in for it, with a grill on wheels. Trips with an end that is not placed have no way.
    """
    later = {room.name for room, choice in placed.chosen if choice.is_pad}
    asked = [trip for trip in trips if not later.isdisjoint((trip.start, trip.end))]
    stops = ((trip, network.access.stop(trip.start), network.access.stop(trip.end)) for trip in asked)
    ways = ((trip, way_between(network, start, end)) for trip, start, end in stops if start and end)
    return sum(trip.count * way.length_ft for trip, way in ways if way is not None)
