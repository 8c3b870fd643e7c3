"""What a concept costs, as it is said to an owner: rounded, and with its range."""

from collections.abc import Sequence
from decimal import ROUND_UP, Decimal
from typing import Final

from optimizer.appraisal import Cost
from optimizer.catalogue import rounded
from optimizer.concepts.finish_levels import AtLevel
from optimizer.concepts.option import Option

AIM: Final = Decimal("0.9")
"""Share of the ceiling that a first concept aims at, since soil and lines are not known; common practice, no source."""
_ROUND: Final = -2
"""Differences are said in hundreds."""


def about_words(cost: Cost, currency: str, phase: int = 1) -> str:
    """Say `About 185,000 USD; expect 165,000 to 225,000 USD until soil, levels and lines are checked`, and of which
    phase where there are more.
    """
    lead = f"Phase {phase}: about" if len(cost.phases) > 1 else "About"
    about = f"{lead} {rounded(cost.phase(phase)):,.0f} {currency}"
    expected = expected_words(cost, phase)
    return (
        f"{about}; expect {expected} {currency} until soil, levels and lines are checked." if expected else f"{about}."
    )


def expected_words(cost: Cost, phase: int = 1) -> str:
    """`165,000 to 225,000`; nothing where no range is known."""
    known = cost.range_of(phase)
    return "" if known is None else f"{rounded(known.low):,.0f} to {rounded(known.high):,.0f}"


def beyond_aim(cost: Cost, ceiling: Decimal) -> Decimal:
    """Money by which phase 1 passes what a first concept aims at; 0 where it does not."""
    return max(Decimal(0), cost.phase(1) - AIM * ceiling)


def aim_words(cost: Cost, ceiling: Decimal | None, currency: str) -> str:
    """Say `Within 90 % of the ceiling, as a first concept should be.`, or how much of phase 1 lies beyond that; nothing
    without a ceiling.
    """
    if ceiling is None:
        return ""
    beyond = beyond_aim(cost, ceiling)
    if not beyond:
        return f"Within {AIM * 100:.0f} % of the ceiling, as a first concept should be."
    hundreds = beyond.quantize(Decimal("1e2"), ROUND_UP)
    return f"About {hundreds:,.0f} {currency} above {AIM * 100:.0f} % of the ceiling, where a first concept should be."


def level_words(option: Option, currency: str) -> str:
    """Say `In plain materials about 9,200 USD less, in fine about 14,100 USD more, which passes the ceiling.`; nothing
    where the brief offers no other level.
    """
    first, before = option.appraisal.cost.phase(1), _over(option.at_levels, option.level)
    others = [at for at in option.at_levels if at.level != option.level]
    said = [f"{_difference(at.phase_1 - first, currency)}{_passes(at, before)}" for at in others]
    names = [f"{at.level}{'' if number else ' materials'}" for number, at in enumerate(others)]
    return f"In {', in '.join(map(' '.join, zip(names, said, strict=True)))}." if others else ""


def _difference(more: Decimal, currency: str) -> str:
    amount = round(abs(more), _ROUND)
    return f"about {amount:,.0f} {currency} {'more' if more > 0 else 'less'}" if amount else "about the same"


def _passes(at: AtLevel, before: frozenset[int]) -> str:
    """Whether a level passes a ceiling that is kept in the concept's own."""
    more = sorted(set(at.over) - before)
    if not more:
        return ""
    return ", which passes the ceiling" if more == [1] else f", which passes the ceiling of phase {more[0]}"


def _over(at_levels: Sequence[AtLevel], level: str | None) -> frozenset[int]:
    return frozenset(next((at.over for at in at_levels if at.level == level), ()))
