"""The programme for HiGHS against every layout of a tiny grid, and what is said where the two solvers differ."""

from dataclasses import replace

import pytest

from optimizer.concepts import Proof
from optimizer.engine.explorer import Limits
from optimizer.engine.problem import layout_of
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover import polish
from tests.benchmarks.arrangement_milp import arrangement_milp
from tests.benchmarks.reproved import _said, line, reproved
from tests.explored import NEVER, explored, states
from tests.sample_run import sample_option
from tests.tiny import NAMES, every_value, ring, tiny
from tests.yards import plain_rooms, plain_yard


def least_by_key(problem, name):
    """The least value of every arrangement, by trying all layouts."""
    limits, least = Limits.of(problem), {}
    for state, value in every_value(name).items():
        if limits.are_kept(state):
            key = key_of(problem, state)
            least[key] = min(least.get(key, value), value)
    return least


@pytest.mark.parametrize("rings", [(), (ring(3.0),)])
@pytest.mark.parametrize("name", NAMES)
def test_the_least_of_each_arrangement(name, rings):
    """Doors, order, contacts, rules, wishes and rooms left out; and with a ring, which some layouts break."""
    problem = tiny(name, rings=rings)
    least = least_by_key(problem, name)
    for key, value in list(least.items())[:: len(least) // 5]:
        for target in (value, value + 40):
            answer = arrangement_milp(problem, key, target).solve(seconds=20, most=target + 0.5)
            assert (answer.status, round(answer.objective)) == ("optimal", value)
        assert arrangement_milp(problem, key, value - 1).solve(seconds=20, most=value - 0.5).status == "infeasible"


def test_a_polished_layout_of_a_yard():
    """What CP-SAT proves HiGHS proves too; a bound that is put up or down, and another objective, are told."""
    scenario = plain_yard(ceiling=None)
    scenario = replace(scenario, brief=replace(scenario.brief, options=replace(scenario.brief.options, grid_step=2.0)))
    explorer = explored(scenario, plain_rooms(), rebuilds=20)
    problem, proof = explorer.board.problem, polish(explorer.board, states(explorer)[0], stop=NEVER)
    assert proof.is_proven
    at, option = proof.objective / 100, replace(sample_option(), layout=layout_of(problem, proof.state))
    for objective, bound, said, is_wrong in (
        (at, at, "the same", False),
        (at, at + 1, "below the bound", True),
        (at, at - 1, "no layout at a proven value", True),
        (at + 1, at, "not the problem's layout", True),
    ):
        row = reproved(problem, "yard", replace(option, proof=Proof("proven", objective, bound)), seconds=20)
        assert (row.said, row.is_wrong) == (said, is_wrong)
        assert said in line(row)


def test_what_is_said():
    """By what HiGHS finds."""
    assert _said("optimal", 1000.2, 1000, is_proven=True) == "the same"
    assert _said("optimal", 998.0, 1000, is_proven=False) == "below the bound"
    assert _said("undecided", 998.0, 1000, is_proven=False) == "below the bound"
    assert _said("infeasible", None, 1000, is_proven=False) == "the bound holds"
    assert _said("infeasible", None, 1000, is_proven=True) == "no layout at a proven value"
    assert _said("undecided", None, 1000, is_proven=True) == "undecided"
