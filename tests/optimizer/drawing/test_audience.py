"""An owner's plan and a designer's: the same yard and rooms, with and without what is for a designer alone."""

from dataclasses import replace

import numpy as np
import pytest
from shapely import Point, Polygon, box

from optimizer.brief import RoomWish
from optimizer.catalogue import SizedRoom, sized_rooms
from optimizer.circulation import way_polygon
from optimizer.drawing import AUDIENCES, Area, Drawing, Notable, Paths, draw_plan
from optimizer.drawing.audience import DESIGNERS_MARKS
from optimizer.drawing.future_marks import LATER_ROLES
from optimizer.drawing.room_labels import leader_lines
from optimizer.drawing.words import kept_for
from optimizer.engine.problem import layout_of
from optimizer.export import plan_svg
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import Scenario, load_scenario
from tests.explored import explored, states
from tests.labels import on_furniture, on_unwritten

YARDS = ("fernhollow-court", "heron-lane", "ribbon-lane", "thimble-yard", "tumbledown-bank", "wattle-rise")


@pytest.fixture(params=AUDIENCES)
def audience(request: pytest.FixtureRequest) -> str:
    """Each reader."""
    return request.param


def drawn(yard: Scenario, rooms: tuple[SizedRoom, ...], layout: Layout, audience: str) -> Drawing:
    """The sample with something to point out."""
    notable = Notable(focal_point=(40.0, 90.0))
    return draw_plan(yard, placed_of(rooms, layout), (), title="A", paths=Paths(notable=notable), audience=audience)


def test_an_owners_plan_has_no_designers_mark(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """No dimension, level, utility, setback line or star; a designer's has them all, and both the same rooms and things."""
    owner, designer = (drawn(yard, rooms, layout, audience) for audience in ("owner", "designer"))
    roles = [{mark.role for mark in drawing.marks} for drawing in (owner, designer)]
    assert not roles[0] & DESIGNERS_MARKS
    assert roles[1] - roles[0] - {"leader"} == DESIGNERS_MARKS - {"pinch"} - LATER_ROLES
    assert not owner.dimensions
    assert designer.dimensions
    assert {text.role for text in designer.texts} - {text.role for text in owner.texts} == {"utility", "level"}
    names = [sorted(t.text for t in drawing.texts if t.role == "room_name_large") for drawing in (owner, designer)]
    assert names[0] == names[1]


def test_the_legend_says_what_the_plan_has(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """Level marks are explained on the designer's sheet, and not on the owner's."""
    legends = [
        {text.text for text in drawn(yard, rooms, layout, audience).texts if text.role == "legend"}
        for audience in ("owner", "designer")
    ]
    assert "level above the datum" not in legends[0]
    assert "level above the datum" in legends[1]


def test_one_size_for_all_room_names(yard: Scenario, rooms: tuple, layout: Layout, audience: str) -> None:
    """Layout rule 32."""
    texts = drawn(yard, rooms, layout, audience).texts
    assert len({text.size_ft for text in texts if text.role == "room_name"}) == 1


def test_a_small_full_room_is_named_beside_it(yard: Scenario, rooms: tuple, layout: Layout, audience: str) -> None:
    """A kitchen of 9 x 8 ft full of counters keeps its drawing: its name stands outside, no plate hides it."""
    kitchen = next(room for room in rooms if room.name == "outdoor kitchen")
    counters = tuple(replace(item, x_ft=0.3, width_ft=8.4) for item in kitchen.choices[0].furniture[:1])
    full = tuple(replace(item, y_ft=y) for item in counters for y in (0.3, 2.6, 4.9))
    small = replace(kitchen, choices=(replace(kitchen.choices[0], width_ft=9.0, depth_ft=8.0, furniture=full),))
    others = tuple(small if room is kitchen else room for room in rooms)
    place = Placement("outdoor kitchen", "one", 66, 68, 9, 8, "+y")
    places = tuple(place if p.room == "outdoor kitchen" else p for p in layout.placements)
    drawing = drawn(yard, others, Layout(places), audience)
    assert on_furniture(drawing) == []
    words = [text for text in drawing.texts if text.role == "room_name" and text.text in ("outdoor kitchen", "kitchen")]
    assert words
    assert not any(box(66, 68, 75, 76).intersects(box(*text.box)) for text in words)


def test_a_leader_comes_from_the_middle_of_what_label_and_room_turn_to_each_other() -> None:
    """From an end of it a leader would run along the next room; at a corner it is the shortest line."""
    boxes = np.array([box(-2, 8, 3, 10), box(9, 1, 12, 2), box(7, 7, 9, 9)])
    found = [line.wkt for line in leader_lines(boxes, box(0, 0, 5, 5), is_disc=False)]
    assert found == ["LINESTRING (1.5 8, 1.5 5)", "LINESTRING (9 1.5, 5 1.5)", "LINESTRING (7 7, 5 5)"]
    (to_disc,) = leader_lines(boxes[:1], Point(2.5, 2.5).buffer(2.5), is_disc=True)
    assert to_disc.length == pytest.approx(3, abs=0.01)


def test_held_ground_looks_held(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """It says what it is kept free for, and is drawn by a dashed line with the hatch of held ground, not as water."""
    wish = RoomWish("water reserve", "reserve", futures=("hot tub", "pool"))
    scenario = replace(yard, brief=replace(yard.brief, rooms=(wish,)))
    drawing = drawn(scenario, rooms, layout, "owner")
    assert kept_for(wish) == ("kept free for a hot tub or a", "pool")
    assert " ".join(kept_for(wish)) in " ".join(text.text for text in drawing.texts)
    svg = plan_svg(drawing)
    assert "-held" in svg
    assert "built_water" not in svg


def test_what_ground_is_kept_for() -> None:
    """Every future is named; without any it is for later."""
    three = RoomWish("r", "reserve", futures=("hot tub", "swim spa", "plunge pool"))
    assert " ".join(kept_for(three)) == "kept free for a hot tub, a swim spa or a plunge pool"
    assert kept_for(RoomWish("r", "reserve")) == ("kept free for later",)


@pytest.fixture(scope="module", params=YARDS)
def found(request: pytest.FixtureRequest) -> tuple[Scenario, tuple[SizedRoom, ...], list[Layout]]:
    """The best and a poor layout that a short tour of a demonstration yard passes."""
    scenario = load_scenario(f"scenarios/{request.param}.yaml")
    rooms = sized_rooms(scenario.brief)
    explorer = explored(scenario, rooms, rebuilds=15, seed=2)
    passed = states(explorer)
    return scenario, rooms, [layout_of(explorer.board.problem, state) for state in (passed[0], passed[-1])]


def test_nothing_is_written_on_furniture(found: tuple, audience: str) -> None:
    """On no demonstration yard, whoever reads the plan; and no figure of a dimension on planting, landing or steps."""
    scenario, rooms, layouts = found
    for layout in layouts:
        placed = placed_of(rooms, layout)
        paths = Paths(way_polygon(scenario.site, placed, ()))
        drawing = draw_plan(scenario, placed, (), title="A", paths=paths, audience=audience)
        assert on_furniture(drawing) == []
        assert on_unwritten(drawing) == []
        floors = [Polygon(mark.rings[0]) for mark in drawing.marks if isinstance(mark, Area) and "room." in mark.role]
        assert len(floors) == len(layout.placements)
