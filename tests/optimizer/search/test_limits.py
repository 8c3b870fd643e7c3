"""Limits that rooms share: what the explorer passes keeps them, and the whole model keeps what it can of them."""

import threading

import pytest

from optimizer.catalogue import book_for
from optimizer.check import check_layout
from optimizer.instance import build_instance
from optimizer.layout import placed_of
from optimizer.model import build_model, whole_scope
from optimizer.search import Pool, Tour, board_of, explore, layout_of
from optimizer.search.limits import keeps_limits, paved_left
from optimizer.search.solve import Effort, solve
from optimizer.site import RootRings, Tree
from tests.yards import on_site, plain_rooms, plain_yard

# A tree amid the yard, in whose ring any one room may stand.
CROWDED = on_site(
    plain_yard(ceiling=None),
    trees=(Tree("elm", (28, 30), trunk_diameter_ft=0.7, canopy_radius_ft=1),),
    root_rings=RootRings(inner=2, outer=20, paved_share=0.28),
)


def explored(scenario):
    """Instance and the states that a short search passes."""
    instance = build_instance(scenario, plain_rooms(), book_for("USD"))
    pool = Pool()
    board = board_of(instance)
    explore(board, pool, Tour(40, seed=2), stop=threading.Event())
    return instance, board, [state for _, state in pool.ranked()]


def test_rooms_share_what_a_ring_bears():
    """Each room alone may stand in the ring; no layout that is passed has too much of it built on together."""
    instance, board, states = explored(CROWDED)
    assert len(states) > 1
    assert any(sum(spot is not None for spot in state) > 1 for state in states)
    for state in states:
        found = check_layout(CROWDED, placed_of(plain_rooms(), layout_of(instance, state)))
        assert "root_ring" not in {finding.rule for finding in found}
        assert keeps_limits(board, state)


def test_the_ring_binds_here():
    """The other side of the claim: without the shared limit the same search passes layouts that the check refuses."""
    instance = build_instance(CROWDED, plain_rooms(), book_for("USD"), without=frozenset({"root_ring"}))
    pool = Pool()
    explore(board_of(instance), pool, Tour(40, seed=2), stop=threading.Event())
    layouts = [layout_of(instance, state) for _, state in pool.ranked()]
    assert any(
        "root_ring" in {f.rule for f in check_layout(CROWDED, placed_of(plain_rooms(), layout))} for layout in layouts
    )


@pytest.mark.parametrize(("share", "cells"), [(0.15, 288), (0.1, 192), (None, None)])
def test_the_paved_share_leaves_so_many_cells(share, cells):
    """15 % of 1,920 sq ft of open yard are 288 cells of a foot; what stands is taken from it."""
    instance, board, _ = explored(on_site(plain_yard(ceiling=None), paved_share_limit=share))
    assert instance.pavable_cells == cells
    assert paved_left(board, tuple(None for _ in instance.rooms), room=0) == cells


def test_the_whole_model_keeps_the_paved_share():
    """Table, cooker, fire and nook pave 336 sq ft; with 288 allowed the best layout does without one of them."""
    instance = build_instance(on_site(plain_yard(ceiling=None), paved_share_limit=0.15), plain_rooms(), book_for("USD"))
    answer = solve(build_model(instance, whole_scope(instance)), Effort(wall_s=60.0))
    assert answer.state is not None
    paved = sum(instance.paved_cells(room, s.variant) for room, s in enumerate(answer.state) if s is not None)
    assert 168 <= paved <= 288
