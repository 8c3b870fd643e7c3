"""Limits that rooms share: what the explorer passes keeps them, and the whole model keeps what it can of them."""

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.check import check_layout
from optimizer.engine.explorer import Limits
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.problem import build_problem, layout_of
from optimizer.engine.prover.solve import Effort, solve
from optimizer.layout import placed_of
from optimizer.scenario import load_scenario
from optimizer.site import RootRings, Tree
from tests.explored import explored, states
from tests.yards import on_site, plain_rooms, plain_yard

# A tree amid the yard, in whose ring any one room may stand.
CROWDED = on_site(
    plain_yard(ceiling=None),
    trees=(Tree("elm", (28, 30), trunk_diameter_ft=0.7, canopy_radius_ft=1),),
    root_rings=RootRings(inner=2, outer=20, paved_share=0.28),
)


def paved(problem, state):
    """Cells that the rooms of a state pave."""
    variants = [problem.rooms[room].variants[spot.variant] for room, spot in enumerate(state) if spot is not None]
    return sum(variant.width * variant.depth for variant in variants)


def test_rooms_share_what_a_ring_bears():
    """Each room alone may stand in the ring; no layout that is passed has too much of it built on together."""
    explorer = explored(CROWDED, plain_rooms(), seed=2)
    problem, found = explorer.board.problem, states(explorer)
    assert len(found) > 1
    assert any(sum(spot is not None for spot in state) > 1 for state in found)
    for state in found:
        findings = check_layout(CROWDED, placed_of(plain_rooms(), layout_of(problem, state)))
        assert "root_ring" not in {finding.rule for finding in findings}
        assert Limits.of(problem).are_kept(state)


def test_the_ring_binds_here():
    """The other side of the claim: without the shared limit the same search passes layouts that the check refuses."""
    explorer = explored(CROWDED, plain_rooms(), seed=2, without=frozenset({"root_ring"}))
    placed = [placed_of(plain_rooms(), layout_of(explorer.board.problem, state)) for state in states(explorer)]
    assert any("root_ring" in {finding.rule for finding in check_layout(CROWDED, layout)} for layout in placed)


@pytest.mark.parametrize(("share", "cells"), [(0.15, 288), (0.1, 192), (None, None)])
def test_the_paved_share_leaves_so_many_cells(share, cells):
    """15 % of 1,920 sq ft of open yard are 288 cells of a foot; the explorer stays within them."""
    explorer = explored(on_site(plain_yard(ceiling=None), paved_share_limit=share), plain_rooms())
    problem = explorer.board.problem
    limits = [amount.most for amount in problem.amounts if amount.rule == "paved_share"]
    assert limits == ([] if cells is None else [cells])
    most = max(paved(problem, state) for state in states(explorer))
    assert most == 336 if cells is None else most <= cells


def test_money_set_aside_leaves_less_for_rooms():
    """A third set aside is gone; more than there is leaves nothing; likely runs are part of what a choice uses."""
    scenario = load_scenario("scenarios/fernhollow-court.yaml")
    problem = build_problem(scenario, sized_rooms(scenario.brief), book_for("USD"))
    budget, where = problem.budget, problem.amounts.index(problem.budget)
    third = budget.most // 3
    kept, nothing = (Limits.of(problem, set_aside=aside).amounts[where] for aside in (third, 9 * third))
    assert (kept.most, nothing.most) == (budget.most - third, 0)
    runs = [
        most - least
        for likely, plain in zip(kept.uses, budget.uses, strict=True)
        for most, least in zip(likely, plain, strict=True)
    ]
    assert runs == [run for of_room in problem.guide.runs for run in of_room]
    assert max(runs) > 0


def test_a_ceiling_below_the_fixed_charges_stays_passed():
    """Rooms that cost nothing do not fit under it."""
    problem = build_problem(plain_yard(ceiling="22000"), plain_rooms(), book_for("USD"))
    assert problem.budget.most < 0
    assert not Limits.of(problem, set_aside=100).left_for(tuple(None for _ in problem.rooms), 0)[0]


def test_insisted_rooms_may_not_lack():
    """A room that a tour insists on is required of it, though the brief leaves it to choice."""
    problem = build_problem(plain_yard(ceiling=None), plain_rooms(), book_for("USD"))
    nowhere = tuple(None for _ in problem.rooms)
    assert Limits.of(problem).left_for(nowhere, 3)[1]
    assert not Limits.of(problem, insist=frozenset({3})).left_for(nowhere, 3)[1]


def test_the_whole_model_keeps_the_paved_share():
    """Table, cooker, fire and nook pave 336 sq ft; with 288 allowed the best layout does without one of them."""
    problem = build_problem(on_site(plain_yard(ceiling=None), paved_share_limit=0.15), plain_rooms(), book_for("USD"))
    answer = solve(build_model(problem, whole_scope(problem)), Effort(wall_s=60.0))
    assert answer.state is not None
    assert 168 <= paved(problem, answer.state) <= 288
