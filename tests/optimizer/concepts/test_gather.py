"""What is kept of what was found: only what holds, and a polished layout only where it is no worse."""

import threading
from dataclasses import replace

import pytest

from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.gather import Find, Gathering
from optimizer.concepts.growth import Grown
from optimizer.concepts.option import Idea
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.problem import build_problem, layout_of
from optimizer.engine.prover import polish, unproven
from optimizer.events import to_nobody
from optimizer.layout import Layout
from optimizer.scenario import load_scenario

NEVER = threading.Event()


@pytest.fixture(scope="module")
def found():
    """A small yard with an explorer that has run a tour, and the verdict on each of its first layouts."""
    case = Case.of(load_scenario("scenarios/ribbon-lane.yaml"))
    problem = build_problem(case.scenario, case.rooms, case.book)
    explorer = Explorer(board_of(problem))
    explorer.run(Tour(40, seed=1, set_aside=round(0.6 * problem.guide.ways)), stop=NEVER)
    states = [state for _, state in explorer.pool.ranked()[:16]]
    return case, explorer, [(state, case.judged(layout_of(problem, state))) for state in states]


def gathered(found):
    """A gathering of all that hold."""
    case, explorer, judged = found
    gathering = Gathering(case, explorer.board.problem, to_nobody)
    kept = [gathering.keep(unproven(explorer.board, state), verdict) for state, verdict in judged]
    return gathering, kept


def test_keeps_what_holds_and_nothing_twice(found):
    """As many finds as verdicts without a finding, also when they are given twice."""
    _, explorer, judged = found
    gathering, kept = gathered(found)
    assert kept == [not verdict.findings for _, verdict in judged]
    assert len(gathering.finds) == sum(kept) > 1
    for state, verdict in judged:
        gathering.keep(unproven(explorer.board, state), verdict)
    assert len(gathering.finds) == sum(kept)


def test_a_refusal_is_kept_with_what_repeats_it(found):
    """A finding stands in the record with the layout; one of the ceiling is expected and does not."""
    case, explorer, judged = found
    state, verdict = next((state, verdict) for state, verdict in judged if not verdict.findings)
    broken = next(
        f
        for f in Case.judged(
            replace(case, scenario=_poor(case.scenario)), layout_of(explorer.board.problem, state)
        ).findings
    )
    assert broken.rule == "budget"
    gathering = Gathering(case, explorer.board.problem, to_nobody)
    assert not gathering.keep(unproven(explorer.board, state), replace(verdict, findings=(broken,)))
    assert gathering.refused == {}
    other = replace(broken, rule="mown", words="no mower gets there")
    assert not gathering.keep(unproven(explorer.board, state), replace(verdict, findings=(other,)))
    assert [*gathering.refused] == ["mown"]
    assert [words.startswith("no mower gets there; at Layout(") for words in gathering.refused["mown"]] == [True]


def _poor(scenario):
    budget = replace(scenario.brief.budget, ceiling=scenario.brief.budget.ceiling / 10)
    return replace(scenario, brief=replace(scenario.brief, budget=budget))


def test_a_polished_layout_takes_the_place_of_a_worse_one(found):
    """Polished, judged, and kept where the exact score is no worse; else the find stays, with the bound of its order."""
    case, explorer, _ = found
    gathering, _ = gathered(found)
    moved, asked = 0, set()
    for find in list(gathering.finds.values()):
        proof = polish(explorer.board, find.proof.state, stop=NEVER)
        asked.add(proof.fingerprint)
        layout = layout_of(explorer.board.problem, proof.state)
        verdict = case.judged(layout)
        gathering.refine(find, proof, verdict)
        if not verdict.findings and verdict.score < find.option.score:
            moved += 1
            kept = find.option.layout in gathering.finds
            assert kept == (named(find.option) not in {None, named(gathering.finds[layout].option)})
    assert moved
    assert all(find.is_final for find in gathering.finds.values())
    assert {option.proof.fingerprint for option in gathering.options} <= asked
    assert all(0 < option.proof.bound <= option.proof.objective for option in gathering.options)
    assert gathering.unproven(gathering.options) == ()


def named(option):
    """Name of its idea."""
    return option.idea.name if option.idea else None


def test_polished_to_another_idea_a_find_stays_beside_it(found):
    """It is what one of the first concepts may be; of the same idea, or of none, it gives way."""
    case, _, _ = found
    gathering, _ = gathered(found)
    finds = sorted(gathering.finds.values(), key=lambda find: -find.option.score)
    better, worse = finds[-1], finds[0]
    verdict = case.judged(better.option.layout)
    for idea, stays in ((Idea("another", "another scheme"), True), (better.option.idea, False), (None, False)):
        gathering, _ = gathered(found)
        find = replace(worse, option=replace(worse.option, idea=idea))
        gathering.finds[worse.option.layout] = find
        gathering.refine(find, replace(better.proof, fingerprint="asked"), verdict)
        assert (worse.option.layout in gathering.finds) == stays
        assert gathering.finds[better.option.layout].is_final
        if stays:
            assert gathering.finds[worse.option.layout].is_final
            assert gathering.finds[worse.option.layout].option.proof.fingerprint == "asked"


def test_what_reality_refuses_polished_stays_as_it_was(found):
    """The layout as it was found, with the bound of its arrangement, which says that the model knows a better one."""
    _, explorer, judged = found
    gathering, _ = gathered(found)
    fault = next(verdict for _, verdict in judged)
    layouts, asked = {option.layout for option in gathering.options}, set()
    for find in list(gathering.finds.values()):
        proof = polish(explorer.board, find.proof.state, stop=NEVER)
        asked.add(proof.fingerprint)
        gathering.refine(find, proof, replace(fault, findings=("refused",)))
    assert {option.layout for option in gathering.options} == layouts
    assert {option.proof.fingerprint for option in gathering.options} == asked
    assert all(0 < option.proof.bound <= option.proof.objective for option in gathering.options)
    assert "bounded" in {option.proof.arrangement for option in gathering.options}


def test_the_best_states_are_the_best_by_the_exact_score(found):
    """In the order of their scores, no more than asked for."""
    gathering, _ = gathered(found)
    by_layout = {layout_of(gathering.problem, s): s for s in gathering.best_states(99)}
    scores = [next(o.score for o in gathering.options if o.layout == layout) for layout in by_layout]
    assert scores == sorted(scores)
    assert len(gathering.best_states(2)) == 2


def test_ideas_are_met_by_whole_layouts_that_may_lead(found):
    """Not by one that lacks a room, nor by one over a tenth worse than the best whole one."""
    gathering, _ = gathered(found)
    best = min(gathering.options, key=lambda option: option.score)
    scores = {"one": best.score, "two": 1.09 * best.score, "three": 1.11 * best.score, "four": best.score}
    gathering.finds.clear()
    assert gathering.ideas_met == frozenset()
    for name, score in scores.items():
        lacking = ("nook",) if name == "four" else ()
        option = replace(best, idea=Idea(name, "a scheme"), left_out=lacking, score=score)
        gathering.finds[Layout(best.layout.placements[: len(gathering.finds)])] = Find(option, found[2][0])
    assert gathering.ideas_met == {"one", "two"}


def test_a_grown_find_keeps_its_proof_and_its_place(found):
    """Its figures are those of the grown layout; its proof, its state and what it is compared by are as before."""
    gathering, _ = gathered(found)
    for find in list(gathering.finds.values()):
        gathering.prove(find, find.proof)
    find = next(iter(gathering.finds.values()))
    assert find in gathering.ungrown(gathering.options)
    places = find.option.layout.placements
    larger = Layout((places[0].grown_to("+x", places[0].right_ft + 1), *places[1:]))
    cheaper = Verdict((), find.option.appraisal, (("cost", 1.0),))
    gathering.grow(find, Grown(larger, cheaper))
    (option,) = (option for option in gathering.options if option.layout == larger)
    assert (option.score, option.proof) == (1.0, find.option.proof)
    assert option.layout.base == find.option.layout
    assert find.option.layout in gathering.finds
    assert gathering.ungrown((option,)) == gathering.unproven((option,)) == ()
    assert gathering.best_states(1) == (find.proof.state,)


def test_a_find_that_should_not_grow_is_asked_once(found):
    """It stays as it was, and is not asked again."""
    gathering, _ = gathered(found)
    settled, *others = gathering.ungrown(gathering.options)
    gathering.grow(settled, Grown(settled.option.layout, Verdict(())))
    assert settled.option in gathering.options
    assert gathering.ungrown(gathering.options) == tuple(others)
