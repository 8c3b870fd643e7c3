"""The finish on the plan, in the legend and in words."""

from dataclasses import replace

import pytest
from shapely import Polygon, union_all

from optimizer.brief import Finish, FinishWish
from optimizer.circulation import Leg
from optimizer.drawing import Area, Drawing, Paths, draw_plan
from optimizer.layout import placed_of
from optimizer.scenario import Scenario
from tests.yards import plain_layout, plain_rooms, plain_yard


def finished(wish: FinishWish | None = None, paths: Paths | None = None) -> Drawing:
    """The plain yard drawn with a finish."""
    yard = plain_yard()
    scenario = replace(yard, brief=replace(yard.brief, finish=wish or FinishWish()))
    return draw_plan(scenario, placed_of(plain_rooms(), plain_layout()), (), title="A", paths=paths)


def ground(drawing: Drawing, role: str) -> float:
    """Area of all marks whose role starts so [sq ft]."""
    areas = [m for m in drawing.marks if isinstance(m, Area) and m.role.startswith(role)]
    return union_all([Polygon(area.rings[0], area.rings[1:]) for area in areas]).area


def test_field_and_border_cover_the_paved_rooms() -> None:
    """All of the four rooms, nothing twice."""
    rooms = sum(place.area_sqft for place in plain_layout().placements)
    drawing = finished()
    assert ground(drawing, "field.") + ground(drawing, "border_course.") == pytest.approx(rooms, abs=0.1)


def test_the_finish_lies_over_floors_and_under_furniture(plan: Drawing) -> None:
    """So that a table stays readable."""
    roles = [mark.role.split(".")[0] for mark in plan.marks]
    floors = max(i for i, role in enumerate(roles) if role == "room")
    finish = [i for i, role in enumerate(roles) if role in ("field", "border_course")]
    assert floors < min(finish)
    assert max(finish) < min(i for i, role in enumerate(roles) if role == "furniture")


def test_the_legend_names_color_and_pattern_once() -> None:
    """The usual palette has one field, and no accent where no ways meet."""
    words = [text.text for text in finished().texts if text.role == "legend"]
    assert words.count("warm grey running bond") == 1
    assert "charcoal border" in words
    assert not [word for word in words if "accent" in word]


def test_where_ways_meet_the_legend_has_the_accent() -> None:
    """Three legs of 8 ft and more at one point."""
    spot = (4.0, 20.0)
    legs = tuple(Leg((spot, end), 4.0, "main", (("a", "b"),)) for end in ((4.0, 30.0), (4.0, 10.0), (14.0, 20.0)))
    drawing = finished(paths=Paths(Polygon([(2, 10), (14, 10), (14, 30), (2, 30)]), legs))
    assert ground(drawing, "accent.") > 1
    assert "red brown accent" in [text.text for text in drawing.texts if text.role == "legend"]


def test_the_sheet_says_what_is_laid_and_ordered() -> None:
    """Materials with colors, pattern, order and what the border is like."""
    wish = FinishWish(field=Finish("clay brick"), border=Finish("timber deck"), like="old roof")
    said = " ".join(text.text for text in finished(wish).texts if text.role == "note")
    assert "of clay brick, red brown, herringbone" in said
    assert "with what is cut away" in said
    assert "of timber deck, brown, like the old roof" in said


def test_an_empty_yard_says_nothing_of_a_finish(yard: Scenario) -> None:
    """Nothing is paved, nothing is said."""
    drawing = draw_plan(yard, placed_of((), replace(plain_layout(), placements=())), (), title="the yard")
    assert not [text for text in drawing.texts if text.text.startswith("Finish")]
    assert not [mark for mark in drawing.marks if mark.role.startswith(("field", "border_course"))]
