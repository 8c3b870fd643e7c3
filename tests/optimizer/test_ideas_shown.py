"""The first three concepts of the demonstration yards: different ideas, near the best, and true when recounted."""

import json
from pathlib import Path

import pytest

from optimizer.catalogue import IDEAS, book_for, sized_rooms
from optimizer.concepts.leading import NEAR_BEST
from optimizer.pipeline import RunSettings, make_options, plan_drawing, recheck
from optimizer.results import to_document, to_text
from optimizer.scenario import load_scenario

YARDS = sorted(path.stem for path in Path("scenarios").glob("*.yaml"))
LEAST_IDEAS = 9
"""Different ideas in the first three concepts, summed over the yards: as measured, and it may not fall. All three of
each would be 15; the smallest yard has one idea within 10 % of its best.
"""


@pytest.fixture(scope="module")
def runs():
    """A short run of every yard, with its scenario."""
    scenarios = {name: load_scenario(f"scenarios/{name}.yaml") for name in YARDS}
    settings = RunSettings(seconds=8, repeatable=True)
    return {name: (scenario, make_options(scenario, settings)) for name, scenario in scenarios.items()}


def ideas_of(options):
    """Names of the ideas that concepts follow, None left out."""
    return {option.idea.name for option in options if option.idea}


def test_the_first_three_follow_different_ideas(runs):
    """As many as were measured."""
    found = {name: len(ideas_of(result.options[:3])) for name, (_, result) in runs.items()}
    assert len(found) == 5
    assert sum(found.values()) >= LEAST_IDEAS, found


def test_what_leads_is_near_the_best_and_leaves_no_more_out(runs):
    """Within 10 %, an idea that none before it follows, no more left out than in the first."""
    led = 0
    for _, result in runs.values():
        best = min(option.score for option in result.options)
        first, *others = result.options[:3]
        for number, option in enumerate(others, 1):
            if option.score < result.options[number - 1].score or option.idea is None:
                continue
            if option.idea.name not in ideas_of(result.options[:number]):
                led += 1
                assert option.score <= NEAR_BEST * best or option.score >= max(o.score for o in result.options[:number])
                assert len(option.left_out) <= len(first.left_out) or option.score >= first.score
    assert led


def test_ideas_are_named_where_a_person_reads(runs):
    """On the plan's title, and at the head of the reason where the first follows another."""
    for scenario, result in runs.values():
        first = result.options[0]
        for option in result.options:
            assert "farther left" not in option.reason
            assert "least" not in option.reason
            name = option.idea.name if option.idea else "plan"
            assert plan_drawing(scenario, option).title == f"Concept {option.rank}: {name}"
            if option.idea:
                assert option.idea.name in IDEAS
                if option is first or option.idea.name not in ideas_of([first]):
                    assert option.reason.lower().startswith(option.idea.words.lower())


def test_a_false_idea_is_found(runs, tmp_path):
    """A result rechecks clean; another idea's name, and an idea taken away, do not."""
    scenario, result = runs["thimble-yard"]
    document = to_document(scenario, sized_rooms(scenario.brief), result, book=book_for("USD"))
    path = tmp_path / "options.json"
    path.write_text(to_text(document))
    assert recheck(path) == ()
    named = document["options"][0]["idea"]
    document["options"][0]["idea"] = {**named, "name": "under the old roof"}
    path.write_text(json.dumps(document, default=str))
    told = recheck(path)
    assert f"concept {document['options'][0]['id']}: idea.name is under the old roof, found {named['name']}" in told
    document["options"][0]["idea"] = None
    path.write_text(json.dumps(document, default=str))
    assert any("idea is nothing" in line for line in recheck(path))
