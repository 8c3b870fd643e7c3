"""Programs with few places, settled place after place: against every layout, and where it is ended early."""

import json
import threading
from dataclasses import replace
from functools import partial
from itertools import product
from pathlib import Path

import numpy as np
import pytest

from optimizer.engine.explorer import board_of
from optimizer.engine.grid.root_rings import RootRing
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Spot, modelled_value
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover import BranchAndBound, Budget, branch_and_bound
from optimizer.engine.prover.blocks import pieces_of
from optimizer.engine.prover.incumbent import Incumbent
from optimizer.engine.prover.place_tree import MOST_PLACES, PlaceTables, PlaceTree
from optimizer.engine.prover.places import Leaf, Places
from optimizer.engine.prover.programs import programs
from optimizer.engine.prover.solve import Effort, solve
from tests.benchmarks.published_instance import problem_of
from tests.containers import DENSE, container, least_by_hand
from tests.tiny import NAMES, ROOMS, every_state, is_kept, only_at, spots, tiny

NEVER = threading.Event()
CORNERS = [(x, y) for x in (0, 1, 3) for y in (0, 2)]


def few(name):
    """A tiny problem whose rooms have a few corners each, with all that costs there."""
    shifted = [[(x + n % 2, y) for x, y in CORNERS] for n in range(3)]
    return tiny(name, rooms=tuple(only_at(data, *own) for data, own in zip(ROOMS, shifted, strict=True)))


FEW = {**{name: few(name) for name in NAMES}, **{name: own for name, own in DENSE.items() if name != "a box"}}


def least_of(name):
    """Least value of all layouts, by trying each."""
    if name in DENSE:
        return least_by_hand(DENSE[name])
    return min(modelled_value(FEW[name], state) for state in every_state(FEW[name]))


def first_tree(problem, limit=FORBIDDEN, spent=lambda _work: False):
    """A search in the cheapest program; None where it has too many places."""
    places = Places(modelled_problem(problem), next(programs(board_of(modelled_problem(problem)))))
    tables = PlaceTables.of(places, limit)
    return None if tables is None else PlaceTree(problem, places, tables, spent)


@pytest.mark.parametrize("is_known", [False, True])
@pytest.mark.parametrize("name", FEW)
def test_the_least_of_all_without_the_solver(name, is_known, monkeypatch):
    """With doors, order, wishes and rooms left out; with a layout known before and without. Nothing is left to the solver."""
    asked = []
    monkeypatch.setattr(BranchAndBound, "_ask", lambda _self, block, _limit, _slice_s: asked.append(block))
    if not is_known:
        monkeypatch.setattr(branch_and_bound, "best_of_program", lambda *_, **__: Incumbent())
    proof = BranchAndBound(FEW[name], Budget(NEVER)).run()
    assert proof.is_proven
    assert proof.objective == modelled_value(FEW[name], proof.state) == least_of(name)
    assert asked == []


@pytest.mark.parametrize("name", ["a full box", "trips"])
def test_nothing_below_the_least(name):
    """A limit at the optimum leaves nothing; a cent more leaves the optimum."""
    least = least_of(name)
    for limit in (least, least + 1):
        tree = first_tree(FEW[name], limit)
        tree.run(limit)
        assert tree.is_done
        assert (tree.best is None) == (limit == least)


def test_many_places_are_left_to_the_solver():
    """More than the tables hold."""
    assert first_tree(container(MOST_PLACES, 1, [[(1, 1)]] * 3, (1, 1, 1))) is not None
    assert first_tree(container(MOST_PLACES + 1, 1, [[(1, 1)]] * 3, (1, 1, 1))) is None


@pytest.mark.parametrize("nodes", [1, 5, 20])
def test_ended_early_it_claims_what_is_sure(nodes, monkeypatch):
    """The floor of what is left is no more than the optimum, and the proof stays open."""
    problem = DENSE["a full box"]
    tree = first_tree(problem, spent=lambda work: work >= nodes * 1e-4)
    tree.run(FORBIDDEN)
    assert not tree.is_done
    assert 0 < tree.floor <= least_of("a full box")
    monkeypatch.setattr(branch_and_bound, "best_of_program", lambda *_, **__: Incumbent())
    search = BranchAndBound(problem, Budget(NEVER, work_s=nodes * 1e-4))
    worst = max(
        filter(partial(is_kept, problem), product(*map(spots, problem.rooms))), key=partial(modelled_value, problem)
    )
    search.offer(worst)
    proof = search.run()
    assert proof.bound <= least_of("a full box") <= proof.objective
    assert not proof.is_proven
    assert proof.work_s > 0


def test_published_assignment_is_proven_at_once():
    """Eight rooms on eight places: under a second of work, where the solver takes longer for the plain model."""
    data = json.loads(Path("tests/benchmarks/instances/grid-nug8.json").read_text())
    proof = BranchAndBound(problem_of(data, data["container"]), Budget(NEVER, work_s=1.0)).run()
    assert proof.is_proven
    assert proof.objective / 200 == data["best_known"]


def test_each_piece_is_a_block_of_its_own(monkeypatch):
    """Two islands: the first one has the least floor and is too small for all; the optimum lies on the other."""
    problem = container(9, 4, [[(2, 2)], [(2, 1)], [(1, 1)]], (9, 5, 2))
    islands = np.ones((4, 9), dtype=bool)
    islands[:, 2:4] = islands[3:, :2] = False
    rooms = []
    for data in problem.rooms:
        (width, depth), allowed = data.variants[0].size, data.allowed[0]
        stands = [[islands[y : y + depth, x : x + width].all() for x in range(9)] for y in range(4)]
        dear = np.where(np.arange(9) > 3, 3, 0) + np.zeros((4, 1), dtype=np.int64)
        rooms.append(replace(data, allowed=(allowed & np.array(stands),), floors=(dear,), places=(dear,)))
    problem, asked, real = replace(problem, rooms=tuple(rooms)), [], BranchAndBound._ask
    monkeypatch.setattr(branch_and_bound, "best_of_program", lambda *_, **__: Incumbent())
    monkeypatch.setattr(
        BranchAndBound, "_ask", lambda self, block, *how: asked.append(block) or real(self, block, *how)
    )
    proof = BranchAndBound(problem, Budget(NEVER)).run()
    assert proof.is_proven
    assert proof.objective == least_by_hand(problem)
    assert [block.leaves[0].last.x > 3 for block in asked] == [False, True]


def test_pieces_hang_together():
    """Places side by side are one piece, in whatever turn; the order of floors stays."""
    spots = [Spot(0, 1, 1), Spot(0, 5, 5), Spot(0, 1, 2), Spot(1, 5, 5), Spot(0, 3, 3)]
    pieces = pieces_of([Leaf(floor, 0, ((0, spot),), {}) for floor, spot in enumerate(spots)])
    assert [[leaf.floor for leaf in piece] for piece in pieces] == [[0, 2], [1, 3], [4]]


@pytest.mark.parametrize("way", ["few places", "dense", "blocks"])
def test_a_layout_that_takes_too_much_of_a_ring_is_no_optimum(way, monkeypatch):
    """Tables know no rings: what they find best may take more of a root ring than the model lets it. The proof is that of
    the model in one piece.
    """
    free = container(12, 1, [[(2, 1)], [(2, 1)], [(2, 1)]], (5, 2, 3))
    ring = RootRing(np.array([[0] * 5 + [1, 1] + [0] * 5], dtype=float), 1.0)
    rooms = tuple(replace(data, is_built=True, allowed=(zoned(data.allowed[0]),)) for data in free.rooms)
    problem = replace(free, rooms=rooms, rings=(ring,))
    if way != "few places":
        monkeypatch.setattr(PlaceTables, "of", lambda *_: None)
        monkeypatch.setattr(branch_and_bound, "is_dense", lambda *_: way == "dense")
    plain = solve(build_model(problem, whole_scope(problem)), Effort())
    proof = BranchAndBound(problem, Budget(NEVER)).run()
    assert proof.is_proven
    assert proof.objective == plain.objective > least_by_hand(replace(problem, rings=()))


def test_where_nothing_fits_the_proof_ends(monkeypatch):
    """No horizon is far enough to say so; after some of them all is looked at."""
    monkeypatch.setattr(PlaceTables, "of", lambda *_: None)
    monkeypatch.setattr(branch_and_bound, "is_dense", lambda *_: False)
    proof = BranchAndBound(container(3, 2, [[(2, 2)], [(2, 1)], [(1, 1)]], (2, 7, 4)), Budget(NEVER)).run()
    assert (proof.state, proof.is_proven) == (None, False)


def zoned(allowed):
    """Places left of, on and right of the ring, so that each piece is a zone of its own in the model."""
    kept = np.zeros_like(allowed)
    kept[:, [0, 1, 2, 5, 8, 9, 10]] = allowed[:, [0, 1, 2, 5, 8, 9, 10]]
    return kept
