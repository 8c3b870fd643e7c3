"""Small pieces of sentences."""

from collections.abc import Sequence

from optimizer.catalogue import ONLY_SIZE
from optimizer.scenario import Scenario
from optimizer.units import feet_inches


def listed(names: Sequence[str]) -> str:
    """Names in a row: one, one and other, one, another and a third."""
    return " and ".join(names) if len(names) < 3 else ", ".join(names[:-1]) + " and " + names[-1]


def choice_words(label: str) -> str:
    """A size as a reader is told of it: that there is no other is not worth saying."""
    return "" if label == ONLY_SIZE else label.removeprefix(f"{ONLY_SIZE}, ")


def capital(text: str) -> str:
    """Text with a capital at its start."""
    return f"{text[:1].upper()}{text[1:]}"


def length_words(scenario: Scenario, length_ft: float) -> str:
    """A length in the scenario's unit: to the inch, or to the centimetre."""
    return feet_inches(length_ft, denominator=1) if scenario.units == "ft" else f"{length_ft / scenario.unit_ft:.2f} m"
