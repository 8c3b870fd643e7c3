"""Classes of estimates: how far one of a class may lie from what is paid in the end."""

from decimal import ROUND_HALF_UP, Decimal
from functools import cache
from typing import Final, NamedTuple

from optimizer.catalogue.data_files import data

_FILE: Final = "estimate_classes.yaml"
VAGUEST_CLASS: Final = 5


class Spread(NamedTuple):
    """Shares of an estimate by which it may turn out lower and higher."""

    below: Decimal
    above: Decimal

    @property
    def words(self) -> str:
        """As an owner reads it: `-15 % to +20 %`."""
        return f"-{self.below * 100:.0f} % to +{self.above * 100:.0f} %"

    def around(self, amount: Decimal) -> tuple[Decimal, Decimal]:
        """Low and high end of an estimate."""
        return amount * (1 - self.below), amount * (1 + self.above)


@cache
def narrowest(estimate_class: int) -> Spread:
    """Least that is published for a class, from 5 (an idea) to 1 (ready to be bid on)."""
    entry = data(_FILE)["classes"][estimate_class]
    return Spread(Decimal(str(entry["below"][0])), Decimal(str(entry["above"][0])))


def class_of(phase: int, wanted: int | None = None) -> int:
    """Class of a phase's estimate: what the budget says of phase 1, else the usual; later phases are known less."""
    now = wanted or int(data(_FILE)["now"])
    return now if phase == 1 else min(VAGUEST_CLASS, max(now + 1, int(data(_FILE)["later"])))


def rounded(amount: Decimal) -> Decimal:
    """Amount as it is said to an owner, in steps that claim no more than an estimate knows."""
    figures = data(_FILE)
    step = Decimal(figures["rounded_below" if abs(amount) < figures["below"] else "rounded_to"])
    return (amount / step).quantize(Decimal(1), ROUND_HALF_UP) * step


def price_correlation() -> float:
    """Correlation between any two prices of a book, by the market that they share."""
    return float(data(_FILE)["correlation"])


def draws() -> int:
    """How many times all prices are drawn."""
    return int(data(_FILE)["draws"])
