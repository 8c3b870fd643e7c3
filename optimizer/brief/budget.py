"""The money: a ceiling, what is added to the sum of all lines, what waits, and what owners buy themselves."""

from dataclasses import dataclass
from decimal import Decimal
from math import prod
from typing import Final

NOTHING: Final = Decimal(0)
_CENT: Final = Decimal("0.01")
_SHARE: Final = Decimal("0.000001")


@dataclass(frozen=True, slots=True)
class Allowances:
    """Owner's allowances: whether appliances are in the sums, and a sum for furniture, on which no step is taken: no
    builder touches it.
    """

    appliances: bool = True
    furniture: Decimal = NOTHING


@dataclass(frozen=True, slots=True)
class Later:
    """Years from one phase to the next, and the share by which prices rise in a year."""

    years: Decimal = NOTHING
    escalation: Decimal = NOTHING

    def rise(self, phase: int) -> Decimal:
        """Share that prices have risen by when a phase is built; nothing for phase 1."""
        if phase == 1 or not self.escalation:
            return NOTHING
        rise: Decimal = (1 + self.escalation) ** (self.years * (phase - 1)) - 1
        return rise.quantize(_SHARE)


@dataclass(frozen=True, slots=True)
class Budget:
    """Ceiling of phase 1, every stated step included; None where no ceiling was given. Steps are shares."""

    ceiling: Decimal | None = None
    contingency: Decimal = Decimal("0.15")
    overhead: Decimal = NOTHING
    markup: Decimal = NOTHING
    tax: Decimal = NOTHING
    later: Later = Later()
    allowances: Allowances = Allowances()
    estimate_class: int | None = None
    """Class of the estimate of phase 1; None for the usual of a concept."""
    phases: tuple[tuple[int, Decimal], ...] = ()
    """Ceilings of later phases, every stated step included."""

    @property
    def open_phases(self) -> tuple[int, ...]:
        """Phases that a room may wait for: the second, and those that have a ceiling."""
        return tuple(sorted({2, *(phase for phase, _ in self.phases)}))

    def steps(self, phase: int) -> tuple[tuple[str, Decimal], ...]:
        """Name and share of each step of a phase, in order: each is a share of all that comes before it.

        Steps of nothing are left out, but for contingency, of which a reader wants to see that it is none.
        """
        stated = (
            ("overhead", self.overhead),
            ("markup", self.markup),
            ("escalation", self.later.rise(phase)),
            ("contingency", self.contingency),
            ("tax", self.tax),
        )
        return tuple((name, share) for name, share in stated if share or name == "contingency")

    def least(self, lines: Decimal) -> Decimal:
        """Least that phase 1 can cost with builders' lines of this sum and the owner's beside it: steps are rounded to
        the cent, each of them a share of what the one before was rounded to, which may take so much off their product.
        """
        return lines * self.factor + self.allowances.furniture - _CENT * Decimal(2) ** (len(self.steps(1)) - 1)

    @property
    def factor(self) -> Decimal:
        """What the stated steps make of 1 of money in the lines of phase 1."""
        factor: Decimal = prod((1 + share for _, share in self.steps(1)), start=Decimal(1))
        return factor
