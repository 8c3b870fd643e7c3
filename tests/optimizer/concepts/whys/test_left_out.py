"""Why shown concepts leave rooms out: by what was found anyway, with exact costs, and never a guess."""

from dataclasses import replace
from decimal import Decimal

from optimizer.catalogue import book_for
from optimizer.concepts import OptionSet
from optimizer.concepts.case import Case
from optimizer.concepts.whys.left_out import NOT_FOUND, explained
from optimizer.engine.problem import build_problem
from optimizer.rechecking import recheck
from optimizer.results import to_document, to_text
from optimizer.scenario.patch import patched
from tests.optimizer.concepts.whys.tiny_yard import tiny

CASE = tiny()
PROBLEM = build_problem(CASE.scenario, CASE.rooms, CASE.book)


def told(shown, judged, case=CASE):
    """What is told of the nook that the last of the shown leaves out."""
    (left,) = explained(case, PROBLEM, shown, judged)[-1].left_out
    assert left.room == "nook"
    return left


def test_a_concept_that_has_it(having, without):
    """Its name, its price to the unit and what it is in all; the way out was found, so it works."""
    left = told([having[0], without], having)
    cost = having[0].appraisal.cost.phase(1)
    assert left.why.startswith(f"it fits, for {cost:,.0f} USD, ")
    assert "concept 1" in left.why
    (way,) = left.ways_out
    assert way.patch == (("add", "/brief/rooms/1/required", True),)
    case = Case.of(patched(CASE.scenario, way.patch))
    assert case.judged(having[0].layout).holds
    assert not case.judged(without.layout).holds


def test_a_plan_that_is_not_shown(having, without):
    """Found in the run, and not among the concepts."""
    assert "a plan that is not shown" in told([without], [replace(having[0], id="", rank=None)]).why


def test_nothing_was_found(without):
    """Said plainly, without a reason that was not tried."""
    left = told([without], [without])
    assert (left.why, left.ways_out) == (NOT_FOUND, ())


def test_the_prices_rule_it_out(without):
    """Where the least that it costs with what is required passes the ceiling, that is the reason."""
    brief = CASE.scenario.brief
    low = replace(brief, budget=replace(brief.budget, ceiling=Decimal(26_000)))
    case = replace(CASE, scenario=replace(CASE.scenario, brief=low))
    assert "costs at least" in told([without], [], case).why
    assert "the ceiling is 26,000 USD" in told([without], [], case).why


def test_what_it_gives_up(having, without):
    """The concept that has it and gives up least is named before a better one that gives up more."""
    other = replace(having[0], layout=replace(having[0].layout, placements=having[0].layout.placements[1:]), score=-1.0)
    left = told([without], [other, replace(having[0], id="concept-07", rank=7)])
    assert "concept 7" in left.why
    alone = told([without], [replace(other, id="concept-08", rank=8)])
    assert "concept 8, which does without the table" in alone.why


def test_what_recheck_says_of_ways_out(tiny_run, having, without, tmp_path):
    """A patch that the text of the result does not bear is told, as of a room that there is not."""
    shown = explained(CASE, PROBLEM, [having[0], without], having)
    proven = replace(shown[1], proof=having[0].proof)
    document = to_document(
        CASE.scenario, CASE.rooms, OptionSet((shown[0], proven), tiny_run.search), book=book_for(CASE.scenario.currency)
    )
    for index, words in ((1, False), (7, True)):
        document["options"][1]["left_out"][0]["ways_out"][0]["patch"][0]["path"] = f"/brief/rooms/{index}/required"
        (tmp_path / "options.json").write_text(to_text(document), encoding="utf-8")
        told = [line for line in recheck(tmp_path / "options.json") if "is no change of this scenario" in line]
        assert bool(told) == words
