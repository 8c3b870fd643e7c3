"""What of a layout stands after each of its phases: ways and money are counted by the same rule."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import smallest_machine
from optimizer.circulation import Leg, Network, Ways
from optimizer.derived.derived import Derived
from optimizer.derived.futures.obstacles import Obstacle, of_levels, on_site
from optimizer.derived.futures.reach import reached_ground
from optimizer.grading import Grading, Levelled
from optimizer.layout import Placed


def later_rooms(placed: Placed, phase: int) -> frozenset[str]:
    """Rooms that are not there yet once a phase is built; ground that is held is."""
    return frozenset(room.name for room in placed if room.phase > phase and room.kind != "reserve")


def legs_without(legs: Sequence[Leg], rooms: frozenset[str]) -> tuple[Leg, ...]:
    """Legs that some trip takes which neither begins nor ends at these rooms: a leg is laid for the first such trip."""
    return tuple(leg for leg in legs if any(rooms.isdisjoint(trip) for trip in leg.trips))


def stages_of(derived: Derived) -> dict[int, Derived]:
    """What stands after each phase in which ground is changed, phase 1 always: at last the layout itself."""
    placed = derived.placed
    phases = sorted({1, *(phase for room in placed if room.kind != "reserve" for phase in room.phases)})
    return {phase: _after(derived, later_rooms(placed, phase)) for phase in phases}


def reached_before(derived: Derived, phase: int) -> BaseGeometry:
    """Ground that the middle of the builder's smallest machine comes to before a later phase is built, past every room,
    step and wall that stands by then [ft]. Ways are no obstacle: boards are laid over them.
    """
    site, machine = derived.site, smallest_machine(derived.site.machine)
    before = next(stage for number, stage in sorted(stages_of(derived).items(), reverse=True) if number < phase)
    height_ft = 0.0 if site.machine is None else site.machine.height_ft
    rooms = (Obstacle(room.name, room.shape) for room in before.placed.once if room.rules.built_as)
    return reached_ground(site, [*on_site(site, height_ft), *rooms, *of_levels(before.grading)], machine)


def _after(derived: Derived, later: frozenset[str]) -> Derived:
    return Stage(derived.scenario, derived.placed.without(*later), derived, later) if later else derived


@dataclass(frozen=True)
class Stage(Derived):
    """A layout without its `later` rooms. Ways and levels are those of the whole, as far as they are built."""

    whole: Derived
    later: frozenset[str]

    @cached_property
    def levelled(self) -> Levelled:
        """Levels are set once, for all phases."""
        return self.whole.levelled

    @cached_property
    def network(self) -> Network:
        """Shortest ways on foot, round the ground of later rooms too: it is kept free."""
        return self.whole.network

    @cached_property
    def laid(self) -> Ways:
        """Ways between what stands, and their legs."""
        laid = self.whole.laid
        trips, own = ([w for w in ways if self.later.isdisjoint(w.between)] for ways in (laid.trips, laid.own_paths))
        return replace(laid, trips=tuple(trips), own_paths=tuple(own), legs=legs_without(laid.legs, self.later))

    @cached_property
    def grading(self) -> Grading:
        """Steps between what stands, and walls, guards, earth and falls of the rooms that stand."""
        found, later = self.whole.grading, self.later
        return replace(
            found,
            levels_ft=tuple(one for one in found.levels_ft if one[0] not in later),
            flights=tuple(one for one in found.flights if later.isdisjoint(one.between)),
            walls=tuple(one for one in found.walls if one.room not in later),
            guards=tuple(one for one in found.guards if one.room not in later),
            earth=tuple(one for one in found.earth if one.room not in later),
            falls=tuple(one for one in found.falls if one.room not in later),
            overlaid=tuple(name for name in found.overlaid if name not in later),
        )
