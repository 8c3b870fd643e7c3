"""What an evening with the whole party makes of a layout."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, NamedTuple

Grade = Literal["A", "B", "C", "D", "E", "F"]
"""Level of service of a walkway, A the best; F is more than it can carry."""


class PartyRoom(NamedTuple):
    """A room at the party: what it holds, and the most people in it at once."""

    room: str
    seats: int
    standing_sqft: float
    most_people: int

    @property
    def standing_each_sqft(self) -> float | None:
        """Clear paving for each of those who find no seat when it is fullest [sq ft]; None where all sit."""
        standing = self.most_people - self.seats
        return self.standing_sqft / standing if standing > 0 else None


class PartyPhase(NamedTuple):
    """A part of the evening and how many people are where in it; their sum is the party."""

    name: str
    people: tuple[tuple[str, int], ...]


class Pinch(NamedTuple):
    """Where a walk is narrowest for those on it: a paved leg, or the edge that two rooms share.

    `flow` is people a minute for each foot of width, `phase` the part of the evening that they walk to.
    """

    between: tuple[str, str]
    at: Literal["way", "edge"]
    width_ft: float
    phase: str
    flow: float
    grade: Grade


class Remedy(NamedTuple):
    """What would ease the narrowest way, in words, and its price with contingency; None where land allows none."""

    words: str
    amount: Decimal | None


@dataclass(frozen=True, slots=True)
class PartyMeasures:
    """The party in a layout. `without` are people for whom there is neither a seat nor ground to stand on."""

    people: int = 0
    seats: int = 0
    table: int = 0
    """Chairs at the largest table."""
    standing_sqft: float = 0.0
    without: int = 0
    rooms: tuple[PartyRoom, ...] = ()
    phases: tuple[PartyPhase, ...] = ()
    worst: Pinch | None = None
    remedy: Remedy | None = None
    """What would ease the narrowest way; None where two pass on it with ease, and where nobody walks on any."""
