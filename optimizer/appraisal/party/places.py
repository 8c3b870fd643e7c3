"""Where people are in each part of the evening: whole people, as many as the party has, in rooms that can hold them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from optimizer.appraisal.party.measures import PartyPhase
from optimizer.catalogue import Holds, Phase, standing_each_sqft

OUTSIDE = "outside"
"""Place of those who come and go, where the site names no entrance of guests."""
ELSEWHERE = "elsewhere"
"""Place of those whom no room holds: on the lawn, in the house."""


@dataclass(frozen=True, slots=True)
class Room:
    """A placed room with its kind and what it holds."""

    name: str
    kind: str
    holds: Holds

    @property
    def most(self) -> int:
        """People that it holds, seated and standing."""
        return self.holds.seats + int(self.holds.standing_sqft / standing_each_sqft())


def people_by_phase(
    party: int, rooms: Sequence[Room], phases: Sequence[Phase], *, entrance: str
) -> tuple[PartyPhase, ...]:
    """People at each place in each phase; places with nobody are left out."""
    return tuple(PartyPhase(phase.name, _people(party, rooms, phase, entrance)) for phase in phases)


def _people(party: int, rooms: Sequence[Room], phase: Phase, entrance: str) -> tuple[tuple[str, int], ...]:
    wanted = {entrance: phase.share("entrance")} | {room.name: _share(room, rooms, phase) for room in rooms}
    if sum(wanted.values()) <= 0:
        return ((ELSEWHERE, party),) if party else ()
    people = spilled(apportioned(party, wanted), {room.name: room.most for room in rooms})
    return tuple((place, count) for place, count in people.items() if count)


def _share(room: Room, rooms: Sequence[Room], phase: Phase) -> float:
    """Share of a room: that of its kind, by what each room of the kind holds."""
    alike = [other.most for other in rooms if other.kind == room.kind]
    own = room.most / sum(alike) if sum(alike) else 1 / len(alike)
    return phase.share(room.kind) * own


def apportioned(count: int, shares: Mapping[str, float]) -> dict[str, int]:
    """Whole numbers in the ratio of the shares that add up to the count: the largest remainders are rounded up."""
    total = sum(shares.values())
    exact = {name: count * share / total for name, share in shares.items()}
    whole = {name: int(value) for name, value in exact.items()}
    by_remainder = sorted(exact, key=lambda name: whole[name] - exact[name])
    for name in by_remainder[: count - sum(whole.values())]:
        whole[name] += 1
    return whole


def spilled(people: Mapping[str, int], most: Mapping[str, int]) -> dict[str, int]:
    """People with nobody in a room that is full: they go to the room with most ground left, at last elsewhere."""
    result = {name: min(count, most.get(name, count)) for name, count in people.items()}
    left = sum(people.values()) - sum(result.values())
    for name in sorted(most, key=lambda name: result.get(name, 0) - most[name]):
        taken = min(left, most[name] - result.get(name, 0))
        result[name] = result.get(name, 0) + taken
        left -= taken
    return {**result, ELSEWHERE: left}
