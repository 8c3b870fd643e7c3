"""Which edges may move out to which lines, and which move together."""

from dataclasses import replace

import pytest
import shapely
from shapely import box

from optimizer.brief import Hold
from optimizer.catalogue import Item
from optimizer.concepts.case import Case
from optimizer.concepts.moves import Move, Moves
from optimizer.layout import Layout
from optimizer.planting import Bed
from optimizer.planting.strips import SCREEN_FT
from tests.yards import PLAIN_SITE, holding, on_site, plain_yard, sized, stand

YARD = plain_yard(ceiling=None)


def moves(*rooms, share=1.0, trees=(), beds=()):
    """Moves of rooms that may grow by a share, in the plain yard: its house is at x 10 to 50, up to y = 12."""
    may = tuple(replace(room, grow=share) for room in rooms)
    return Moves.of(Case(on_site(YARD, trees=trees), may, Case.of(YARD).book), tuple(beds))


TABLE, NOOK, LAWN = sized("table", "gathering", 14, 12), sized("nook", "nook", 8, 7), sized("green", "lawn", 10, 10)
UPPER = stand("table", 24, 16, 14, 12)


def allowed(found, layout, *, side=None):
    """Moves that may be made, to a side; the nook stands there for the others to grow to."""
    told = {move for move in found.all(layout) if found.made(layout, move) and side in (None, move.side)}
    return told if side is None else {move for move in told if move.rooms != ("nook",)}


def test_lines_of_house_landing_and_structure():
    """A room 3 ft from the house, off its corner and below a landing's side grows to each of them, 5 ft at a corner."""
    nook = stand("nook", 13, 15, 8, 7)
    found = allowed(moves(NOOK), Layout((nook,)))
    assert found == {Move(("nook",), "-y", 12), Move(("nook",), "-x", 10), Move(("nook",), "+x", 22.5)}


@pytest.mark.parametrize(("x_ft", "y_ft", "reached"), [
    (13, 16, True), (14.5, 16, True), (15.5, 16, False),  # 3, 4.5 and 5.5 ft to level with the house's corner
    (14.5, 25, False),  # farther along than a glance
])  # fmt: skip
def test_three_feet_or_five_to_a_corner(x_ft, y_ft, reached):
    """Layout rule 29: to a corner of the house a room may grow by 5 ft."""
    layout = Layout((stand("nook", x_ft, y_ft, 8, 7),))
    assert (Move(("nook",), "-x", 10) in allowed(moves(NOOK), layout)) == reached


@pytest.mark.parametrize(("gap_ft", "reached"), [(3.0, True), (3.5, False)])
def test_three_feet_to_a_wall(gap_ft, reached):
    """To the wall that it looks at, which is no corner to come level with."""
    layout = Layout((stand("nook", 30, 12 + gap_ft, 8, 7),))
    assert (Move(("nook",), "-y", 12) in allowed(moves(NOOK), layout)) == reached


@pytest.mark.parametrize(("gap_ft", "reached"), [(3.0, True), (3.5, False)])
def test_three_feet_to_a_neighbour(gap_ft, reached):
    """To the edge that looks at it, and to one that is level with it."""
    layout = Layout((UPPER, stand("nook", 38 + gap_ft, 16 + gap_ft, 8, 7)))
    found = allowed(moves(TABLE, NOOK), layout)
    assert (Move(("nook",), "-x", 38) in found) == reached
    assert (Move(("nook",), "-y", 16) in found) == reached


@pytest.mark.parametrize(("y_ft", "reached"), [(40, True), (40.5, False)])
def test_only_what_the_eye_holds_together(y_ft, reached):
    """A room that ends 12 ft farther along is a neighbour; layout rules, common practice, no source."""
    layout = Layout((UPPER, stand("nook", 40, y_ft, 8, 7)))
    assert (Move(("table",), "+x", 40) in moves(TABLE, NOOK).all(layout)) == reached


@pytest.mark.parametrize(("share", "reached"), [(0.17, True), (0.16, False), (0.0, False)])
def test_the_share_of_a_room(share, reached):
    """2 ft along the side of 12 are a sixth of 14 x 12 ft."""
    layout = Layout((UPPER, stand("nook", 41, 30, 8, 7)))
    found = moves(TABLE, NOOK, share=share)
    assert (Move(("table",), "+y", 30) in allowed(found, layout)) == reached


def test_the_share_is_of_what_it_was():
    """A second move adds to the first: it is the choice's own size that may not be passed by more than its share."""
    layout = Layout((UPPER, stand("nook", 41, 30, 8, 7)))
    found = moves(TABLE, NOOK, share=0.25)
    once = found.made(layout, Move(("table",), "+y", 30))
    assert once.of("table").base == UPPER
    assert Move(("table",), "+x", 41) not in allowed(found, once)
    assert Move(("table",), "+x", 41) in allowed(moves(TABLE, NOOK, share=0.42), once)


TOUCHING = Layout((UPPER, stand("green", 38, 18, 10, 10), stand("nook", 50, 30, 8, 7)))


def test_flush_edges_of_rooms_that_touch_move_together():
    """Table and lawn end at y = 28 side by side: both move out to 30, or neither."""
    found = moves(TABLE, LAWN, NOOK)
    assert allowed(found, TOUCHING, side="+y") == {Move(("table", "green"), "+y", 30)}
    after = found.made(TOUCHING, Move(("table", "green"), "+y", 30))
    assert [after.of(name).top_ft for name in ("table", "green", "nook")] == [30, 30, 37]
    assert found.made(TOUCHING, Move(("table",), "+y", 30)) is None
    assert found.made(TOUCHING, Move(("green",), "+y", 30)) is None


@pytest.mark.parametrize("name", ["table", "green"])
def test_where_one_of_them_may_not_none_does(name):
    """One that has no share left holds the other back."""
    rooms = [replace(room, grow=0.0 if room.name == name else 1.0) for room in (TABLE, LAWN, NOOK)]
    found = Moves(PLAIN_SITE, {room.name: room for room in rooms}, shapely.Polygon())
    assert allowed(found, TOUCHING, side="+y") == set()


def test_edges_that_only_lie_on_one_line_move_alone():
    """Rooms that do not touch are built one by one."""
    layout = Layout((UPPER, stand("green", 41, 18, 10, 10), stand("nook", 50, 30, 8, 7)))
    assert allowed(moves(TABLE, LAWN, NOOK), layout, side="+y") == {
        Move(("table",), "+y", 30), Move(("green",), "+y", 30)
    }  # fmt: skip


@pytest.mark.parametrize(("hold", "moves_out"), [
    (Hold("table", at_ft=(24, 16)), False), (Hold("table", front="+y"), True), (Hold("nook", at_ft=(41, 30)), True),
])  # fmt: skip
def test_what_a_person_put_somewhere_stays_as_it_was_put(hold, moves_out):
    """On every side, so that a mirrored yard has the same; other holds leave it to the check."""
    case = Case(holding(YARD, hold), (replace(TABLE, grow=1.0), NOOK), Case.of(YARD).book)
    layout = Layout((UPPER, stand("nook", 41, 30, 8, 7)))
    assert (Moves.of(case, ()).made(layout, Move(("table",), "+y", 30)) is not None) == moves_out


def test_never_into_a_root_ring():
    """The oak at (6, 34) has roots as far out as 15 times its trunk of 0.8 ft: 12 ft."""
    layout = Layout((stand("green", 20, 26, 10, 10), stand("nook", 8, 14, 8, 7)))
    ask, oak = Move(("green",), "-x", 17), PLAIN_SITE.trees
    assert moves(LAWN, NOOK).made(layout, ask)
    assert moves(LAWN, NOOK, trees=oak).made(layout, ask) is None
    assert moves(LAWN, NOOK, trees=oak).made(layout, Move(("green",), "-x", 18.5))


def test_never_into_the_planting_along_the_boundary():
    """A bed along the rear boundary at y = 40 holds a room back; one away from it does not."""
    layout = Layout((stand("green", 25, 22, 10, 10), stand("nook", 38, 30, 8, 7)))
    ask = Move(("green",), "+y", 35)
    at_rear, inside = Bed(box(20, 34, 40, 40), "as a screen"), Bed(box(20, 32, 40, 34), "between rooms")
    assert moves(LAWN, NOOK).made(layout, ask)
    assert moves(LAWN, NOOK, beds=(inside,)).made(layout, ask)
    assert moves(LAWN, NOOK, beds=(at_rear,)).made(layout, ask) is None


def test_an_edge_with_something_built_along_it_stays():
    """A seat wall along the front keeps the front where it is, which way ever that looks."""
    wall = Item("seat wall", 2.0, 10.5, 10.0, 1.5)
    walled = replace(TABLE, choices=(replace(TABLE.choices[0], furniture=(wall,)),))
    layout = Layout((UPPER, stand("nook", 41, 30, 8, 7)))
    turned = Layout((replace(UPPER, front="-y"), stand("nook", 41, 30, 8, 7)))
    assert allowed(moves(walled, NOOK), layout, side="+y") == set()
    assert Move(("table",), "+y", 30) in allowed(moves(walled, NOOK), turned, side="+y")


def test_a_bed_that_only_touches_the_strip_along_the_boundary():
    """It leaves a line beside the areas of the root rings, and a move that moves nothing asks of no ground at all."""
    kept = moves(NOOK, trees=PLAIN_SITE.trees, beds=(Bed(box(SCREEN_FT, 20, 20, 30), "as a screen"),))
    layout = Layout((stand("nook", 30, 30, 8, 7),))
    assert kept.made(layout, Move(("nook",), "+x", 38)).base == layout
