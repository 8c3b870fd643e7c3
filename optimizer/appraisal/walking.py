"""Feet walked in one gathering."""

from collections.abc import Sequence

from optimizer.brief import Trip
from optimizer.circulation import Way

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
