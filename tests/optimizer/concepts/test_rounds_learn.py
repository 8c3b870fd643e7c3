"""What a round hands to the judge and what it learns: by the round, never by who works or how fast."""

import threading
from dataclasses import dataclass, field
from functools import cache

import pytest

from optimizer.check import Finding
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import Gathering
from optimizer.concepts.rounds import FIRST_JUDGED, FIRST_TRIES, Rounds
from optimizer.engine.explorer import Explorer, board_of
from optimizer.engine.problem import layout_of
from optimizer.engine.prover import ArrangementProof, WholeProof, unproven
from optimizer.events import to_nobody
from tests.explored import explored, states
from tests.yards import tight_thimble

CASE = Case.of(tight_thimble())
NAMES = [room.name for room in CASE.rooms]


@cache
def toured():
    """An explorer of the yard after one tour, made once it is asked for."""
    return explored(CASE.scenario, CASE.rooms, rebuilds=25)


def built():
    """Its problem."""
    return toured().board.problem


def found():
    """What it passed, best first."""
    return states(toured())


def refusal(rule="mown", rooms=(), amount=1.0):
    """A judge's word that refuses a layout."""
    return Verdict((Finding(rule, rooms, amount, "ft", "refused"),))


@dataclass
class Told:
    """Work whose answer tells when it was asked for."""

    answer: object
    begun: int
    asked: list
    now: list

    def hurry(self):
        """It was done where it was handed over."""

    def result(self):
        self.asked.append((self.begun, self.now[0]))
        return self.answer


@dataclass
class Judges:
    """Workers that refuse all by a rule, and remember what they were given and when they were asked."""

    count: int = 0
    rule: str = "mown"
    given: list = field(default_factory=list)
    asked: list = field(default_factory=list)
    grown: list = field(default_factory=list)
    polished: list = field(default_factory=list)
    now: list = field(default_factory=lambda: [0])

    def judge(self, layouts):
        self.given.append(list(layouts))
        return [Told(refusal(self.rule), self.now[0], self.asked, self.now) for _ in layouts]

    def polish(self, states, *, stop):
        self.polished.append(len(states))
        return [Told(ArrangementProof(state, 2, 1), self.now[0], [], self.now) for state in states]

    def grow(self, settled, *, stop):
        self.grown.append(len(settled))
        return [Told(one, self.now[0], [], self.now) for one in settled]


@dataclass
class Proving:
    """A proof beside the search that has found these layouts."""

    on_the_way: tuple = ()
    at_the_end: tuple = ()
    proof: WholeProof = field(default_factory=lambda: WholeProof(None, 0, 0))

    def begin(self, start, *, beside):
        pass

    def found(self):
        found, self.on_the_way = self.on_the_way, ()
        return found

    def finish(self):
        return self.at_the_end


def search_of(judges, proving=None):
    """A search of the yard with made up judges."""
    explorer = Explorer(board_of(built()))
    gathering = Gathering(CASE, built(), to_nobody)
    return Rounds(gathering, explorer, judges, proving or Proving(), 3, 6, Clock(threading.Event()))


def test_a_verdict_is_heard_in_the_next_round():
    """Neither in its own, where it may not be there yet, nor later; and in the order in which it was begun."""
    judges = Judges()
    search = search_of(judges)
    search.first(())
    for turn in range(3):
        judges.now[0] = turn
        search.run_one()
    assert {(begun, asked) for begun, asked in judges.asked} == {(0, 1), (1, 2)}
    judges.now[0] = 9
    search.finish()
    assert judges.asked[-1] == (2, 9)
    assert len(judges.asked) == sum(map(len, judges.given))


@pytest.mark.parametrize(("rule", "judged"), [("mown", [3, 3, 6, 6, 8]), ("ways_clear", [3] * 5), ("budget", [3] * 5)])
def test_more_are_judged_where_refusing_takes_no_time(rule, judged):
    """As many more as were last heard to be refused before any way was laid, up to eight; the ceiling is asked later."""
    judges = Judges(rule=rule)
    search = search_of(judges)
    search.explorer.pool = toured().pool
    for _ in judged:
        search.run_one()
    assert [len(layouts) for layouts in judges.given] == judged


@pytest.mark.parametrize("every_room", [True, False])
def test_no_more_are_judged_once_a_layout_with_every_room_holds(held, every_room, monkeypatch):
    """What a refusal teaches is then worth less than another tour; one that lacks a room changes nothing."""
    (state, verdict), judges = held, Judges()
    search = search_of(judges)
    search.explorer.pool = toured().pool
    assert search.gathering.keep(unproven(search.explorer.board, state), verdict)
    # In the tight yard nothing with every room is found.
    monkeypatch.setattr("optimizer.concepts.rounds.is_whole", lambda problem, given: every_room and given == state)
    for _ in range(4):
        search.run_one()
    assert [len(layouts) for layouts in judges.given] == [3, 3, *((3, 3) if every_room else (6, 6))]


def test_every_fourth_round_polishes_one(held):
    """A model takes as long as many layouts that are judged."""
    (state, verdict), judges = held, Judges()
    search = search_of(judges)
    assert search.gathering.keep(unproven(search.explorer.board, state), verdict)
    for _ in range(5):
        search.run_one()
    assert judges.polished == [0, 0, 0, 1, 0]


class Strict:
    """The yard's case, whose judge refuses so many layouts before it says what holds."""

    def __init__(self, refused):
        self.refused, self.seen = refused, []

    def judged(self, layout):
        self.seen.append(layout)
        return refusal() if len(self.seen) <= self.refused else CASE.judged(layout)

    def __getattr__(self, name):
        return getattr(CASE, name)


@pytest.mark.parametrize(("refused", "judged"), [(FIRST_JUDGED + 1, None), (1000, FIRST_JUDGED * FIRST_TRIES)])
def test_the_first_layouts_are_judged_until_one_holds(refused, judged):
    """Refusals of the first short tour do not leave a search without a concept; nor does it try for ever."""
    search, strict = search_of(Judges()), Strict(refused)
    search.gathering.case = strict
    search.first(())
    assert bool(search.gathering.finds) == (judged is None)
    assert len(set(strict.seen)) == len(strict.seen)
    assert judged is None or FIRST_JUDGED < len(strict.seen) <= judged


def test_as_many_are_judged_whoever_works():
    """With three processes beside as with none: the same layouts, round by round."""
    given = []
    for count in (0, 3):
        judges = Judges(count)
        search = search_of(judges)
        search.first(())
        for _ in range(2):
            search.run_one()
        given.append(judges.given)
    assert given[0] == given[1]
    assert all(given[0])


def test_what_the_proof_finds_is_judged_once():
    """On the way and at its end; what was seen before is not given again."""
    one, other, third = found()[:3]
    judges = Judges()
    search = search_of(judges, Proving(on_the_way=(one, other, one), at_the_end=(other, third)))
    search.run_one()
    assert judges.given[0] == [layout_of(built(), state) for state in (one, other)]
    search.finish()
    assert [layout_of(built(), third)] in judges.given
    assert sum(layouts.count(layout_of(built(), other)) for layouts in judges.given) == 1


@pytest.fixture(scope="module")
def held():
    """A layout that holds, with the judge's word on it."""
    verdicts = ((state, CASE.judged(layout_of(built(), state))) for state in found())
    return next((state, verdict) for state, verdict in verdicts if not verdict.findings)


def test_what_holds_teaches_what_it_costs_beyond_the_count(held):
    """Its place is dearer by what the exact score adds; its ways cost what is spent beyond its rooms; it is known."""
    state, verdict = held
    search = search_of(Judges())
    search._learn(unproven(search.explorer.board, state), verdict)
    assert search._residuals.cents == [round(100 * verdict.score - search.explorer.counted(state))]
    assert search._known.least_difference(state) == 0.0
    budget = built().budget
    spent = round(100 * verdict.measured.cost.phase(1))
    fixed = round(100 * CASE.scenario.brief.budget.ceiling) - budget.most
    assert search._purse.priced == [pytest.approx(spent - fixed - search._purse.of_rooms(state), abs=1)]
    assert search.explorer.refusals.all == []
    assert [find.proof.state for find in search.gathering.finds.values()] == [state]


def test_what_is_settled_grows_once_and_then_all_is(held):
    """First its arrangement is polished, then its rooms are let grow, each once; nothing grows before."""
    state, verdict = held
    judges = Judges()
    search = search_of(judges)
    search._picker.seen.add(state)
    search._learn(unproven(search.explorer.board, state), verdict)
    settled = []
    for _ in range(5):
        search.polish_one()
        settled.append(search.is_settled)
    assert judges.grown == [0, 0, 1, 0, 0]
    assert settled == [False, False, False, True, True]


def test_what_was_not_polished_in_time_grows_at_the_end(held):
    """Nothing is polished any more, so that what is shown is settled, whether the solver looked at it or not."""
    state, verdict = held
    judges = Judges()
    search = search_of(judges)
    search._picker.seen.add(state)
    search._learn(unproven(search.explorer.board, state), verdict)
    assert search.growing_s == pytest.approx(0.15)
    search.finish()
    assert judges.grown == [1]
    assert search.growing_s == 0


def test_a_ceiling_that_is_passed_teaches_a_price_alone():
    """What a layout costs beyond the ceiling is known, and nothing is wrong with where its rooms stand."""
    search = search_of(Judges())
    search._learn(unproven(search.explorer.board, found()[0]), refusal("budget", (), 250.0))
    assert search._purse.priced == [built().budget.most + 25_000 - search._purse.of_rooms(found()[0])]
    assert search.explorer.refusals.all == []
    assert search._residuals.cents == []
    assert search.gathering.finds == {}


def test_who_is_blamed_may_not_stand_so_again():
    """Those rooms alone, and things of the site are none; a refusal has no price and no place among what holds."""
    state = next(state for state in found() if sum(spot is not None for spot in state) > 1)
    blamed = next(room for room, spot in enumerate(state) if spot is not None)
    search = search_of(Judges())
    search._learn(unproven(search.explorer.board, state), refusal("mown", (NAMES[blamed], "house")))
    ((member,),) = search.explorer.refusals.all
    assert (member.room, member.x, member.y) == (blamed, state[blamed].x, state[blamed].y)
    assert search._purse.priced == []
    assert search._known.least_difference(state) == 1.0


def test_places_are_learned_once_enough_was_judged():
    """Six layouts, no fewer: then the board has estimates besides its doubts."""
    search, plain = search_of(Judges()), board_of(built())
    for count in range(1, 7):
        search._residuals.learn(found()[count % len(found())], 1000.0 * count * count)
        search.polish_one()
        board = search.explorer.board
        assert any(board.estimate(state) != plain.estimate(state) for state in found()) == (count == 6)
