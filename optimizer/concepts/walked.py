"""Walking of two concepts against each other, on the trips that both have: no trip is no saving."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from optimizer.brief import Brief
from optimizer.concepts.option import Option

Ends = tuple[str, str]
"""Start and end of a trip."""


@dataclass(frozen=True, slots=True)
class Walked:
    """Feet walked at one gathering in two concepts, on the trips that both have, and the trips that only one has."""

    first_ft: float
    second_ft: float
    only_first: tuple[Ends, ...]
    only_second: tuple[Ends, ...]

    @property
    def is_all(self) -> bool:
        """Whether both have the same trips, so that none is left out of the feet."""
        return not self.only_first and not self.only_second


def walked_by_both(brief: Brief, first: Option, second: Option) -> Walked:
    """Compare the walking of two concepts of one brief [ft]."""
    ours, theirs = _lengths(first), _lengths(second)
    counts = defaultdict[Ends, float](float)
    for trip in brief.trips:
        counts[trip.start, trip.end] += trip.count
    both = [ends for ends in ours if ends in theirs]
    first_ft, second_ft = (sum(counts[ends] * lengths[ends] for ends in both) for lengths in (ours, theirs))
    return Walked(first_ft, second_ft, _lacking(ours, theirs), _lacking(theirs, ours))


def only_words(walked: Walked, first: str, second: str) -> Iterator[str]:
    """A line for each of two concepts, by what it is called, with the trips that it alone has."""
    for name, trips in ((first, walked.only_first), (second, walked.only_second)):
        if trips:
            yield f"trips only in {name}: {trip_words(trips)}"


def trips_missing(brief: Brief, option: Option) -> tuple[Ends, ...]:
    """Trips of the brief that a concept has no way for, since it does without one of their ends."""
    return _lacking(dict.fromkeys((trip.start, trip.end) for trip in brief.trips), _lengths(option))


def trips_walked(brief: Brief, option: Option) -> tuple[int, int]:
    """How many trips of the brief a concept has a way for, and how many there are."""
    every = len({(trip.start, trip.end) for trip in brief.trips})
    return every - len(trips_missing(brief, option)), every


def trip_words(trips: Iterable[Ends]) -> str:
    """Trips in a row, each by its ends."""
    return ", ".join(f"{start} to {end}" for start, end in trips)


def _lengths(option: Option) -> dict[Ends, float]:
    return {(start, end): length for start, end, length in option.appraisal.trips_ft}


def _lacking(ours: Iterable[Ends], theirs: Iterable[Ends]) -> tuple[Ends, ...]:
    known = frozenset(theirs)
    return tuple(ends for ends in ours if ends not in known)
