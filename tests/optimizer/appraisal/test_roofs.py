"""Roofs that stand already: when one is used, what it loses while it is empty, and what engine and score say of it."""

from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from optimizer.appraisal import empty_roofs, empty_roofs_loss
from optimizer.catalogue import book_for, cover_price, rates
from optimizer.concepts.roof_cautions import roof_cautions
from optimizer.engine.problem import Spot, build_problem, layout_of, modelled_losses
from optimizer.engine.terms import roofs
from optimizer.layout import Layout, placed_of
from optimizer.site import Structure
from tests.held import losses_in_model
from tests.yards import on_site, plain_rooms, plain_yard, sized, stand

ROOF = Structure("old roof", ((20, 20), (36, 20), (36, 34), (20, 34)), may_hold=("table", "nook"))
"""16 x 14 ft: the table of 14 x 12 ft and the nook of 8 x 7 ft do not fit under it together."""
HALL = Structure("hall", ((14, 16), (44, 16), (44, 36), (14, 36)), may_hold=("table", "nook"))
"""30 x 20 ft, with room for both."""


def yard(*structures):
    """The plain yard with these roofs, and nothing else in the way."""
    return on_site(plain_yard(ceiling=None), structures=structures, trees=())


def empty(*placements, roof=ROOF, rooms=None):
    """Roofs of a layout that nothing uses."""
    return empty_roofs(yard(roof).site, placed_of(rooms or plain_rooms(), Layout(placements)))


@pytest.mark.parametrize(
    ("place", "is_used"),
    [
        (stand("table", 21, 21, 14, 12), True),
        (stand("table", 22, 20, 14, 12), True),  # flush in a corner
        (stand("table", 24, 20, 14, 12), True),  # 12 of 14 ft under it: 86 %
        (stand("table", 24.2, 20, 14, 12), False),  # 11.8 of 14 ft: 84 %
        (stand("table", 18, 18, 20, 18), True),  # all of the roof, whatever lies beside it
        (stand("nook", 28, 27, 8, 7), True),
        (stand("nook", 30, 27, 8, 7), False),  # 75 %
        (stand("fire", 24, 22, 8, 8), False),  # not allowed there
    ],
)
def test_used_at_85_percent_of_the_smaller(place, is_used):
    """Layout rule 27."""
    assert empty(place) == (() if is_used else ("old roof",))


def test_a_room_without_seats_does_not_use_it():
    table = plain_rooms()[0]
    bare = replace(table, choices=(replace(table.choices[0], seats=0),))
    assert empty(stand("table", 21, 21, 14, 12), rooms=plain_rooms(bare)) == ("old roof",)


def test_any_outline_is_measured_as_it_is():
    """Under the half of a square that a diagonal leaves, 98 sq ft: a nook of 56 in its corner, or across the diagonal."""
    half = replace(ROOF, outline=((20, 20), (34, 20), (20, 34)))
    assert empty(stand("nook", 20, 20, 8, 7), roof=half) == ()
    assert empty(stand("nook", 24, 25, 8, 7), roof=half) == ("old roof",)


def test_what_an_empty_roof_loses():
    """0.4 of 55 USD a sq ft, on 224 sq ft; of the Australian book 82; nothing where no wish may use it."""
    site, rooms = yard(ROOF).site, plain_rooms()
    assert empty_roofs_loss(site, rooms, ("old roof",), book_for("USD")) == pytest.approx(0.4 * 55 * 224)
    assert empty_roofs_loss(site, rooms, ("old roof",), book_for("AUD")) == pytest.approx(0.4 * 82 * 224)
    assert empty_roofs_loss(site, rooms, (), book_for("USD")) == 0
    assert empty_roofs_loss(site, (sized("den", "nook", 8, 7),), ("old roof",), book_for("USD")) == 0
    assert (rates().empty_roof, cover_price(book_for("USD"))) == (0.4, 55)


def problem_of(roof, *, required=True):
    """Table and nook alone, in a yard with the roof."""
    table, _, _, nook = plain_rooms()
    return build_problem(yard(roof), (replace(table, required=required), nook), book_for("USD"))


def spots(problem, room):
    """Every seventh place of a room, and that it is left out."""
    for v, allowed in enumerate(problem.rooms[room].allowed):
        for y, x in np.argwhere(allowed)[::7].tolist():
            yield Spot(v, x, y)
    if not problem.rooms[room].required:
        yield None


def counted(problem, state):
    """What the engine counts for empty roofs in a state, in money."""
    context, total = problem.context, 0
    for data, room, spot in zip(problem.rooms, context.rooms, state, strict=True):
        if spot is None:
            total += roofs.TERM.absent_cents(context, room)
        else:
            cents = roofs.TERM.cents(context, room, data.variants[spot.variant], data.allowed[spot.variant])
            total += 0 if cents is None else int(cents[spot.y, spot.x])
    return total / 100


@pytest.mark.parametrize("required", [True, False])
def test_engine_and_score_agree_of_every_two_places(required):
    """Rooms that do not overlap, or are left out: what the places lose and give back together is the exact loss."""
    problem, seen = problem_of(ROOF, required=required), set()
    scenario, rooms = problem.context.scenario, problem.context.rooms
    for state in list(product(spots(problem, 0), spots(problem, 1)))[::11]:
        layout = layout_of(problem, state)
        one, other = (layout.of(name) for name in ("table", "nook"))
        if (
            one
            and other
            and one.x_ft < other.right_ft
            and other.x_ft < one.right_ft
            and (one.y_ft < other.top_ft and other.y_ft < one.top_ft)
        ):
            continue
        names = empty_roofs(scenario.site, placed_of(rooms, layout))
        assert counted(problem, state) == pytest.approx(empty_roofs_loss(scenario.site, rooms, names, book_for("USD")))
        seen.add((names, one is None))
    assert {names for names, _ in seen} == {(), ("old roof",)}
    assert (required and len(seen) == 2) or len(seen) > 2


def test_the_model_counts_the_same():
    """With the table out of the way, under the roof, and left out while the nook uses it."""
    problem = problem_of(ROOF, required=False)
    for state in [(Spot(0, 40, 20), Spot(0, 4, 20)), (Spot(0, 21, 21), None), (None, Spot(0, 22, 22)), (None, None)]:
        expected = {name: cents for name, cents in modelled_losses(problem, state).items() if cents}
        assert min(expected.values()) >= 0
        found = losses_in_model(problem, state)
        assert {name: cents for name, cents in found.items() if cents} == expected


def test_where_two_could_share_a_roof_the_model_says_nothing():
    """The explorer goes by the first of them; giving back for both would pay twice."""
    problem = problem_of(HALL)
    context, (table, nook) = problem.context, problem.context.rooms
    allowed = problem.rooms[0].allowed[0]
    assert roofs.TERM.cents(context, table, problem.rooms[0].variants[0], allowed) is None
    assert roofs.SHARED.cents(context, nook, problem.rooms[1].variants[0], allowed) is None
    cents = roofs.SHARED.cents(context, table, problem.rooms[0].variants[0], allowed)
    assert set(np.unique(cents)) == {0, round(100 * 0.4 * 55 * 600)}
    left_to_explorer = problem.rooms[0].places[0] - problem.rooms[0].floors[0]
    assert (left_to_explorer[allowed] >= cents[allowed]).all()


def told(*placements, roof=ROOF, rooms=None):
    """What the cautions say of the roof."""
    return list(roof_cautions(yard(roof).site, placed_of(rooms or plain_rooms(), Layout(placements))))


def test_an_empty_roof_has_a_sentence():
    """Why: left out, elsewhere, only in part, or no wish that may use it; none where it is used."""
    assert told(stand("table", 21, 21, 14, 12)) == []
    (left_out,) = told()
    assert left_out == "The old roof stays empty: this concept does without the table and nook."
    (elsewhere,) = told(stand("nook", 2, 30, 8, 7))
    assert elsewhere.startswith("The old roof stays empty: the nook lies ")
    (partly,) = told(stand("table", 28, 20, 14, 12))
    assert partly == "The old roof stays empty: the table lies under it only in part."
    (nobody,) = told(roof=replace(ROOF, may_hold=()))
    assert nobody == "The old roof stays empty: no room of the wish list with seats may stand under it."
