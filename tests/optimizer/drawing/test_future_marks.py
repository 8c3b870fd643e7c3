"""How what may come later is drawn: the swept band of the widest way with its words, and outlines in the held ground."""

from dataclasses import replace

from shapely import LineString, Polygon

from optimizer.appraisal import outlooks
from optimizer.catalogue import book_for
from optimizer.concepts.case import Case
from optimizer.drawing.concept_plan import draw_concept
from optimizer.drawing.future_marks import LATER_ROLES, future_legend, future_marks
from optimizer.drawing.room_marks import floor_marks
from optimizer.layout import Layout
from tests.optimizer.derived.futures.yard import HELD, derived, yard

BOOK = book_for("USD")


def shown(held=HELD):
    return outlooks(derived(yard(), held=held), BOOK)


def drawn(audience):
    case, layout = Case.of(yard()), Layout((HELD,))
    option = replace(case.described(layout, case.in_full(layout)), futures=shown())
    return draw_concept(case.scenario, option, audience=audience)


def test_the_widest_way_is_a_band_along_its_middle():
    """The swim spa's 9.5 ft; its middle line lies in it, and what is drawn is no wider where it runs straight."""
    marks = list(future_marks(shown()))
    (band,) = [mark for mark in marks if mark.role == "later_way"]
    (line,) = [mark for mark in marks if mark.role == "later_middle"]
    ground = Polygon(band.rings[0])
    assert ground.buffer(0.1).covers(
        LineString(line.points).intersection(Polygon([(0, 0), (90, 0), (90, 110), (0, 110)]))
    )
    straight = ground.intersection(LineString([(0, 4), (90, 4)]))
    assert 9.4 < straight.length < 12


def test_every_future_that_fits_is_outlined():
    """Ground and water of three; one that misses a foot of a setback is left out."""
    assert sum(mark.role == "later_ground" for mark in future_marks(shown())) == 3
    assert sum(mark.role == "later_water" for mark in future_marks(shown(replace(HELD, x_ft=3.0)))) == 2


def test_the_legend_gives_the_width():
    """In the plan's units."""
    assert future_legend(shown(), "ft")["later_way"] == "way in later, 9'-6\" wide"
    assert future_legend(shown(), "m")["later_way"] == "way in later, 2.90 m wide"


def test_an_owners_plan_is_quiet():
    """The designer's has band, outlines and words; the owner's none of them."""
    designer, owner = drawn("designer"), drawn("owner")
    assert {mark.role for mark in designer.marks} & LATER_ROLES == LATER_ROLES
    assert not {mark.role for mark in owner.marks} & LATER_ROLES
    words = "way in later, 9'-6\" wide"
    assert [any(text.text == words for text in drawing.texts) for drawing in (designer, owner)] == [True, False]


def test_held_ground_shows_its_use_until_then():
    """Lawn as ever; gravel and the nook's ground have floors of their own."""
    for use, role in (("lawn", "room.reserve"), ("gravel court", "room.reserve.gravel court")):
        found = derived(yard(("phase: 2,", f"phase: 2, interim: {use},")))
        assert [mark.role for mark in floor_marks(found.placed)] == [role]
