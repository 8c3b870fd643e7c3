"""Why shown concepts leave rooms out: by what was found anyway, with exact costs, and never a guess."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.catalogue import book_for
from optimizer.concepts import OptionSet
from optimizer.concepts.case import Case
from optimizer.concepts.whys.left_out import NOT_FOUND, explained
from optimizer.engine.problem import build_problem
from optimizer.pipeline import RunSettings, make_options, recheck
from optimizer.results import to_document, to_text
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import tiny

CASE = tiny()
PROBLEM = build_problem(CASE.scenario, CASE.rooms, CASE.book)


@pytest.fixture(scope="module")
def options():
    """Concepts of the tiny yard with the nook, the best first, and one without."""
    found = make_options(CASE.scenario, RunSettings(seconds=1, repeatable=True, processes=0)).options
    having = [option for option in found if option.layout.of("nook")]
    layout = replace(having[0].layout, placements=having[0].layout.placements[:1])
    return having, replace(CASE.described(layout, CASE.judged(layout)), id="concept-09", rank=9)


def told(shown, judged, case=CASE):
    """What is told of the nook that the last of the shown leaves out."""
    (left,) = explained(case, PROBLEM, shown, judged)[-1].left_out
    assert left.room == "nook"
    return left


def test_a_concept_that_has_it(options):
    """Its name, its price to the unit and what it is in all; the way out was found, so it works."""
    having, without = options
    left = told([having[0], without], having)
    cost = having[0].appraisal.cost.phase(1)
    assert left.why.startswith(f"it fits, for {cost:,.0f} USD, ")
    assert "concept 1" in left.why
    (way,) = left.ways_out
    assert way.patch == (("add", "/brief/rooms/1/required", True),)
    case = Case.of(patched(CASE.scenario, way.patch))
    assert case.judged(having[0].layout).holds
    assert not case.judged(without.layout).holds


def test_a_plan_that_is_not_shown(options):
    """Found in the run, and not among the concepts."""
    having, without = options
    assert "a plan that is not shown" in told([without], [replace(having[0], id="", rank=None)]).why


def test_nothing_was_found(options):
    """Said plainly, without a reason that was not tried."""
    _, without = options
    left = told([without], [without])
    assert (left.why, left.ways_out) == (NOT_FOUND, ())


def test_the_prices_rule_it_out(options):
    """Where the least that it costs with what is required passes the ceiling, that is the reason."""
    _, without = options
    brief = CASE.scenario.brief
    low = replace(brief, budget=replace(brief.budget, ceiling=Decimal(26_000)))
    case = replace(CASE, scenario=replace(CASE.scenario, brief=low))
    assert "costs at least" in told([without], [], case).why
    assert "the ceiling is 26,000 USD" in told([without], [], case).why


def test_what_it_gives_up(options):
    """The concept that has it and gives up least is named before a better one that gives up more."""
    having, without = options
    other = replace(having[0], layout=replace(having[0].layout, placements=having[0].layout.placements[1:]), score=-1.0)
    left = told([without], [other, replace(having[0], id="concept-07", rank=7)])
    assert "concept 7" in left.why
    alone = told([without], [replace(other, id="concept-08", rank=8)])
    assert "concept 8, which does without the table" in alone.why


def test_what_recheck_says_of_ways_out(options, tmp_path):
    """A patch that the text of the result does not bear is told, as of a room that there is not."""
    having, without = options
    search = make_options(CASE.scenario, RunSettings(seconds=0.5, processes=0)).search
    shown = explained(CASE, PROBLEM, [having[0], without], having)
    proven = replace(shown[1], proof=having[0].proof)
    document = to_document(
        CASE.scenario, CASE.rooms, OptionSet((shown[0], proven), search), book=book_for(CASE.scenario.currency)
    )
    for index, words in ((1, False), (7, True)):
        document["options"][1]["left_out"][0]["ways_out"][0]["patch"][0]["path"] = f"/brief/rooms/{index}/required"
        (tmp_path / "options.json").write_text(to_text(document), encoding="utf-8")
        told = [line for line in recheck(tmp_path / "options.json") if "is no change of this scenario" in line]
        assert bool(told) == words
