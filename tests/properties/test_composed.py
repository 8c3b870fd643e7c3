"""What a composed plan has, over the first concepts of all yards that are searched in tests: shares that may not fall.

The target is what layout rules 5, 24, 26 to 28, 30 and 32 ask of every plan. The floors are what was measured with the short
runs of `tests/shown.py`, less one yard of eight where a run may differ with the processor: of names on furniture and empty
structures the target is met, of all else it is not. `tests.benchmarks.composition` counts all yards with more time.
"""

from collections.abc import Callable
from dataclasses import dataclass
from statistics import mean
from typing import Final

import pytest

from optimizer.concepts import Option
from optimizer.concepts.leading import LEADING
from optimizer.drawing import AUDIENCES
from optimizer.pipeline import plan_drawing
from optimizer.scenario import Scenario
from tests.composition import Composed, composed_of, ideas_of
from tests.labels import on_furniture
from tests.shown import DEMO_YARDS, PLOTS, Runs

NAMES: Final = (*DEMO_YARDS, *(path.stem for path in PLOTS))


@dataclass(frozen=True)
class First:
    """The first concept of a yard, what is counted on it, and the ideas of the first three."""

    scenario: Scenario
    option: Option
    counted: Composed
    ideas: int


@pytest.fixture(scope="module")
def firsts(shown: Runs) -> list[First]:
    """The first concept of each yard."""
    runs = [shown(name) for name in NAMES]
    return [
        First(
            run.scenario,
            run.found.options[0],
            composed_of(run.scenario, run.found.options[0]),
            len(ideas_of(run.found.options[:LEADING])),
        )
        for run in runs
    ]


SHARES: Final[dict[str, tuple[Callable[[First], bool], float]]] = {
    "a terrace at the main garden door": (lambda it: not it.counted.is_bare, 0.75),
    "0.85 of all edges on shared lines": (lambda it: it.counted.aligned_share >= 0.85, 0.25),
    "2.4 edge lines a room": (lambda it: it.counted.lines <= 2.4 * it.counted.rooms, 0.25),
    "no slant under 8 ft": (lambda it: it.counted.short_slants == 0, 0.625),
    "a bend a leg": (lambda it: it.counted.bends <= it.counted.legs, 0.625),
    "an idea in the first three": (lambda it: it.ideas >= 1, 0.875),
    "two ideas in the first three": (lambda it: it.ideas >= 2, 0.625),
    "every wished room": (lambda it: it.counted.left_out == 0, 0.75),
}
"""Of so many of the first concepts it is true, at the least; the target is all of them, and three ideas in the first
three, which one yard has after so short a search. On two plots a terrace along a wall that leans has a line of its own: a
terrace at the door is worth more than a line less.
"""


@pytest.mark.parametrize("name", SHARES)
def test_a_share_does_not_fall(firsts: list[First], name: str) -> None:
    """Each property on as many of the first concepts as were measured."""
    holds, floor = SHARES[name]
    assert mean(holds(first) for first in firsts) >= floor


def test_edges_lie_on_shared_lines(firsts: list[First]) -> None:
    """On the mean of all first concepts: the target is 0.85 of each."""
    assert mean(first.counted.aligned_share for first in firsts) >= 0.7


def test_no_name_lies_on_furniture(firsts: list[First]) -> None:
    """On no first plan, neither the owner's nor the designer's."""
    for first in firsts:
        for audience in AUDIENCES:
            assert on_furniture(plan_drawing(first.scenario, first.option, audience=audience)) == []


def test_no_structure_is_empty_without_a_word(firsts: list[First]) -> None:
    """An old roof that no room uses has a caution that names it."""
    for first in firsts:
        for name in first.option.appraisal.empty_roofs:
            assert any(name in words.lower() for words in first.option.cautions)
