"""The search in rounds: it repeats whatever workers beside it, learns from refusals, and more rounds never give worse."""

import threading
from functools import cache

import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import Gathering
from optimizer.concepts.rounds import Rounds
from optimizer.concepts.whole import Whole
from optimizer.concepts.workers import Workers
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.explorer.pool import Pool
from optimizer.engine.problem import build_problem
from optimizer.engine.prover import Budget
from optimizer.events import to_nobody
from tests.yards import tight_thimble

CASE = Case.of(tight_thimble())


@cache
def built():
    """The problem of the yard, made once it is asked for."""
    return build_problem(CASE.scenario, CASE.rooms, CASE.book)


def searched(rounds, *, processes=0, seed=3):
    """A search of so many rounds, all of it taken in."""
    with Workers(CASE, processes=processes) as workers:
        workers.read(built())
        explorer = Explorer(board_of(built()))
        never = threading.Event()
        whole = Whole(built(), Budget(never, work_s=0.5, seed=seed))
        search = Rounds(Gathering(CASE, built(), to_nobody), explorer, workers, whole, seed, 6, Clock(never))
        search.first(())
        for _ in range(rounds):
            search.run_one()
        search.finish()
        return search


@pytest.fixture(scope="module")
def few():
    """Three rounds in this process."""
    return searched(3)


def test_a_search_repeats_whoever_workers(few):
    """In this process, and in one beside it: the same layouts at the same scores, in the same order."""
    beside = searched(3, processes=1)
    found = [[(o.layout, o.score) for o in search.gathering.options] for search in (few, beside)]
    assert found[0] == found[1] != []
    assert few.gathering.refused == beside.gathering.refused


def test_where_a_tour_finds_nothing_the_next_sets_nothing_aside(monkeypatch):
    """And still so much where it finds something."""
    with Workers(CASE, processes=0) as workers:
        explorer, never = Explorer(board_of(built())), threading.Event()
        whole = Whole(built(), Budget(never, work_s=0.5, seed=3))
        search = Rounds(Gathering(CASE, built(), to_nobody), explorer, workers, whole, 3, 6, Clock(never))
    search._run(Tour(10, 1))
    assert search._purse.set_aside(0) > 0
    monkeypatch.setattr(explorer, "pool", Pool())
    monkeypatch.setattr(explorer, "run", lambda *_, **__: None)
    search._run(Tour(10, 1))
    assert search._purse.set_aside(0) == 0


def test_what_is_shown_in_the_end_was_let_grow():
    """Once a search is settled, every concept that it shows was polished and grown, and none lost by it."""
    with Workers(CASE, processes=0) as workers:
        workers.read(built())
        never = threading.Event()
        whole = Whole(built(), Budget(never, work_s=0.5, seed=3))
        explorer = Explorer(board_of(built()))
        search = Rounds(Gathering(CASE, built(), to_nobody), explorer, workers, whole, 3, 3, Clock(never))
        search.first(())
        search.run_one()
        while not search.is_settled:
            search.polish_one()
    shown = search.gathering.shown(3)
    assert shown
    for option in shown:
        assert search.gathering.finds[option.layout.base].has_grown
        assert option.score <= CASE.judged(option.layout.base).score + 0.01
        assert CASE.judged(option.layout).score == pytest.approx(option.score)


def test_more_rounds_never_give_worse(few):
    """Twice as many rounds have the same layouts and others, and their best is at least as good."""
    more = searched(6)
    scores = [min(option.score for option in search.gathering.options) for search in (few, more)]
    assert scores[1] <= scores[0]
    assert len(more.gathering.finds) > len(few.gathering.finds)


def test_it_learns_from_what_was_judged(few):
    """Refusals stand as no-goods, and places have estimates: what is found later is not near to what was refused."""
    explorer = few.explorer
    assert len(explorer.refusals.all) > 0
    assert any(explorer.board.estimate(state) for _, state in explorer.pool.ranked())
    held = [find.proof.state for find in few.gathering.finds.values()]
    assert held


def test_a_stopped_search_keeps_what_it_has():
    """Stopped before it began: the first layouts are judged until one holds, and nothing is left open."""
    with Workers(CASE, processes=0) as workers:
        stop = threading.Event()
        stop.set()
        whole = Whole(built(), Budget(stop, seed=3))
        search = Rounds(
            Gathering(CASE, built(), to_nobody), Explorer(board_of(built())), workers, whole, 3, 6, Clock(stop)
        )
        search.first(())
        search.finish()
    assert len(search.gathering.finds) <= 1
    assert search.turn == 0
