"""The cost sheet of a concept by phase and room, with contingency and range."""

from dataclasses import dataclass
from decimal import Decimal

from optimizer.appraisal import Cost, CostLine
from optimizer.appraisal.cost import CONTINGENCY
from ui.view_models.words import Words


@dataclass(frozen=True, slots=True)
class CostRow:
    """One line: what, how much of it at what price, and the amount."""

    item: str
    quantity: str
    amount: str


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
    surprises: str
    """What the sum for what is not known yet is called."""


def cost_sheet(cost: Cost, words: Words) -> CostSheet:
    """Cost sheet of one concept, in words."""
    return CostSheet(
        phases=tuple(_phase(number, total, cost.lines, words) for number, total in cost.phases),
        total=words.money(cost.total, cents=True),
        low=words.money(cost.low),
        high=words.money(cost.high),
        surprises=words.term("contingency"),
    )


def _phase(number: int, total: Decimal, lines: tuple[CostLine, ...], words: Words) -> PhaseCost:
    own = tuple(line for line in lines if line.phase == number and line.item != CONTINGENCY)
    rooms = dict.fromkeys(line.room for line in own)
    return PhaseCost(
        title=f"Phase {number}",
        rooms=tuple(_room(room, own, words) for room in rooms),
        contingency=words.money(total - _sum(own), cents=True),
        total=words.money(total, cents=True),
    )


def _room(room: str, lines: tuple[CostLine, ...], words: Words) -> RoomCost:
    own = tuple(line for line in lines if line.room == room)
    return RoomCost(room, tuple(_row(line, words) for line in own), words.money(_sum(own), cents=True))


def _sum(lines: tuple[CostLine, ...]) -> Decimal:
    return sum((line.amount for line in lines), Decimal(0))


def _row(line: CostLine, words: Words) -> CostRow:
    quantity = words.priced(line.quantity, line.unit, line.unit_price)
    return CostRow(line.item.replace("_", " "), quantity, words.money(line.amount, cents=True))
