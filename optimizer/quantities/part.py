"""One quantity that a priced line consists of, and what all trades read of a concept."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from optimizer.catalogue import Charge, Palette, palette_of
from optimizer.derived import Derived, stages_of
from optimizer.layout import PlacedRoom
from optimizer.quantities.figures import BuildUp, build_up
from optimizer.quantities.outlines import PavedPiece, paved_pieces

ARITHMETIC = "arithmetic"


@dataclass(frozen=True, slots=True)
class Part:
    """So much of something that the line `line` of `room` on the cost sheet consists of.

    `how` is the sum that a person can follow, with its numbers; `source` says where its constants come from. Parts have
    no price: the line has it.
    """

    room: str
    line: str
    item: str
    quantity: float
    unit: str
    how: str
    source: str = ARITHMETIC
    phase: int = 1


@dataclass(frozen=True, slots=True)
class Line:
    """What a cost sheet has of one item for one room, or for the site, in a phase: all its amounts together."""

    room: str
    item: str
    quantity: float
    phase: int = 1

    def part(self, item: str, quantity: float, unit: str, how: str, source: str = ARITHMETIC) -> Part:
        """Part of this line in its phase, to the hundredth."""
        return Part(self.room, self.item, item, round(quantity, 2), unit, how, source, self.phase)


@dataclass(frozen=True)
class Counted:
    """A concept whose quantities are counted: what follows from its layout, and the charges of its cost sheet."""

    derived: Derived
    charges: Sequence[Charge]

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """Charges of one room and item in a phase together, in their order."""
        sums: dict[tuple[str, str, int], float] = {}
        for charge in self.charges:
            key = (charge.room, charge.item, charge.phase)
            sums[key] = sums.get(key, 0.0) + float(charge.quantity)
        return tuple(Line(room, item, amount, phase) for (room, item, phase), amount in sums.items() if amount)

    @cached_property
    def by_item(self) -> Mapping[str, tuple[Line, ...]]:
        """Lines of each item."""
        found: dict[str, tuple[Line, ...]] = {}
        for line in self.lines:
            found[line.item] = (*found.get(line.item, ()), line)
        return found

    def amount(self, item: str, room: str | None = None) -> float:
        """All of an item, or what one room has of it."""
        return sum(line.quantity for line in self.by_item.get(item, ()) if room in (None, line.room))

    def placed(self, line: Line) -> PlacedRoom | None:
        """Room of a line; None for one of the site."""
        return self.derived.placed.of(line.room)

    @cached_property
    def stages(self) -> Mapping[int, Derived]:
        """What stands after each phase."""
        return stages_of(self.derived)

    def before(self, phase: int) -> Derived | None:
        """What stands before a phase; None where it is the first in which anything is built."""
        return next((self.stages[number] for number in sorted(self.stages, reverse=True) if number < phase), None)

    @cached_property
    def pieces(self) -> tuple[PavedPiece, ...]:
        """Paved rooms and ways with their bases and edges."""
        return paved_pieces(self.derived, self.build_up)

    @property
    def palette(self) -> Palette:
        """What the paved ground is finished with."""
        return palette_of(self.derived.scenario.brief.finish)

    @property
    def build_up(self) -> BuildUp:
        """What lies under a square foot of the field."""
        return build_up(self.palette.field.material)
