"""The programme for HiGHS against every layout of a tiny grid, and what is said where the two solvers differ."""

import json
from dataclasses import replace

import pytest

from optimizer.concepts import Proof
from optimizer.engine.explorer import Limits
from optimizer.engine.problem import layout_of
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover import polish
from tests.benchmarks.arrangement_milp import arrangement_milp
from tests.benchmarks.reproved import Claim, claims_of, line, main, reproved, said_of
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


def coarse_yard():
    """The plain yard on a grid of 2 ft."""
    scenario = plain_yard(ceiling=None)
    return replace(scenario, brief=replace(scenario.brief, options=replace(scenario.brief.options, grid_step=2.0)))


def test_a_polished_layout_of_a_yard():
    """What CP-SAT proves HiGHS proves too; a bound that is put up or down, and another objective, are told."""
    explorer = explored(coarse_yard(), plain_rooms(), rebuilds=20)
    problem, proof = explorer.board.problem, polish(explorer.board, states(explorer)[0], stop=NEVER)
    assert proof.is_proven
    at = proof.objective
    for objective, bound, said, is_wrong in (
        (at, at, "the same", False),
        (at, at - 100, "the bound holds", False),
        (at, at + 100, "below the bound", True),
        (at + 100, at, "not the problem's layout", True),
    ):
        row = reproved(problem, "yard", Claim("one", proof.state, objective, bound), seconds=20)
        assert (row.said, row.is_wrong) == (said, is_wrong)
        assert said in line(row)


def test_claims_of_a_result():
    """Options that the solver was never asked of are none; proven ones come first; a strange layout has no state."""
    explorer = explored(coarse_yard(), plain_rooms(), rebuilds=20)
    problem = explorer.board.problem
    state = states(explorer)[0]
    option = replace(sample_option(), layout=layout_of(problem, state))
    proofs = Proof("bounded", 10.5, 0.0), Proof("bounded", 10.5, 10.25, "a"), Proof("proven", 10.5, 10.5, "b")
    options = [replace(option, id=str(number), proof=proof) for number, proof in enumerate(proofs)]
    strange = replace(sample_option("3"), proof=proofs[2])
    told = list(claims_of(problem, (*options, strange)))
    assert told == [Claim("2", state, 1050, 1050), Claim("3", None, 1050, 1050), Claim("1", state, 1050, 1025)]
    assert reproved(problem, "yard", told[1], seconds=1).said == "not the problem's layout"


def test_claims_of_a_yard(tmp_path, capsys):
    """A demonstration yard is explored, one arrangement polished and proven again."""
    file = tmp_path / "rows"
    assert main(["scenarios/thimble-yard.yaml", "--options", "1", "--seconds", "2", "--json", str(file)]) == 0
    assert "arrangement 1" in capsys.readouterr().out
    assert json.loads(file.read_text())[0]["source"] == "thimble-yard"


@pytest.mark.parametrize(
    ("status", "objective", "is_proven", "said"),
    [
        ("optimal", 1000.2, True, "the same"),
        ("optimal", 998.0, False, "below the bound"),
        ("undecided", 998.0, False, "below the bound"),
        ("infeasible", None, False, "the bound holds"),
        ("infeasible", None, True, "no layout at a proven value"),
        ("undecided", None, True, "undecided"),
    ],
)
def test_what_is_said(status, objective, is_proven, said):
    """By what HiGHS finds."""
    assert said_of(status, objective, Claim("one", None, 1000 if is_proven else 1001, 1000)) == said
