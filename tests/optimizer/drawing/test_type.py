"""Layout rule 32: one size of type on a plan, the same to a reader whatever the yard."""

from dataclasses import replace

import pytest
from shapely import Polygon, box

from optimizer.drawing import AUDIENCES, Drawing, Paths, draw_plan
from optimizer.drawing.backdrop import room_texts
from optimizer.drawing.room_labels import Ground, name_rooms
from optimizer.drawing.type_width import width_of
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import Scenario, load_scenario
from tests.labels import NOT_ON_THE_SHEET

OF_THE_SHEET = ("title", "place", "note", "legend", "scale", "north", NOT_ON_THE_SHEET)
YARDS = ("fernhollow-court", "heron-lane", "ribbon-lane", "thimble-yard", "tumbledown-bank", "wattle-rise")
NOTHING = Polygon()


def sizes(drawing: Drawing) -> dict[str, set[float]]:
    """Sizes of what is written on the plan itself, by role."""
    found: dict[str, set[float]] = {}
    for text in (*drawing.texts, *(dimension.label for dimension in drawing.dimensions)):
        if text.role not in OF_THE_SHEET:
            found.setdefault(text.role, set()).add(text.size_ft)
    return found


@pytest.mark.parametrize("audience", AUDIENCES)
def test_one_size_of_type_on_a_plan(yard: Scenario, rooms: tuple, layout: Layout, audience: str) -> None:
    """Names of rooms and of what is there, areas, levels, letters of utilities and figures of dimensions."""
    found = sizes(draw_plan(yard, placed_of(rooms, layout), (), title="A", audience=audience))
    wanted = {"room_name", "room_size", "site_name"}
    assert set(found) == (wanted | {"dimension", "level", "utility"} if audience == "designer" else wanted)
    assert len(set[float]().union(*found.values())) == 1


@pytest.mark.parametrize("name", YARDS)
def test_a_reader_sees_the_same_letters_in_every_yard(name: str) -> None:
    """On a page 800 px wide 11 to 13 px; on a sheet as wide as 11 in paper with margins of 10 mm capitals of 2.5 mm and
    more, 0.72 of the size of Arial (drawing practice, ISO 3098 steps; both from memory).
    """
    scenario = load_scenario(f"scenarios/{name}.yaml")
    drawing = draw_plan(scenario, placed_of((), Layout(())), (), title="A")
    (size,) = set[float]().union(*sizes(drawing).values())
    share = size / (drawing.sheet_box[2] - drawing.sheet_box[0])
    assert 11 <= 800 * share <= 13
    assert 0.72 * share * (11 * 25.4 - 20) >= 2.5


@pytest.mark.parametrize(
    ("text", "width"),
    [
        ("outdoor kitchen", 7.56),
        ("summer kitchen", 7.67),
        ("mud room door", 7.39),
        ("16'-0\" × 12'-0\", 256 sq ft", 11.18),
    ],
)
def test_a_line_is_as_wide_as_in_a_common_bold_type(text: str, width: float) -> None:
    """Measured in Liberation Sans Bold, which is as wide as Arial Bold: never narrower, and at most a tenth wider."""
    assert width <= width_of(text) <= 1.1 * width


ROOM = Placement("court", "one", 10, 10, 30, 20, "+y")


def named(*, banded: Polygon = NOTHING, standing: Polygon = NOTHING, dashed: Polygon = NOTHING) -> Polygon:
    """Box of the name of a room of 30 x 20 ft, of which parts are crossed by a machine's way, taken or dashed."""
    ground = Ground((), NOTHING, NOTHING, NOTHING, NOTHING, banded, (0, 0, 60, 60))
    (label,) = name_rooms((ROOM,), ((standing, dashed),), ground, scale=1.0)
    return box(*label.box)


def test_a_name_keeps_off_the_way_of_a_later_machine() -> None:
    """It stands in the part of the room that the band leaves free; within the room still where it leaves none."""
    floor, band = box(10, 10, 40, 30), box(10, 0, 30, 40)
    assert floor.contains(named())
    assert not named(banded=band).intersects(band)
    assert floor.contains(named(banded=band))
    assert floor.contains(named(banded=box(0, 0, 60, 60)))


def test_a_name_stands_over_dashed_outlines_rather_than_outside() -> None:
    """Held ground is empty; what stands is never written on."""
    outline = box(10, 10, 40, 30).buffer(-2)
    many = Polygon(outline.exterior, [outline.buffer(-0.5).exterior.coords]).union(box(12, 12, 38, 28))
    assert box(10, 10, 40, 30).contains(named(dashed=many))
    assert not named(standing=many).intersects(many)


def test_the_paths_of_a_plan_do_not_change_its_type(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """Nor does the unit: a sheet in metres is as wide."""
    drawings = [
        draw_plan(scenario, placed_of(rooms, layout), (), title="A", paths=Paths(box(80, 0, 84, 60)))
        for scenario in (yard, replace(yard, units="m"))
    ]
    assert len({size for drawing in drawings for found in sizes(drawing).values() for size in found}) == 1


def test_names_on_a_picture_of_one_question_have_one_size_too(layout: Layout) -> None:
    """A word a line in a nook of 8 ft, on one line in a court of 30 ft; the figure below, or nothing."""
    texts = room_texts(Layout((*layout.placements, ROOM)), lambda p: "7.5 of 12 h" if p.room == "court" else "", 1.8)
    assert {text.size_ft for text in texts} == {1.8}
    assert {"quiet", "nook", "court", "7.5 of 12 h"} <= {text.text for text in texts}
    assert "" not in {text.text for text in texts}
    assert len({text.at[1] for text in texts if text.text in ("quiet", "nook")}) == 2
