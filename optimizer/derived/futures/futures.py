"""What each reserve of a layout keeps possible."""

from collections.abc import Iterator
from dataclasses import dataclass

from optimizer.brief import Brief
from optimizer.catalogue import FutureKind, futures_of_wish, vehicle
from optimizer.derived.futures.access import Access, WaysIn
from optimizer.derived.futures.fit import Fit, fitted
from optimizer.derived.futures.obstacles import PhaseOne
from optimizer.layout import PlacedRoom


@dataclass(frozen=True, slots=True)
class FutureSite:
    """One future of the reserve `room`: how it fits in, and how it comes in."""

    room: str
    future: str
    fit: Fit
    access: Access

    @property
    def is_possible(self) -> bool:
        """Whether it fits, and something that drives brings it in."""
        return self.fit.is_kept and self.access.is_found


def future_sites(built: PhaseOne, brief: Brief) -> tuple[FutureSite, ...]:
    """Every future of every reserve of a layout, in the brief's order."""
    ways = WaysIn(built)
    found = {
        (room.name, future.name): FutureSite(room.name, future.name, fitted(built, room, future), ways.to(room, future))
        for room, future in sorted(wanted(built, brief), key=lambda pair: _largest_first(built, pair[1]))
    }
    return tuple(found[room.name, future.name] for room, future in wanted(built, brief))


def wanted(built: PhaseOne, brief: Brief) -> Iterator[tuple[PlacedRoom, FutureKind]]:
    """Futures of reserves of a later phase; one of phase 1 is built at once."""
    for room in built.placed.of_kind("reserve"):
        wish = brief.room(room.name)
        if wish and room.phase > 1:
            yield from ((room, future) for future in futures_of_wish(wish))


def _largest_first(built: PhaseOne, future: FutureKind) -> float:
    # What a large vehicle finds serves the small ones too.
    return -max(vehicle(name, built.site.machine).width_ft for name in future.comes)
