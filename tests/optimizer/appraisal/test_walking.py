"""Feet walked in one gathering."""

from optimizer.appraisal import trip_lengths, walking_ft
from optimizer.brief import Trip
from optimizer.circulation import Way

TRIPS = (Trip("door", "table", 10), Trip("table", "fire", 4), Trip("door", "fire", 2))
WAYS = (
    Way(("door", "table"), 3.0, ((0, 0), (0, 20)), 20.0),
    Way(("table", "fire"), 3.0, ((0, 20), (15, 20)), 15.0),
    Way(("shed", "table"), 3.0, ((0, 0), (9, 0)), 9.0),
)


def test_each_trip_counts_its_way_as_often_as_it_is_walked() -> None:
    """10 x 20 and 4 x 15 ft; a trip without a way and a path that is no trip count nothing."""
    assert walking_ft(TRIPS, WAYS) == 260
    assert trip_lengths(TRIPS, WAYS) == (("door", "table", 20.0), ("table", "fire", 15.0))
