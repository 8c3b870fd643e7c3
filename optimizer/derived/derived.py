"""What follows from one layout."""

from collections.abc import Iterator
from copy import copy
from dataclasses import dataclass, field
from functools import cached_property

from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import FutureKind
from optimizer.circulation import Network, Ways, access_of, network_of, way_polygon, ways
from optimizer.derived.futures import FutureSite, PhaseOne, future_sites, is_fitted, shut_off, wanted
from optimizer.derived.pools import PoolSite, pool_sites
from optimizer.fields import Caster, cover_casters, room_sun_hours
from optimizer.grading import Grading, Levelled, graded, levelled
from optimizer.layout import Placed, PlacedRoom
from optimizer.planting import Planting, planting_of
from optimizer.scenario import Scenario
from optimizer.site import Site


@dataclass(frozen=True)
class Derived:
    """A layout in its scenario, and what check, measures and pictures ask of it alike.

    A room that stands twice is taken where it stands last; `required_rooms` says that it does.
    """

    scenario: Scenario
    placed: Placed
    _sun_h: dict[str, float] = field(default_factory=dict, init=False, repr=False, compare=False)
    _fits: dict[tuple[str, str], bool] = field(default_factory=dict, init=False, repr=False, compare=False)

    def at_level(self, name: str) -> "Derived":
        """The same layout finished in another level. Nothing that is worked out here depends on what the ground is made
        of, so it all goes along.
        """
        made = copy(self)
        object.__setattr__(made, "scenario", self.scenario.at_level(name))
        return made

    @property
    def site(self) -> Site:
        """What is there."""
        return self.scenario.site

    @cached_property
    def levelled(self) -> Levelled:
        """Levels of the rooms and what they ask for, before any way is laid."""
        return levelled(self.site, self.placed.once)

    @cached_property
    def network(self) -> Network:
        """Shortest ways on foot between the stops, on all open ground."""
        return network_of(access_of(self.site, self.placed.once))

    @cached_property
    def laid(self) -> Ways:
        """Ways of the layout and the legs that they run on."""
        return ways(self.site, self.scenario.brief, self.placed.once, self.network)

    @cached_property
    def paths(self) -> BaseGeometry:
        """Ground that the legs pave [ft]."""
        return way_polygon(self.site, self.placed, self.laid.legs)

    @cached_property
    def grading(self) -> Grading:
        """Levels of the rooms and all that they and the ways ask for."""
        return graded(self.levelled, self.laid.ways)

    @cached_property
    def planting(self) -> Planting:
        """Beds, lawn, and what is left over."""
        return planting_of(self.site, self.scenario.brief.relations, self.placed, self.paths)

    @cached_property
    def pools(self) -> tuple[PoolSite, ...]:
        """What each pool needs beside its own ground."""
        return pool_sites(self.site, self.placed.once, self.paths)

    @cached_property
    def futures(self) -> tuple[FutureSite, ...]:
        """How each future of a reserve fits and comes in; it takes a tenth of a second and more."""
        return future_sites(self._phase_one, self.scenario.brief) if self.placed.of_kind("reserve") else ()

    @cached_property
    def shut_off(self) -> tuple[tuple[str, str], ...]:
        """Reserves with those of their futures that surely nothing drives in; it takes a few milliseconds."""
        return shut_off(self._phase_one, self.scenario.brief) if self.placed.of_kind("reserve") else ()

    @property
    def later_futures(self) -> Iterator[tuple[PlacedRoom, FutureKind]]:
        """Reserves of later phases, each with each thing that may be built on it."""
        return wanted(self._phase_one, self.scenario.brief) if self.placed.of_kind("reserve") else iter(())

    def fits(self, room: PlacedRoom, future: FutureKind) -> bool:
        """Whether a future fits into the ground that is held for it; some milliseconds, once for each."""
        key = (room.name, future.name)
        if key not in self._fits:
            self._fits[key] = is_fitted(self._phase_one, room, future)
        return self._fits[key]

    @cached_property
    def _phase_one(self) -> PhaseOne:
        return PhaseOne(self.site, self.placed.once, self.grading, self.planting, self.paths)

    @cached_property
    def covers(self) -> tuple[Caster, ...]:
        """New roofs."""
        return cover_casters(self.site, self.placed)

    def sun_h(self, room: PlacedRoom) -> float | None:
        """Mean hours of direct sun on a room, or on its water, in the window of its wish [h]; None without one."""
        if room.room.sun is None:
            return None
        if room.name not in self._sun_h:
            left, low, right, top = room.water.bounds
            self._sun_h[room.name] = room_sun_hours(
                self.site,
                room.room.sun,
                low=(left, low),
                high=(right, top),
                shape=room.placement.shape,
                extra=self.covers,
            )
        return self._sun_h[room.name]
