"""Concepts of a result that a question is asked of, where the scenario is not the one that they were made from."""

from dataclasses import replace

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.whys.context import concepts_of
from optimizer.errors import InputError
from optimizer.layout import Layout
from tests.sample_run import sample_option, sample_scenario

CASE = Case.of(sample_scenario())
KNOWN = sample_option()
FIRST, *OTHERS = KNOWN.layout.placements
STRANGE = replace(KNOWN, id="a2", layout=Layout((replace(FIRST, choice="of no size"), *OTHERS)))


def test_what_the_scenario_has_not_is_left_aside():
    """Without a concept that is asked of, all others serve."""
    assert concepts_of(CASE, (KNOWN, STRANGE), None) == (None, (KNOWN,))


def test_asked_of_what_the_scenario_has_not():
    """Refused with the room and its size."""
    with pytest.raises(InputError, match=r"concept of this scenario, found gathering area as of no size; ask with the"):
        concepts_of(CASE, (KNOWN, STRANGE), "a2")
