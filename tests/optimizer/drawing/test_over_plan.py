"""What is made of a plan for a screen: large names without a sheet, numbers with a key, an area with a scale."""

from dataclasses import replace

import pytest

from optimizer.drawing.concept_plan import draw_concept
from optimizer.drawing.over_plan import MOST_LABELS, for_screen, numbered, plan_alone, with_area
from optimizer.export import plan_svg, thumbnail_svg
from optimizer.pipeline import plan_drawing
from tests.labels import on_furniture
from tests.sample_run import sample_option, sample_scenario


@pytest.fixture(scope="module")
def drawing():
    """The plan of a made-up concept."""
    return draw_concept(sample_scenario(), sample_option(), audience="owner")


def test_the_command_and_the_page_draw_the_same_plan():
    """One place says what belongs on a concept's plan."""
    scenario, option = sample_scenario(), sample_option()
    assert plan_svg(plan_drawing(scenario, option)) == plan_svg(draw_concept(scenario, option))


def test_a_plan_for_a_screen_has_names_and_no_sheet(drawing):
    """All that is drawn lies in the plan's own box, and the names of both rooms are there."""
    screen = for_screen(drawing)
    assert screen.sheet_box == drawing.plan_box
    assert screen.key == ()
    assert {"gathering", "area", "quiet", "nook"} == {word for text in screen.texts for word in text.text.split()}
    small = min(text.size_ft for text in drawing.texts if text.role == "room_name")
    (size,) = {text.size_ft for text in screen.texts}
    assert size > small


def test_names_on_a_screen_are_legible_and_off_the_furniture(drawing):
    """In 490 x 600 px, as in a window of 1440 x 900 px, they are 11 px high and more (common practice, no source)."""
    screen = for_screen(drawing)
    x1, y1, x2, y2 = screen.plan_box
    px_per_ft = min(490 / (x2 - x1), 600 / (y2 - y1))
    assert min(text.size_ft for text in screen.texts) * px_per_ft >= 11
    assert on_furniture(screen) == []


def test_a_designers_plan_alone_keeps_what_is_written_on_it():
    """Names, figures and levels, but nothing of the sheet below it."""
    whole = draw_concept(sample_scenario(), sample_option())
    alone = plan_alone(whole)
    assert alone.dimensions == whole.dimensions
    assert {text.role for text in alone.texts} >= {"room_name", "site_name"}
    assert not {text.role for text in alone.texts} & {"title", "note", "legend", "scale", "north"}


def test_numbers_follow_the_order_of_the_rooms(drawing):
    """Number 1 stands in the first room's middle, number 2 in the second's, and no other text is left."""
    layout = sample_option().layout
    texts = numbered(drawing, layout).texts
    assert [text.text for text in texts] == ["1", "2"]
    assert [text.at for text in texts] == [place.centre for place in layout.placements]
    for text, place in zip(texts, layout.placements, strict=True):
        assert text.size_ft < min(place.width_ft, place.depth_ft)


@pytest.mark.parametrize("unit_ft", [1.0, 1 / 0.3048])
def test_the_scale_counts_in_the_files_unit(drawing, unit_ft):
    """A line labelled 20 lies 20 of the file's units from its origin; there are not too many to read."""
    scaled = with_area(drawing, None, unit_ft=unit_ft)
    lines = [mark for mark in scaled.marks if mark.role == "scale_line"]
    labels = scaled.texts[len(drawing.texts) :]
    upright = [
        (line, label) for line, label in zip(lines, labels, strict=True) if line.points[0][0] == line.points[1][0]
    ]
    assert 3 <= len(upright) <= MOST_LABELS + 1
    for line, label in upright:
        assert line.points[0][0] == pytest.approx(int(label.text) * unit_ft)


@pytest.mark.parametrize("beyond_ft", [0.2, 3.0, 8.0])
def test_no_number_of_the_scale_is_cut_off(drawing, beyond_ft):
    """Wherever the plan ends beyond a round number: each is as far from its edges as it is high."""
    box = (-beyond_ft, -beyond_ft, 80.0 + beyond_ft, 100.0 + beyond_ft)
    scaled = with_area(replace(drawing, plan_box=box), None, unit_ft=1.0)
    labels = scaled.texts[len(drawing.texts) :]
    assert len(labels) > 6
    for label in labels:
        (x, y), size = label.at, label.size_ft
        assert box[0] + size <= x <= box[2] - size
        assert box[1] + size <= y <= box[3] - size


def test_an_area_is_drawn_where_it_is(drawing):
    scaled = with_area(drawing, (10.0, 20.0, 30.0, 50.0), unit_ft=1.0)
    (area,) = (mark for mark in scaled.marks if mark.role == "held_area")
    assert area.rings == (((10.0, 20.0), (30.0, 20.0), (30.0, 50.0), (10.0, 50.0)),)
    assert 'class="held_area"' in thumbnail_svg(scaled)
