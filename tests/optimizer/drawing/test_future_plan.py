"""One future of held ground on its own plan: its fit, its way in, what misses and what bars, and for whom what is drawn."""

from dataclasses import replace
from functools import cache

from shapely import LineString, Polygon

from optimizer.concepts.case import Case
from optimizer.concepts.future_words import DIG_CAUTION, futures_by_name
from optimizer.drawing.future_plan import draw_future
from optimizer.export import plan_svg
from optimizer.layout import Layout, Placement
from tests.optimizer.derived.futures.yard import HELD, yard

DRIVE = "{name: drive, at: [80, 0], width: 12}"
KITCHEN = Placement("cooker", "plain", 70.0, 35.0, 20.0, 10.0, "+y")


@cache
def advised(changes, layout):
    """The concept of a layout with all that is said of it."""
    scenario = yard(*changes)
    case = Case.of(scenario)
    return scenario, case.advised(case.described(layout, case.in_full(layout)))


def drawn(name, *changes, held=HELD, others=(), audience="designer"):
    scenario, option = advised(changes, Layout((held, *others)))
    outlook = futures_by_name(option)[name]
    return outlook, draw_future(scenario, option, outlook, audience=audience)


def marks(drawing, role):
    return [mark for mark in drawing.marks if mark.role == role]


def words(drawing):
    return " ".join(text.text for text in drawing.texts)


def test_a_future_that_fits_is_drawn_with_its_way_in():
    """Basin, deck, pad and barrier as they were fitted, and the swept ground of its own machine, 8 ft wide."""
    outlook, drawing = drawn("pool")
    assert [mark.rings for mark in marks(drawing, "future_water")] == [(outlook.fit.water,)]
    assert [mark.rings for mark in marks(drawing, "future_ground")] == [(outlook.fit.ground,)]
    assert [mark.rings for mark in marks(drawing, "future_pad")] == [(outlook.fit.pad,)]
    assert [mark.points for mark in marks(drawing, "future_barrier")] == [*outlook.fit.barrier]
    (way,) = marks(drawing, "future_way")
    assert way.rings == outlook.access.swept[:1]
    assert not marks(drawing, "barring")
    assert "its way in, 8'-0\" wide" in words(drawing)
    assert "A later pool on the water later stays possible: by digger from the drive." in words(drawing)


def test_each_future_has_its_own_way():
    """The tub's is 4.5 ft wide, and nothing of a pad or barrier is drawn for it."""
    _, drawing = drawn("hot tub")
    assert "its way in, 4'-6\" wide" in words(drawing)
    assert "by cart with the tub on edge from the drive" in words(drawing)
    assert not marks(drawing, "future_pad")
    assert not marks(drawing, "future_barrier")


def test_a_designer_sees_the_distances_that_are_kept_an_owner_those_that_are_missed():
    """Held ground at x = 3: the water lies 7 ft off the west side, which asks for 8."""
    near = replace(HELD, x_ft=3.0)
    _, owners = drawn("pool", held=near, audience="owner")
    _, designers = drawn("pool", held=near)
    (missed,) = owners.dimensions
    assert missed.text == "7'-0\" of 8'-0\""
    assert LineString((missed.start, missed.end)).length == 7
    assert [mark.points for mark in marks(owners, "missed")] == [(missed.start, missed.end)]
    assert len(designers.dimensions) > 1
    (kept_owner,) = (drawn("pool", audience="owner")[1],)
    assert not kept_owner.dimensions


def test_what_bars_a_way_is_drawn_over_everything():
    """A kitchen across the passage: its ground is marked, and where the digger comes no farther."""
    outlook, drawing = drawn("pool", others=(KITCHEN,))
    assert not outlook.access.is_found
    grounds = [Polygon(mark.rings[0]) for mark in marks(drawing, "barring")]
    assert any(ground.equals(Polygon([(70, 35), (90, 35), (90, 45), (70, 45)])) for ground in grounds)
    assert drawing.marks.index(marks(drawing, "barring")[0]) > drawing.marks.index(marks(drawing, "building")[0])
    (stop,) = marks(drawing, "no_farther")
    assert 25 < stop.centre[1] < 55
    assert "digger and small digger: no farther" in words(drawing)
    assert "stays possible" not in words(drawing)


def test_a_gate_too_narrow_is_drawn_where_it_is():
    """The drive, 6 ft wide at (80, 0), bars the swim spa."""
    _, drawing = drawn("swim spa", (DRIVE, DRIVE.replace("12", "6")))
    (gate,) = (Polygon(mark.rings[0]).bounds for mark in marks(drawing, "barring"))
    assert (gate[0], gate[2]) == (77, 83)
    assert abs(gate[1]) < 0.2
    assert "bars the way" in words(drawing)
    assert "no way in for the lift truck with the swim spa, 9'-6\" wide" in words(drawing)


def test_every_plan_says_what_comes_before_digging():
    """Lines in the ground are marked first; codes and licensed trades decide."""
    for audience in ("owner", "designer"):
        _, drawing = drawn("hot tub", audience=audience)
        assert DIG_CAUTION in words(drawing)
        assert plan_svg(drawing).startswith("<svg")


def test_two_rooms_held_for_the_same_have_names_of_their_own():
    """With its room, so that each can be asked for."""
    outlook, _ = drawn("hot tub")
    option = type("Option", (), {"futures": (outlook, replace(outlook, room="the other"))})
    assert [*futures_by_name(option)] == ["hot tub, water later", "hot tub, the other"]
