"""What answers say in the same way: relations, lengths and money, in the file's own units."""

from decimal import Decimal
from typing import Final

from optimizer.brief import Relation
from optimizer.concepts.case import Case
from optimizer.concepts.floor import floor_price
from optimizer.concepts.words import capital
from optimizer.scenario import Scenario

_SHARES: Final = (
    (0.02, "hardly any"),
    (0.1, "about a tenth"),
    (0.2, "about a fifth"),
    (1 / 3, "about a third"),
    (0.5, "about half"),
    (2 / 3, "about two thirds"),
    (0.8, "about four fifths"),
    (0.9, "most"),
    (0.98, "nearly all"),
)


def relation_words(scenario: Scenario, relation: Relation) -> str:
    """What a relation asks for, with its figure."""
    one, other = relation.between
    match relation.kind:
        case "near":
            way = " on foot" if relation.by == "walking" else ""
            return f"{one} within {length(scenario, relation.within_ft)}{way} of {other}"
        case "apart":
            return f"{one} at least {length(scenario, relation.at_least_ft)} from {other}"
        case "touching":
            edge = relation.shared_edge_ft
            return f"{one} touching {other}" + (f" along {length(scenario, edge)} of edge" if edge else "")
        case "accessible":
            return f"{one} to {other} without a step"
        case _:
            return relation.words


def sentence(words: str) -> str:
    """Words with a capital and a full stop."""
    return f"{capital(words)}."


def length(scenario: Scenario, length_ft: float | None) -> str:
    """A length in the file's unit."""
    return f"{round((length_ft or 0.0) / scenario.unit_ft, 2):g} {scenario.units}"


def money(scenario: Scenario, amount: Decimal) -> str:
    """An amount in whole units of the currency."""
    return f"{amount:,.0f} {scenario.currency}"


def above_ceiling(case: Case) -> str | None:
    """That what is required costs more than the ceiling, by its proven least; None where it need not."""
    ceiling, floor = case.scenario.brief.budget.ceiling, floor_price(case)
    if ceiling is None or floor <= ceiling:
        return None
    least, most = money(case.scenario, floor), money(case.scenario, ceiling)
    what = "what is required, with seats for the guests and the fixed work,"
    return f"{what} costs at least {least}, without ways; the ceiling is {most}"


def share_words(share: float) -> str:
    """About how much of something, 0 to 1, as one would say it."""
    if share <= 0.0:
        return "none"
    if share >= 1.0:
        return "all"
    return min(_SHARES, key=lambda known: abs(known[0] - share))[1]


def place(scenario: Scenario, at_ft: tuple[float, float]) -> str:
    """A corner of the plan."""
    x, y = (round(figure / scenario.unit_ft, 2) + 0.0 for figure in at_ft)
    return f"{x:g}, {y:g} {scenario.units}"
