"""Whether a way from a door to a room can be gone with a wheelchair."""

from collections.abc import Iterator
from dataclasses import dataclass

from optimizer.catalogue.steps import ramp_length_ft, step_rules
from optimizer.circulation import Network, way_between
from optimizer.grading.grade import Levelled
from optimizer.grading.paved import sills
from optimizer.grading.profile import Leg, legs_of, rooms_along
from optimizer.layout import Placed

_EVEN = 1e-6  # what rounding leaves of a level difference


@dataclass(frozen=True, slots=True)
class RouteFinding:
    """What was found of a way: the reasons against it in plain words, and the ramps that it needs.

    `ramp_length_ft` is the least length of its ramps with their landings.
    """

    between: tuple[str, str]
    reasons: tuple[str, ...]
    ramp_length_ft: float = 0.0
    through: tuple[str, ...] = ()
    """Paved rooms that the way leads through, its ends left out."""

    @property
    def is_accessible(self) -> bool:
        """Whether nothing speaks against it."""
        return not self.reasons


def accessible_route(placed: Placed, levelled: Levelled, network: Network, start: str, end: str) -> RouteFinding:
    """Whether the way from a door (or entrance) to a room is 36 in clear, without steps, and the room wide enough.

    Each stretch between rooms must be a walk of at most 5 %, or long enough for a 1:12 ramp with its landings; it is
    taken as one even slope. The room's least side must hold a 60 in turning circle; furniture is not looked at.
    """
    reasons = list(_of_room(placed, end))
    starts, ends = network.access.stop(start), network.access.stop(end)
    way = way_between(network, starts, ends) if starts and ends else None
    if way is None:
        return RouteFinding((start, end), (*reasons, f"no way 36 in wide joins {start} and {end}"))
    floor = next((sill.flush_ft for sill in sills(levelled.paved.site) if sill.door.name == start), None)
    legs = legs_of(levelled.paved, levelled.levels_ft, way, floor)
    reasons += [reason for leg in legs for reason in _of_leg(leg)]
    ramps_ft = sum((ramp_length_ft(leg.rise_ft) for leg in legs if _is_ramp(leg)), start=0.0)
    through = tuple(name for name in rooms_along(levelled.paved, way) if name not in (start, end))
    return RouteFinding((start, end), tuple(reasons), ramps_ft, through)


def _of_room(placed: Placed, name: str) -> Iterator[str]:
    room = placed.of(name)
    turning = step_rules().turning_in / 12
    if room is not None and min(room.placement.width_ft, room.placement.depth_ft) < turning - _EVEN:
        yield f"{name} is too narrow for a turning circle of {turning:g} ft"


def _is_ramp(leg: Leg) -> bool:
    return leg.length_ft > 0 and leg.rise_ft > step_rules().path_slope * leg.length_ft + _EVEN


def _of_leg(leg: Leg) -> Iterator[str]:
    if leg.length_ft == 0 and leg.rise_ft > _EVEN:
        yield f"steps of {leg.rise_ft * 12:.0f} in between two rooms"
    elif _is_ramp(leg) and ramp_length_ft(leg.rise_ft) > leg.length_ft + _EVEN:
        need = ramp_length_ft(leg.rise_ft)
        yield f"a ramp of {leg.rise_ft * 12:.0f} in needs {need:.0f} ft of way and has {leg.length_ft:.0f} ft"
