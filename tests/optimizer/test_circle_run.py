"""One real search in a yard whose fire is a circle: what it shows, writes, draws, finds again and answers."""

import json
import threading
from math import hypot, pi

import pytest
import shapely
from shapely import LineString, Polygon, box

from optimizer.catalogue import book_for, sized_rooms
from optimizer.check import check_layout
from optimizer.circulation import ways
from optimizer.concepts import OptionSet
from optimizer.concepts.case import Case
from optimizer.concepts.whys.here import Place, here
from optimizer.concepts.whys.question import Question
from optimizer.drawing import Area, Drawing
from optimizer.layout import footprint, placed_of
from optimizer.pipeline import RunSettings, make_options, plan_drawing
from optimizer.rechecking import recheck
from optimizer.results import to_document
from optimizer.results.write import to_text
from tests.circle_yard import circle_yard

YARD = circle_yard()
NAME = ("fire circle", "fire", "circle")
"""In one line or in two."""


@pytest.fixture(scope="module")
def found() -> OptionSet:
    """Concepts of a short search."""
    return make_options(YARD, RunSettings(count=2, seconds=2, repeatable=True, processes=0))


@pytest.fixture(scope="module")
def circled(found):
    """Concepts that have the circle, with its placement."""
    pairs = [(option, option.layout.of("fire circle")) for option in found.options]
    kept = [(option, place) for option, place in pairs if place is not None]
    assert kept
    return kept


def test_every_concept_holds_and_pays_for_a_disc(circled):
    """By the check in real geometry; its paving line is pi / 4 of the square of what it is across."""
    for option, place in circled:
        placed = placed_of(sized_rooms(YARD.brief), option.layout)
        assert place.is_circle
        assert not place.has_grown
        assert [f for f in check_layout(YARD, placed) if "fire circle" in f.rooms] == []
        (line,) = (c for c in option.appraisal.cost.lines if c.room == "fire circle" and "paving" in c.item)
        assert float(line.quantity) == pytest.approx(pi / 4 * place.width_ft**2, abs=0.01)


def test_ways_end_in_the_disc_and_pass_its_seats(circled):
    """At least one way leads to it, and each ends at its middle; all others cross nothing that stands there."""
    for option, place in circled:
        placed = placed_of(sized_rooms(YARD.brief), option.layout)
        fire = placed.of("fire circle")
        stands = shapely.union_all([ground for item, ground in fire.furniture])
        found = ways(YARD.site, YARD.brief, placed).ways
        assert any("fire circle" in way.between for way in found)
        for way in found:
            if "fire circle" in way.between:
                end = way.points[-1 if way.between[1] == "fire circle" else 0]
                assert hypot(end[0] - place.centre[0], end[1] - place.centre[1]) == pytest.approx(0, abs=0.01)
            else:
                assert not LineString(way.points).intersects(stands)


def test_the_result_comes_back_and_holds(found, circled, tmp_path):
    """Its file says `circle`, and a recheck of it finds what it says; told it were a rectangle, it does not."""
    document = to_document(YARD, sized_rooms(YARD.brief), found, book=book_for("USD"))
    path = tmp_path / "options.json"
    path.write_text(to_text(document), encoding="utf-8")
    shapes = {room["name"]: room["shape"] for room in json.loads(path.read_text())["options"][0]["rooms"]}
    assert shapes == {name: "circle" if name == "fire circle" else "rectangle" for name in shapes}
    assert recheck(path) == ()
    path.write_text(path.read_text().replace('"shape": "circle"', '"shape": "rectangle"'), encoding="utf-8")
    assert any("fire circle is not laid out as the circle that it is" in words for words in recheck(path))


def test_asked_why_not_where_it_stands(circled):
    """At its own place in a concept that holds nothing is in its way, in the size and turn that it has there."""
    option, place = next((option, place) for option, place in circled if not option.findings)
    question = Question("here", "fire circle", at_ft=(place.x_ft, place.y_ft))
    asked = Place(Case.of(YARD), question, option, until=0.0, stop=threading.Event())
    found = here(asked, is_barred=lambda: True)
    assert found.is_settled
    assert found.rules == ()
    assert found.said[0].startswith(
        f"In {option.title.lower()}, with all other rooms where they are, it can stand there"
    )


def test_the_plan_shows_a_circle(circled):
    """Its floor is the disc, its size what it is across, and its name is off its furniture."""
    for option, place in circled:
        drawing: Drawing = plan_drawing(YARD, option)
        (floor,) = (mark for mark in drawing.marks if isinstance(mark, Area) and mark.role == "room.fire")
        assert Polygon(floor.rings[0]).symmetric_difference(footprint(place)).area < 0.01
        written = [text.text for text in drawing.texts] + [dimension.text for dimension in drawing.dimensions]
        assert any(words.startswith(f"{place.width_ft:.0f}'") and words.endswith("across") for words in written)
        name = [box(*text.box) for text in drawing.texts if text.role == "room_name" and text.text in NAME]
        fire = placed_of(sized_rooms(YARD.brief), option.layout).of("fire circle")
        assert name
        assert not any(line.intersects(ground) for line in name for _, ground in fire.furniture)
