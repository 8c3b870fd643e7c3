"""The cost sheet of a concept by phase and room, with its stated steps and ranges."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from optimizer.appraisal import Cost, CostLine, Uncertainty
from optimizer.catalogue import narrowest, rounded
from optimizer.quantities import Part
from ui.view_models.words import Words, share_words


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
    """One phase; `steps` are what its total holds beyond the lines of its rooms, `expect` how far it may be off."""

    title: str
    rooms: tuple[RoomCost, ...]
    steps: tuple[CostRow, ...]
    total: str
    expect: str


@dataclass(frozen=True, slots=True)
class CostSheet:
    """All phases, their sum, the range of an estimate at concept stage, what moves it, and whose prices they are."""

    phases: tuple[PhaseCost, ...]
    total: str
    low: str
    high: str
    sure: str = ""
    movers: tuple[CostRow, ...] = ()
    prices: str = ""
    levels: str = ""
    """What it costs in the other finish levels that are offered."""


def cost_sheet(
    cost: Cost,
    words: Words,
    uncertainty: Uncertainty | None = None,
    prices: str = "",
    parts: Sequence[Part] = (),
) -> CostSheet:
    """Cost sheet of one concept, in words, with its take-off under the lines; `prices` says where they come from."""
    folded = _Folded(words, parts)
    return CostSheet(
        phases=tuple(_phase(number, cost, folded) for number, _ in cost.phases),
        total=words.money(cost.total),
        low=words.money(cost.low),
        high=words.money(cost.high),
        sure=_sure(uncertainty, words) if uncertainty else "",
        movers=tuple(
            CostRow(mover.item, mover.room, share_words(mover.share))
            for mover in (uncertainty.movers if uncertainty else ())
        ),
        prices=prices,
    )


def _sure(found: Uncertainty, words: Words) -> str:
    low, high = (words.money(amount) for amount in (found.one_in_ten_below, found.one_in_ten_above))
    range_ = f"By the ranges of its prices alone, phase 1 comes to {low} to {high} eight times in ten."
    if found.chance_under is None:
        return range_
    return f"{range_} The chance to stay under the {words.term('ceiling')} is {share_words(found.chance_under)}."


@dataclass(frozen=True, slots=True)
class _Folded:
    """How lines are said, and the parts that are folded under them."""

    words: Words
    parts: Sequence[Part]

    def under(self, line: CostLine) -> tuple[str, ...]:
        """Parts of a line, each with how it was worked out."""
        key = (line.phase, line.room, line.item)
        own = (part for part in self.parts if (part.phase, part.room, part.line) == key)
        return tuple(f"{p.item}: {self.words.counted(p.quantity, p.unit)} ({p.how})" for p in own)


def expected(cost: Cost, words: Words) -> str:
    """How far phase 1 may be off, `$165,000 to $225,000`, rounded as it is said to an owner; nothing where no range is
    known.
    """
    known = cost.range_of(1)
    return "" if known is None else f"{words.money(rounded(known.low))} to {words.money(rounded(known.high))}"


def _phase(number: int, cost: Cost, folded: _Folded) -> PhaseCost:
    own = tuple(line for line in cost.lines if line.phase == number)
    work, words = tuple(line for line in own if not line.is_step), folded.words
    known = cost.range_of(number)
    expect = ""
    if known is not None:
        spread = narrowest(known.estimate_class).words
        expect = f"Phase {number}: expect {words.money(known.low)} to {words.money(known.high)} ({spread})."
    return PhaseCost(
        title=f"Phase {number}",
        rooms=tuple(_room(room, work, folded) for room in dict.fromkeys(line.room for line in work)),
        steps=tuple(_step(line, words) for line in own if line.is_step),
        total=words.money(cost.phase(number)),
        expect=expect,
    )


def _step(line: CostLine, words: Words) -> CostRow:
    share = f"{(line.quantity * 100).normalize():f} %"
    return CostRow(words.signed(line.item), share, words.money(line.amount))


def _room(room: str, lines: tuple[CostLine, ...], folded: _Folded) -> RoomCost:
    own = tuple(line for line in lines if line.room == room)
    return RoomCost(room, tuple(_row(line, folded) for line in own), folded.words.money(_sum(own)))


def _sum(lines: tuple[CostLine, ...]) -> Decimal:
    return sum((line.amount for line in lines), Decimal(0))


def _row(line: CostLine, folded: _Folded) -> CostRow:
    quantity = folded.words.priced(line.quantity, line.unit, line.unit_price)
    if line.is_share_of_lines:
        quantity = f"{folded.words.counted(float(line.unit_price), line.unit)} of {folded.words.money(line.quantity)}"
    return CostRow(line.item.replace("_", " "), quantity, folded.words.money(line.amount), folded.under(line))
