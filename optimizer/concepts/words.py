"""Small pieces of sentences."""

from collections.abc import Sequence

from optimizer.scenario import Scenario
from optimizer.units import feet_inches


def listed(names: Sequence[str]) -> str:
    """Names in a row: one, one and other, one, another and a third."""
    return " and ".join(names) if len(names) < 3 else ", ".join(names[:-1]) + " and " + names[-1]


def capital(text: str) -> str:
    """Text with a capital at its start."""
    return f"{text[:1].upper()}{text[1:]}"


def length_words(scenario: Scenario, length_ft: float) -> str:
    """A length in the scenario's unit: to the inch, or to the centimetre."""
    return feet_inches(length_ft, denominator=1) if scenario.units == "ft" else f"{length_ft / scenario.unit_ft:.2f} m"
