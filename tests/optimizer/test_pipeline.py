"""The main job on real input, end to end."""

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.check import check_layout
from optimizer.concepts.leading import leading
from optimizer.concepts.ranking import standing_of
from optimizer.layout import placed_of
from optimizer.pipeline import RunSettings, make_options, plan_drawing
from optimizer.rechecking import recheck
from optimizer.results import to_document, to_text
from optimizer.scenario import load_scenario
from tests.labels import on_furniture

FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")


@pytest.fixture(scope="module")
def concepts(shown):
    """Concepts of the example yard."""
    return shown("fernhollow-court").found


def test_twelve_concepts_that_keep_every_rule(concepts):
    """Twelve concepts, at least half of them with every room, none with a finding; those that lead, then by score."""
    rooms = sized_rooms(FERNHOLLOW.brief)
    assert len(concepts.options) == 12
    assert sum(not option.left_out for option in concepts.options) >= 6
    for option in concepts.options:
        cost = option.appraisal.cost.phase(1)
        assert check_layout(FERNHOLLOW, placed_of(rooms, option.layout), phase_1_cost=cost) == ()
    lead = leading([standing_of(option) for option in concepts.options])
    assert lead == tuple(range(len(lead)))
    scores = [option.score for option in concepts.options[len(lead) :]]
    assert scores == sorted(scores)


def test_a_result_rechecks_clean(concepts, tmp_path):
    """All that it says of twelve concepts comes out again."""
    document = to_document(FERNHOLLOW, sized_rooms(FERNHOLLOW.brief), concepts, book=book_for("USD"))
    path = tmp_path / "options.json"
    path.write_text(to_text(document))
    assert recheck(path) == ()


def test_every_concept_can_be_drawn(concepts):
    """Drawing takes every concept, and writes on no furniture."""
    for option in concepts.options:
        assert on_furniture(plan_drawing(FERNHOLLOW, option)) == []
        assert on_furniture(plan_drawing(FERNHOLLOW, option, audience="owner")) == []


def test_repeatable_means_the_same_concepts():
    """The same versions, seed and yard give the same layouts in the same order."""
    thimble = load_scenario("scenarios/thimble-yard.yaml")
    settings = RunSettings(count=3, seconds=0.7, repeatable=True)
    first, again = (make_options(thimble, settings).options for _ in range(2))
    assert [option.layout for option in again] == [option.layout for option in first] != []
