"""The first three concepts of demonstration yards: different ideas, near the best, and true when recounted."""

import json

import pytest

from optimizer.catalogue import IDEAS, book_for, sized_rooms
from optimizer.concepts.leading import NEAR_BEST, leading
from optimizer.concepts.ranking import standing_of
from optimizer.pipeline import RunSettings, make_options, plan_drawing
from optimizer.rechecking import recheck
from optimizer.results import to_document, to_text
from tests.composition import ideas_of

IDEAS_OF_THREE = {"wattle-rise": 2, "thimble-yard": 1}
"""Different ideas in the first three concepts of three rounds: as measured, and they may not fall. The smallest yard has
one idea within 10 % of its best, however long it is searched; `tests.benchmarks.composition` counts all yards.
"""


@pytest.fixture(scope="module")
def runs(shown):
    """A short run of each yard, with its scenario."""
    found = {name: shown(name) for name in IDEAS_OF_THREE}
    return {name: (run.scenario, run.found) for name, run in found.items()}


def test_the_first_three_follow_different_ideas(runs):
    """As many as were measured; each near the best and with no more left out than the first."""
    for name, (_, result) in runs.items():
        lead = leading([standing_of(option) for option in result.options])
        assert lead == tuple(range(len(lead)))
        assert len(ideas_of(result.options[:3])) >= IDEAS_OF_THREE[name]
        best = min(option.score for option in result.options)
        led = [option for option in result.options[: len(lead)] if option.idea]
        assert all(option.score <= NEAR_BEST * best for option in led)


def test_ideas_are_named_where_a_person_reads(runs):
    """On the plan's title, and at the head of the reason where the first follows another."""
    for scenario, result in runs.values():
        first = result.options[0]
        for option in result.options:
            name = option.idea.name if option.idea else "plan"
            assert plan_drawing(scenario, option).title == f"Concept {option.rank}: {name}"
            if option.idea:
                assert option.idea.name.split(", ")[0] in IDEAS
                if option is first or option.idea.name not in ideas_of([first]):
                    assert option.reason.lower().startswith(option.idea.words.lower())


def test_a_false_result_is_found(runs, tmp_path):
    """A result rechecks clean; another idea's name, an idea taken away and a moved room do not."""
    scenario, result = runs["thimble-yard"]
    document = to_document(scenario, sized_rooms(scenario.brief), result, book=book_for("USD"))
    path = tmp_path / "options.json"
    path.write_text(to_text(document))
    assert recheck(path) == ()
    first = document["options"][0]
    named = first["idea"]
    for idea, words in (
        ({**named, "name": "under the old roof"}, f"idea.name is under the old roof, found {named['name']}"),
        (None, "idea is nothing, found"),
    ):
        first["idea"] = idea
        path.write_text(json.dumps(document, default=str))
        assert any(line.startswith(f"concept {first['id']}: {words}") for line in recheck(path))
    first["idea"] = named
    first["rooms"][0]["x_ft"] += 1
    path.write_text(json.dumps(document, default=str))
    assert any(line.startswith(f"concept {first['id']}: ") for line in recheck(path))


def test_from_an_earlier_result(runs, tmp_path):
    """A run of one round that starts from a result finds nothing worse than its best."""
    scenario, result = runs["thimble-yard"]
    path = tmp_path / "options.json"
    path.write_text(to_text(to_document(scenario, sized_rooms(scenario.brief), result, book=book_for("USD"))))
    settings = RunSettings(count=2, seconds=1.5, repeatable=True, seed=99, start_from=path, processes=0)
    again = make_options(scenario, settings)
    best, best_again = (min(option.score for option in found.options) for found in (result, again))
    assert best_again <= best + 0.01
