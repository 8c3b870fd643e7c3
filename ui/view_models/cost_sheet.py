"""The cost sheet of a concept by phase and room, with contingency and range."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from optimizer.appraisal import Cost, CostLine
from optimizer.appraisal.cost import CONTINGENCY
from optimizer.quantities import Part
from ui.view_models.words import Words


@dataclass(frozen=True, slots=True)
class CostRow:
    """One line: what, how much of it at what price, the amount, and the parts that it consists of, each in words."""

    item: str
    quantity: str
    amount: str
    parts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RoomCost:
    """The lines of one room in one phase."""

    room: str
    rows: tuple[CostRow, ...]
    total: str


@dataclass(frozen=True, slots=True)
class PhaseCost:
    """One phase; `contingency` is what its total holds beyond the lines of its rooms."""

    title: str
    rooms: tuple[RoomCost, ...]
    contingency: str
    total: str


@dataclass(frozen=True, slots=True)
class CostSheet:
    """All phases, their sum, and the range of an estimate at concept stage."""

    phases: tuple[PhaseCost, ...]
    total: str
    low: str
    high: str


def cost_sheet(cost: Cost, words: Words, parts: Sequence[Part] = ()) -> CostSheet:
    """Cost sheet of one concept, in words, with its take-off under the lines."""
    folded = _Folded(words, parts)
    return CostSheet(
        phases=tuple(_phase(number, total, cost.lines, folded) for number, total in cost.phases),
        total=words.money(cost.total, cents=True),
        low=words.money(cost.low),
        high=words.money(cost.high),
    )


@dataclass(frozen=True, slots=True)
class _Folded:
    """How lines are said, and the parts that are folded under them."""

    words: Words
    parts: Sequence[Part]

    def under(self, line: CostLine) -> tuple[str, ...]:
        """Parts of a line, each with how it was worked out."""
        own = (part for part in self.parts if (part.room, part.line) == (line.room, line.item))
        return tuple(f"{p.item}: {self.words.counted(p.quantity, p.unit)} ({p.how})" for p in own)


def _phase(number: int, total: Decimal, lines: tuple[CostLine, ...], folded: _Folded) -> PhaseCost:
    own = tuple(line for line in lines if line.phase == number and line.item != CONTINGENCY)
    rooms = dict.fromkeys(line.room for line in own)
    return PhaseCost(
        title=f"Phase {number}",
        rooms=tuple(_room(room, own, folded) for room in rooms),
        contingency=folded.words.money(total - _sum(own), cents=True),
        total=folded.words.money(total, cents=True),
    )


def _room(room: str, lines: tuple[CostLine, ...], folded: _Folded) -> RoomCost:
    own = tuple(line for line in lines if line.room == room)
    return RoomCost(room, tuple(_row(line, folded) for line in own), folded.words.money(_sum(own), cents=True))


def _sum(lines: tuple[CostLine, ...]) -> Decimal:
    return sum((line.amount for line in lines), Decimal(0))


def _row(line: CostLine, folded: _Folded) -> CostRow:
    quantity = folded.words.priced(line.quantity, line.unit, line.unit_price)
    return CostRow(
        line.item.replace("_", " "), quantity, folded.words.money(line.amount, cents=True), folded.under(line)
    )
