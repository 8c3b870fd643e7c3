"""The proof of the whole model: it agrees with one plain model, its bound is one, and a limit of work repeats."""

import threading
from dataclasses import replace
from itertools import islice

import pytest

from optimizer.brief import Relation
from optimizer.catalogue import sized_rooms
from optimizer.engine.explorer import board_of
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import modelled_value
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover import BranchAndBound, Budget, branch_and_bound, incumbent
from optimizer.engine.prover.incumbent import Incumbent, best_of_program
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.programs import programs
from optimizer.engine.prover.solve import Answer, Effort, SolverFault, solve
from optimizer.scenario import load_scenario
from tests.explored import explored, problem_of, states
from tests.yards import plain_rooms, plain_yard

NEVER = threading.Event()
YARDS = {
    "plain": plain_yard(ceiling=None),
    "near, apart, facing": plain_yard(
        Relation(("nook", "table"), "near", within_ft=8),
        Relation(("fire", "table"), "apart", at_least_ft=4),
        Relation(("cooker", "table"), "faces"),
        ceiling=None,
    ),
    "wishes": plain_yard(
        Relation(("cooker", "table"), "touching", shared_edge_ft=6, wish=3),
        Relation(("nook", "fire"), "near", within_ft=5, wish=2),
        ceiling=None,
    ),
}


def coarse_problem(scenario, rooms=None):
    """Problem of a yard on a grid of 2 ft, which one plain model can prove soon."""
    coarse = replace(scenario, brief=replace(scenario.brief, options=replace(scenario.brief.options, grid_step=2.0)))
    return problem_of(coarse, rooms or plain_rooms())


@pytest.mark.parametrize("name", YARDS)
def test_the_same_optimum_as_one_plain_model(name):
    """Programs, places and blocks find what the whole model in one piece finds, and prove it."""
    problem = coarse_problem(YARDS[name])
    plain = solve(build_model(problem, whole_scope(problem)), Effort(workers=2, deterministic_s=1e9))
    assert plain.verdict == "optimal"
    proof = BranchAndBound(problem, Budget(NEVER, workers=2)).run()
    assert proof.is_proven
    assert (proof.objective, proof.bound) == (plain.objective, plain.objective)
    assert modelled_value(problem, proof.state) == plain.objective


def test_a_demonstration_yard_is_proven():
    """Ribbon Lane, whose optimum one model finds too, slower: 25,936.83 by the model's count."""
    scenario = load_scenario("scenarios/ribbon-lane.yaml")
    problem = problem_of(scenario, sized_rooms(scenario.brief))
    proof = BranchAndBound(problem, Budget(NEVER, workers=2)).run()
    assert proof.is_proven
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=30)
    assert all(modelled_value(problem, state) >= proof.objective for state in states(explorer))


@pytest.mark.parametrize("work_s", [0.0, 0.3, 1.0])
def test_a_bound_is_a_bound_whenever_it_ends(work_s):
    """Ended early, the bound lies at or below the optimum, and it never falls as more work is spent."""
    problem = coarse_problem(YARDS["wishes"])
    optimum = BranchAndBound(problem, Budget(NEVER)).run().objective
    proof = BranchAndBound(problem, Budget(NEVER, work_s=work_s)).run()
    assert 0 <= proof.bound <= optimum <= proof.objective
    assert proof.is_proven == (proof.bound == proof.objective)


def test_so_much_work_repeats_exactly():
    """The same work, seed and workers: the same layout and the same bound."""
    scenario = load_scenario("scenarios/thimble-yard.yaml")
    problem = problem_of(scenario, sized_rooms(scenario.brief))
    found = [BranchAndBound(problem, Budget(NEVER, work_s=0.5, workers=2)).run() for _ in range(2)]
    assert found[0] == found[1]


def test_what_it_begins_from_gets_no_more_than_is_left(monkeypatch):
    """The first layout is polished for as long as there is, the next for what that one left, and what was used is told."""
    given = []

    def solved(_built, effort, *, stop):
        given.append(effort.deterministic_s)
        return Answer("undecided", None, None, None, work_s=effort.deterministic_s)

    monkeypatch.setattr(incumbent, "solve", solved)
    problem = modelled_problem(coarse_problem(YARDS["plain"]))
    places = Places(problem, next(programs(board_of(problem))))
    for work_s, told in ((0.2, [0.2]), (0.4, [0.3, 0.1])):
        given.clear()
        found = best_of_program(problem, places, FORBIDDEN, seed=1, stop=NEVER, work_s=work_s)
        assert given == [pytest.approx(one) for one in told]
        assert found.work_s == pytest.approx(work_s)


def test_work_on_what_it_begins_from_counts(monkeypatch):
    """All of the budget is gone by then, and no block is asked any more."""
    given = []

    def best(*_, work_s, **__):
        given.append(work_s)
        return Incumbent(None, 0.7)

    monkeypatch.setattr(branch_and_bound, "best_of_program", best)
    monkeypatch.setattr(branch_and_bound, "is_dense", lambda *_: True)
    problem = replace(coarse_problem(YARDS["plain"]), rings=())
    proof = BranchAndBound(problem, Budget(NEVER, work_s=0.5)).run()
    assert (proof.work_s, proof.is_proven, given) == (0.7, False, [0.5])


def test_no_block_is_given_more_than_is_left(monkeypatch):
    """However long a block may be tried for otherwise."""
    given, real = [], branch_and_bound.solve

    def noting(built, effort, *, stop):
        given.append(effort.deterministic_s)
        return real(built, effort, stop=stop)

    monkeypatch.setattr(branch_and_bound, "solve", noting)
    BranchAndBound(coarse_problem(YARDS["plain"]), Budget(NEVER, work_s=1e-4)).run()
    assert given
    assert max(given) <= 1e-4


def test_stopped_before_it_began():
    """Nothing is claimed but what was offered."""
    problem, stop = coarse_problem(YARDS["plain"]), threading.Event()
    stop.set()
    search = BranchAndBound(problem, Budget(stop))
    explorer = explored(YARDS["plain"], plain_rooms(), rebuilds=5)
    assert search.run().state is None
    offered = states(explorer)[0]
    whole = BranchAndBound(explorer.board.problem, Budget(stop))
    whole.offer(offered)
    proof = whole.run()
    assert (proof.state, proof.is_proven) == (offered, False)


def test_better_layouts_are_told():
    """Every layout that the proof finds by itself, each better than the one before; what was offered is not."""
    problem, told = coarse_problem(YARDS["wishes"]), []
    proof = BranchAndBound(problem, Budget(NEVER), told.append).run()
    values = [modelled_value(problem, state) for state in told]
    assert values == sorted(values, reverse=True)
    assert values[-1] == proof.objective
    again: list = []
    search = BranchAndBound(problem, Budget(NEVER), again.append)
    search.offer(proof.state)
    assert search.run().is_proven
    assert again == []


def test_a_contradiction_is_a_fault(monkeypatch):
    """A count that the solver contradicts is never called proven."""
    problem = coarse_problem(YARDS["plain"])
    real = branch_and_bound.solve

    def lying(built, effort, *, stop):
        answer = real(built, effort, stop=stop)
        return answer if answer.objective is None else replace(answer, objective=answer.objective - 100)

    monkeypatch.setattr(branch_and_bound, "solve", lying)
    with pytest.raises(SolverFault, match="the solver has"):
        BranchAndBound(problem, Budget(NEVER)).run()


def test_programs_come_by_rising_floor():
    """Each once, none whose guests lack seats, and no layout of a program is below the program's floor."""
    scenario = load_scenario("scenarios/fernhollow-court.yaml")
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=25)
    problem = explorer.board.problem
    listed = list(islice(programs(board_of(modelled_problem(problem))), 400))
    floors = [program.floor for program in listed]
    assert floors == sorted(floors)
    by_choices = {program.choices: program.floor for program in listed}
    assert len(by_choices) == len(listed)
    met = 0
    for state in states(explorer):
        choices = tuple(
            -1 if spot is None else problem.rooms[room].variants[spot.variant].choice for room, spot in enumerate(state)
        )
        met += choices in by_choices
        assert modelled_value(problem, state) >= by_choices.get(choices, 0)
    assert met
    for program in listed:
        for amount in problem.amounts:
            used = sum(
                next(u for v, u in zip(room.variants, uses, strict=True) if v.choice == choice)
                for room, uses, choice in zip(problem.rooms, amount.uses, program.choices, strict=True)
                if choice >= 0
            )
            assert used >= amount.least
            assert amount.most is None or used <= amount.most


def test_no_place_of_something_better_is_struck_out():
    """The optimum's own places are among those that stay open for any limit above it, and leaves' floors are floors."""
    problem = coarse_problem(YARDS["wishes"])
    proof = BranchAndBound(problem, Budget(NEVER)).run()
    choices = tuple(
        -1 if spot is None else problem.rooms[room].variants[spot.variant].choice
        for room, spot in enumerate(proof.state)
    )
    modelled = modelled_problem(problem)
    program = next(p for p in programs(board_of(modelled)) if p.choices == choices)
    places = Places(modelled, program)
    leaves, every = places.leaves(proof.objective + 1), places.leaves(FORBIDDEN)
    assert 0 < len(leaves) < len(every)
    masks = places.masks(problem, leaves)
    for room, spot in enumerate(proof.state):
        assert spot is None or masks[room][spot.variant][spot.y, spot.x]
    (room, _) = leaves[0].held[0]
    at = proof.state[room]
    own = next(
        leaf
        for leaf in leaves
        if (leaf.last.x, leaf.last.y, places.numbers[room][leaf.last.variant]) == (at.x, at.y, at.variant)
    )
    assert own.floor <= proof.objective
