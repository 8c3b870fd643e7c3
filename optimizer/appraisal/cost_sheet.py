"""A cost sheet: lines, phases, ranges."""

from dataclasses import dataclass
from decimal import Decimal

from optimizer.catalogue import FURNITURE, SHARE, STEPS

NOTHING = Decimal(0)


def share_of(share: Decimal, base: Decimal) -> str:
    """`20 % of 14,178.97`."""
    return f"{(share * 100).normalize():f} % of {base:,.2f}"


@dataclass(frozen=True, slots=True)
class CostLine:
    """One line of the cost sheet: quantity x unit price = amount, to the cent.

    `low` and `high` are the amount at the low and high end of the price; `how` is a formula that a person can follow.
    """

    phase: int
    room: str
    item: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    amount: Decimal
    assembly: str = ""
    low: Decimal = NOTHING
    high: Decimal = NOTHING
    how: str = ""
    source: str = ""

    @property
    def is_share_of_lines(self) -> bool:
        """Whether it is a share of other lines by the price book: its quantity is money, its price the share."""
        return self.unit == SHARE and not self.is_step

    @property
    def is_owners_sum(self) -> bool:
        """Whether the owner sets it aside: no builder's work, so no step is taken on it."""
        return self.item == FURNITURE

    @property
    def is_step(self) -> bool:
        """Whether it is a stated step, a share of what comes before it, and no work of its own."""
        return self.unit == SHARE and self.assembly in {"", STEPS}


@dataclass(frozen=True, slots=True)
class CostRange:
    """What a phase may come to in the end, by the class of its estimate."""

    low: Decimal
    high: Decimal
    estimate_class: int


@dataclass(frozen=True, slots=True)
class Cost:
    """A cost sheet. Totals by phase include every stated step; `total` is their sum; `low` and `high` bound it."""

    lines: tuple[CostLine, ...]
    phases: tuple[tuple[int, Decimal], ...]
    total: Decimal
    low: Decimal
    high: Decimal
    ranges: tuple[tuple[int, CostRange], ...] = ()

    def phase(self, number: int) -> Decimal:
        """Total of a phase, stated steps included; 0 where nothing is built in it."""
        return dict(self.phases).get(number, Decimal(0))

    def range_of(self, number: int) -> CostRange | None:
        """Range of a phase; None where nothing is built in it."""
        return dict(self.ranges).get(number)
