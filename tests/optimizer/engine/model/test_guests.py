"""What guests need, in the model, the explorer and the check alike."""

from dataclasses import replace

import pytest

from optimizer.brief import Guests
from optimizer.catalogue import Item, asked_by, book_for, held, holds
from optimizer.check import check_layout
from optimizer.engine.explorer import Limits
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.problem import build_problem, layout_of
from optimizer.engine.prover.solve import Effort, solve
from optimizer.layout import placed_of
from tests.yards import TWELVE_ON_SOFAS, plain_rooms, plain_yard, seating

SOFAS = seating("table", "gathering", 14, 12, *TWELVE_ON_SOFAS)
BENCH = replace(seating("nook", "nook", 8, 7, Item("bench", 1, 1, 6, 1.5, seats=3)), required=False)


def yard(party):
    plain = plain_yard(ceiling=None)
    return replace(plain, brief=replace(plain.brief, guests=Guests(4, party)))


def problem_of(party, **how):
    return build_problem(yard(party), plain_rooms(SOFAS, BENCH), book_for("USD"), **how)


@pytest.mark.parametrize("party", [12, 16, 20])
def test_the_whole_model_seats_the_party(party):
    """Nine, 12 and 14 seats are asked: the sofas, and for 20 people the bench too. The check agrees."""
    problem = problem_of(party)
    answer = solve(build_model(problem, whole_scope(problem)), Effort(wall_s=60.0))
    assert answer.state is not None
    layout = layout_of(problem, answer.state)
    rooms = {room.name: room for room in plain_rooms(SOFAS, BENCH)}
    there = held(holds(rooms[p.room], c) for p in layout.placements if (c := rooms[p.room].choice(p.choice)))
    assert there.seats >= asked_by(Guests(4, party)).seats
    found = check_layout(yard(party), placed_of(tuple(rooms.values()), layout))
    assert "party_seats" not in {finding.rule for finding in found}
    assert Limits.of(problem).are_kept(answer.state)


def test_a_wish_list_that_is_too_small_asks_nothing():
    """15 seats at most, and 17 are asked for 24: no need, and no finding either."""
    asked = [[a for a in problem_of(party).amounts if a.rule == "party_seats"] for party in (20, 24)]
    assert [len(found) for found in asked] == [2, 0]


def test_a_room_still_away_is_trusted_with_its_most():
    """For 20 people: the plain table takes what the bench could not make good; with the bench away it may come yet."""
    problem = problem_of(20)
    limits = Limits.of(problem)
    names = [room.name for room in problem.rooms]
    nowhere = tuple(None for _ in names)
    table, nook = names.index("table"), names.index("nook")
    labels = [problem.context.rooms[table].choices[v.choice].label for v in problem.rooms[table].variants]
    fitting, _ = limits.left_for(nowhere, table)
    assert {labels[v] for v in fitting} == {"laid"}
    assert not limits.left_for(nowhere, nook)[1]
    assert not limits.are_kept(nowhere)
