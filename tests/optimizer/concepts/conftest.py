"""One short run of the tiny yard, for all that is told of its concepts."""

from dataclasses import replace

import pytest

from optimizer.concepts import Option, OptionSet
from optimizer.pipeline import RunSettings, make_options
from tests.optimizer.concepts.whys.tiny_yard import tiny


@pytest.fixture(scope="session")
def tiny_run() -> OptionSet:
    """Concepts of the tiny yard."""
    return make_options(tiny().scenario, RunSettings(seconds=1, repeatable=True, processes=0))


@pytest.fixture(scope="session")
def having(tiny_run: OptionSet) -> list[Option]:
    """Concepts with the nook, the best first."""
    return [option for option in tiny_run.options if option.layout.of("nook")]


@pytest.fixture(scope="session")
def without(having: list[Option]) -> Option:
    """A concept without the nook: the table of the best one with it."""
    case, layout = tiny(), replace(having[0].layout, placements=having[0].layout.placements[:1])
    return replace(case.described(layout, case.judged(layout)), id="concept-09", rank=9)
