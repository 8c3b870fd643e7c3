"""Dives: which programs are tried when, and that one finds a layout beyond the horizon without harm to the proof."""

import threading

import pytest

from optimizer.engine.explorer import board_of
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover import BranchAndBound, Budget, branch_and_bound, dives, horizon
from optimizer.engine.prover.blocks import SIDES
from optimizer.engine.prover.dives import EVERY, PROGRAMS, WIDE, Dives, block_of
from optimizer.engine.prover.place_tree import PlaceTables
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.programs import Program, programs
from tests.tiny import NAMES, every_value, tiny

NEVER = threading.Event()


def test_each_program_is_tried_twice():
    """Not before so many blocks were asked; a block of each first, and all of each then."""
    opened, tried = [Program(n, (n,)) for n in range(PROGRAMS + 2)], Dives()
    assert tried.next_in(opened, EVERY - 1) is None
    found = [tried.next_in(opened, EVERY * (n + 1)) for n in range(2 * PROGRAMS + 1)]
    assert found[:-1] == [(program, side) for side in (SIDES[0], WIDE) for program in opened[:PROGRAMS]]
    assert found[-1] is None


def test_programs_that_are_not_open_wait():
    """Of one program both are tried before the next is open; that one has its turn later."""
    first, second = Program(1, (0,)), Program(2, (1,))
    tried = Dives()
    assert [tried.next_in([first], 10**6) for _ in range(3)] == [(first, SIDES[0]), (first, WIDE), None]
    assert tried.next_in([first, second], 10**6) == (second, SIDES[0])


@pytest.mark.parametrize("side", [1, WIDE])
def test_the_block_of_the_least_floor(side):
    """The leaf of the least floor is in it; with no place below the limit there is no block."""
    problem = tiny("trips")
    modelled = modelled_problem(problem)
    program = next(programs(board_of(modelled)))
    places = Places(modelled, program)
    leaves = places.leaves(10**9)
    block = block_of(problem, places, 10**9, side)
    assert leaves[0].last in [leaf.last for leaf in block.leaves]
    assert len(block.leaves) > 1 or side == 1
    assert block_of(problem, places, program.floor, side) is None


@pytest.fixture
def is_farther(monkeypatch):
    """For each block that a proof asks, whether for more than lies within its horizon; dives come as often as may be."""
    farther, real = [], BranchAndBound._ask

    def ask(self, block, limit, slice_s):
        farther.append(limit > self._limit)
        return real(self, block, limit, slice_s)

    monkeypatch.setattr(dives, "EVERY", 1)
    monkeypatch.setattr(BranchAndBound, "_ask", ask)
    monkeypatch.setattr(PlaceTables, "of", lambda *_: None)
    monkeypatch.setattr(branch_and_bound, "is_dense", lambda *_: False)
    return farther


@pytest.mark.parametrize("name", NAMES)
def test_a_dive_finds_what_lies_beyond_the_horizon(name, is_farther):
    """Tried before the first block is asked, it asks farther than the horizon, and the proof ends at the optimum."""
    proof = BranchAndBound(tiny(name), Budget(NEVER)).run()
    assert any(is_farther)
    assert (proof.objective, proof.bound) == (min(every_value(name).values()),) * 2


@pytest.mark.parametrize("near", [0.0, 10.0**9])
def test_near_the_horizon_nothing_is_looked_for_beyond(near, is_farther, monkeypatch):
    """What counts as near decides whether a known layout keeps the proof from asking for more than lies within."""
    monkeypatch.setattr(horizon, "NEAR", near)
    values = every_value("wishes")
    search = BranchAndBound(tiny("wishes"), Budget(NEVER))
    search.offer(max(values, key=values.__getitem__))
    assert search.run().is_proven
    assert any(is_farther) == (near == 0.0)
