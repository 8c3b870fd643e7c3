"""What a concept costs, as it is said to an owner: rounded, and with its range."""

from optimizer.appraisal import Cost
from optimizer.catalogue import rounded


def about_words(cost: Cost, currency: str, phase: int = 1) -> str:
    """Say `About 185,000 USD; expect 165,000 to 225,000 until soil, levels and lines are checked`, and of which phase
    where there are more.
    """
    lead = f"Phase {phase}: about" if len(cost.phases) > 1 else "About"
    about = f"{lead} {rounded(cost.phase(phase)):,.0f} {currency}"
    expected = expected_words(cost, phase)
    return f"{about}; expect {expected} until soil, levels and lines are checked." if expected else f"{about}."


def expected_words(cost: Cost, phase: int = 1) -> str:
    """`165,000 to 225,000`; nothing where no range is known."""
    known = cost.range_of(phase)
    return "" if known is None else f"{rounded(known.low):,.0f} to {rounded(known.high):,.0f}"
