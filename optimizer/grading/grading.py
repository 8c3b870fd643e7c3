"""A layout's levels and all that they ask for."""

from dataclasses import dataclass

from optimizer.grading.earthwork import Earth, bank_cuyd, loose_cuyd
from optimizer.grading.falls import Fall
from optimizer.grading.flights import GROUND, Flight
from optimizer.grading.walls import Guard, Wall


@dataclass(frozen=True, slots=True)
class Grading:
    """Levels of the paved rooms [ft above the datum, hundredths], in the layout's order, and what follows from them.

    Without levels of the ground `is_known` is False and everything lies at 0, but doors with a known floor.
    """

    is_known: bool
    levels_ft: tuple[tuple[str, float], ...]
    flights: tuple[Flight, ...]
    walls: tuple[Wall, ...]
    guards: tuple[Guard, ...]
    earth: tuple[Earth, ...]
    falls: tuple[Fall, ...]
    overlaid: tuple[str, ...] = ()
    """Rooms that an existing slab carries."""

    def level_ft(self, room: str) -> float | None:
        """Level of a paved room [ft]; None for any other, which follows the ground."""
        return dict(self.levels_ft).get(room)

    @property
    def built_flights(self) -> tuple[Flight, ...]:
        """Flights that the layout asks for; steps from a door to open ground are taken to be there already."""
        return tuple(flight for flight in self.flights if GROUND not in flight.between)

    @property
    def cut_bcy(self) -> float:
        """All cut as it lies in the bank [cu yd]."""
        return sum(earth.cut_bcy for earth in self.earth)

    @property
    def fill_ccy(self) -> float:
        """All fill as it lies compacted [cu yd]."""
        return sum(earth.fill_ccy for earth in self.earth)

    @property
    def hauled_off_lcy(self) -> float:
        """Loose earth to haul off [cu yd], cut less what the fill takes of it; negative: to bring in."""
        return loose_cuyd(self.cut_bcy - bank_cuyd(self.fill_ccy))
