"""The main job on real input, end to end."""

import json
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.check import check_layout
from optimizer.pipeline import RunSettings, make_options, plan_drawing, recheck
from optimizer.results import to_document, to_text
from optimizer.scenario import load_scenario

FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")
PLOTS = sorted(Path("tests/plots").glob("plot-*.yaml"))


@pytest.fixture(scope="module")
def concepts():
    """Concepts of the example yard."""
    return make_options(FERNHOLLOW, RunSettings(seconds=60, repeatable=True))


def test_twelve_concepts_that_keep_every_rule(concepts):
    """Twelve concepts, at least half of them with every room, none with a finding, ranked by score."""
    rooms = sized_rooms(FERNHOLLOW.brief)
    assert len(concepts.options) == 12
    assert sum(not option.left_out for option in concepts.options) >= 6
    for option in concepts.options:
        cost = option.appraisal.cost.phase(1)
        assert check_layout(FERNHOLLOW, rooms, option.layout, phase_1_cost=cost) == ()
    scores = [option.score for option in concepts.options]
    assert scores == sorted(scores)


def test_a_false_result_is_found(concepts, tmp_path):
    """A result rechecks clean; a moved room and a changed price do not."""
    document = to_document(FERNHOLLOW, sized_rooms(FERNHOLLOW.brief), concepts, book=book_for("USD"))
    path = tmp_path / "options.json"
    path.write_text(to_text(document))
    assert recheck(path) == ()
    document["options"][0]["rooms"][0]["x_ft"] += 1
    path.write_text(json.dumps(document, default=str))
    assert recheck(path) != ()


def test_every_concept_can_be_drawn(concepts):
    """Drawing takes every concept."""
    assert all(plan_drawing(FERNHOLLOW, option) for option in concepts.options)


def test_budget_below_the_cheapest_required_rooms():
    """The reason names the floor and the ceiling."""
    budget = replace(FERNHOLLOW.brief.budget, ceiling=Decimal(9000))
    poor = replace(FERNHOLLOW, brief=replace(FERNHOLLOW.brief, budget=budget))
    found = make_options(poor, RunSettings(seconds=5))
    assert found.search.status == "nothing_fits"
    assert found.conflict is not None
    assert "9,000" in found.conflict.words


@pytest.mark.parametrize("path", PLOTS, ids=lambda path: path.stem)
def test_real_plots(path):
    """On real ground every concept keeps every rule, reachability included; where nothing fits there is a reason."""
    scenario = load_scenario(path)
    found = make_options(scenario, RunSettings(count=2, seconds=6))
    assert found.options or found.search.status in ("nothing_fits", "undecided")
    for option in found.options:
        rooms = sized_rooms(scenario.brief)
        assert check_layout(scenario, rooms, option.layout, phase_1_cost=option.appraisal.cost.phase(1)) == ()
