"""The whole drawing of a layout made by hand."""

from dataclasses import replace
from itertools import combinations

import pytest
from shapely import Polygon, box

from optimizer.drawing import Area, Circle, Dimension, Drawing, Text, draw_plan
from optimizer.drawing.label_forms import LEAST_SMALL_NAME_FT, large_name
from optimizer.drawing.site_marks import standing_marks
from optimizer.drawing.words import size_text
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import Scenario
from optimizer.site import RootRings

SMALL = "room_name_large"


def overlaps(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    """Whether two boxes share ground, touching aside."""
    return box(*one).intersection(box(*other)).area > 1e-6


def written(drawing: Drawing) -> list[Text]:
    """All texts of the full sheet, figures of dimensions included."""
    texts = [text for text in drawing.texts if text.role != SMALL]
    return [*texts, *(dimension.label for dimension in drawing.dimensions)]


@pytest.fixture(params=["plan", "metric_plan"])
def drawing(request: pytest.FixtureRequest) -> Drawing:
    """The sample in feet and in metres."""
    return request.getfixturevalue(request.param)


def test_every_room_is_named_once(drawing: Drawing, layout: Layout) -> None:
    """Each placed room has one name on the sheet, on one line or a word a line, and none is added."""
    words = [word for text in drawing.texts if text.role == "room_name" for word in text.text.split()]
    assert sorted(words) == sorted(word for placement in layout.placements for word in placement.room.split())


def test_no_text_lies_on_another(drawing: Drawing) -> None:
    """By their estimated bounds, no two texts of the sheet overlap; nor do names in the small picture."""
    large = [text for text in drawing.texts if text.role == SMALL]
    assert len(written(drawing)) > 40
    assert len(large) >= 5
    for texts in (written(drawing), large):
        hits = [(a.text, b.text) for a, b in combinations(texts, 2) if overlaps(a.box, b.box)]
        assert not hits


def test_all_text_lies_on_the_sheet(drawing: Drawing) -> None:
    """No text runs over the edge of the sheet."""
    sheet = box(*drawing.sheet_box)
    assert not [text.text for text in written(drawing) if not sheet.contains(box(*text.box))]


def test_names_in_small_pictures_stay_in_their_rooms(drawing: Drawing, layout: Layout) -> None:
    """A large name lies wholly inside one room."""
    rooms = [box(p.x_ft, p.y_ft, p.right_ft, p.top_ft) for p in layout.placements]
    for text in drawing.texts:
        if text.role == SMALL:
            assert any(room.contains(box(*text.box)) for room in rooms)


def test_labels_do_not_cover_furniture(plan: Drawing) -> None:
    """No name or size of a room lies over a piece of furniture where the plan has space beside it."""
    pieces = [
        Polygon(mark.rings[0])
        for mark in plan.marks
        if isinstance(mark, Area) and mark.role.startswith("furniture") and mark.role != "furniture.future"
    ]
    assert len(pieces) > 15
    labels = [box(*text.box) for text in plan.texts if text.role in ("room_name", "room_size")]
    assert not [piece for piece in pieces for label in labels if piece.intersects(label)]


def test_every_room_has_its_width_and_depth_dimensioned(plan: Drawing, layout: Layout) -> None:
    """Two dimension lines of each room measure its two sides, in feet and inches, or its label says them."""
    told = " ".join(text.text for text in plan.texts if text.role == "room_size")
    lines = [
        [d for d in plan.dimensions if measures(d, placement, upright) and d.text == f"{size_ft:g}'-0\""]
        or size_text(placement, "ft") in told
        for placement in layout.placements
        for upright, size_ft in ((False, placement.width_ft), (True, placement.depth_ft))
    ]
    assert all(lines)
    assert sum(isinstance(found, list) for found in lines) >= 8


def measures(dimension: Dimension, placement: Placement, upright: bool) -> bool:
    """Whether a dimension runs from one edge of a room to the opposite one."""
    axis = 1 if upright else 0
    ends = sorted((dimension.start[axis], dimension.end[axis]))
    edges = [(placement.x_ft, placement.right_ft), (placement.y_ft, placement.top_ft)][axis]
    return dimension.is_upright == upright and ends == pytest.approx(edges)


def test_the_distance_to_the_house_is_dimensioned(plan: Drawing) -> None:
    """The table, 12 ft off the garden wall, says so for the kitchen beside it too; each other room is tied as well."""
    ties = [d for d in plan.dimensions if not d.offset_ft]
    to_house = [d for d in ties if (d.start[1], d.end[1], d.text) == (68.0, 56.0, "12'-0\"")]
    assert len(to_house) == 1
    assert len(ties) == 4


def test_every_dimension_says_the_length_that_it_spans(metric_plan: Drawing) -> None:
    """The figure is the distance between the ends, in metres to the centimetre."""
    assert metric_plan.dimensions
    for dimension in metric_plan.dimensions:
        (x1, y1), (x2, y2) = dimension.line
        assert dimension.text == f"{((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5 * 0.3048:.2f} m"


def test_rooms_and_figures_are_legible_on_a3(drawing: Drawing) -> None:
    """Shrunk onto A3 with margins of 10 mm, names, areas and dimensions keep 6 pt, 2.1 mm (common practice)."""
    x1, y1, x2, y2 = drawing.sheet_box
    mm_per_ft = max(min(400 / (x2 - x1), 277 / (y2 - y1)), min(277 / (x2 - x1), 400 / (y2 - y1)))
    texts = [text for text in written(drawing) if text.role in ("room_name", "room_size", "dimension")]
    assert len(texts) > 15
    assert min(text.size_ft for text in texts) * mm_per_ft >= 2.1


def test_what_is_there_is_drawn(plan: Drawing) -> None:
    """Every thing of the site has its mark."""
    roles = {mark.role for mark in plan.marks}
    site = {"boundary", "setback", "building", "roof", "door", "door_zone", "window", "entrance", "crown", "trunk"}
    assert site | {"root_zone", "keep_out", "neighbour", "fence", "path", "utility", "step"} <= roles


@pytest.mark.parametrize(("said", "radius_ft"), [(RootRings(), 8.0), (RootRings(inner=9.0), 12.0)])
def test_the_root_zone_is_the_ring_in_force(yard: Scenario, said: RootRings, radius_ft: float) -> None:
    """A 16 in trunk has a root zone of 8 ft (six diameters, common practice, no source), or what the site says."""
    site = replace(yard.site, root_rings=said)
    zone = next(mark for mark in standing_marks(site) if mark.role == "root_zone")
    assert isinstance(zone, Circle)
    assert zone.radius_ft == pytest.approx(radius_ft)


def test_the_setback_line_keeps_each_edges_distance(plan: Drawing) -> None:
    """The line for paving is 28 ft off the street and 2 ft off the other edges."""
    line = next(mark for mark in plan.marks if mark.role == "setback")
    assert isinstance(line, Area)
    x1, y1, x2, y2 = Polygon(line.rings[0]).bounds
    assert (x1, y1, x2, y2) == pytest.approx((2, 28, 98, 118))


def test_the_needle_points_north(plan: Drawing) -> None:
    """Where the plan's up is 25 degrees east of north, north is 25 degrees to the left of up."""
    needle = next(mark for mark in plan.key if mark.role == "north_dark")
    ring = next(mark for mark in plan.key if mark.role == "north_ring")
    assert isinstance(needle, Area)
    assert isinstance(ring, Circle)
    (x, y), (cx, cy) = needle.rings[0][0], ring.centre
    assert ((x - cx) / ring.radius_ft, (y - cy) / ring.radius_ft) == pytest.approx((-0.4226183, 0.9063078))


def test_the_sheet_carries_the_caution(drawing: Drawing) -> None:
    """The standing caution names every trade that it defers."""
    notes = " ".join(text.text for text in drawing.texts if text.role == "note")
    for word in ("not for construction", "Gas", "electricity", "structure", "drainage", "water barriers", "codes"):
        assert word in notes


def test_the_same_layout_gives_the_same_drawing(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """Drawing is a pure function."""
    one, other = (draw_plan(yard, placed_of(rooms, layout), (), title="A") for _ in range(2))
    assert one == other


def test_long_and_crowded_names_still_fit(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """A room with a name of 200 letters is still named once, on the sheet, with an ellipsis."""
    name = "a terrace " * 20
    renamed = (replace(rooms[0], name=name), *rooms[1:])
    places = Layout((replace(layout.placements[0], room=name), *layout.placements[1:]))
    drawing = draw_plan(yard, placed_of(renamed, places), (), title=name)
    cut = [text for text in drawing.texts if text.text.endswith("…") and text.role == "room_name"]
    sheet = box(*drawing.sheet_box)
    assert len(cut) == 1
    assert not [text.text for text in written(drawing) if not sheet.contains(box(*text.box))]


def test_an_empty_layout_is_a_plan_of_the_yard(yard: Scenario) -> None:
    """With no rooms the sheet still shows the yard."""
    drawing = draw_plan(yard, placed_of((), Layout(())), (), title="the yard")
    assert not [text for text in drawing.texts if text.role == "room_name"]
    assert [mark for mark in drawing.marks if mark.role == "building"]


@pytest.mark.parametrize(("name", "is_named"), [("morning seat", True), ("conversation corner", False)])
def test_a_small_room_is_named_in_small_pictures_too(name: str, is_named: bool) -> None:
    """A nook of 7 by 8 ft has a name of one ordinary word a line; one that would be too small to read is left off."""
    placement = Placement(name, "two chairs", 10.0, 20.0, 7.0, 8.0, "+y")
    texts = large_name(placement)
    assert bool(texts) == is_named
    for text in texts:
        assert text.size_ft >= LEAST_SMALL_NAME_FT
        assert box(10, 20, 17, 28).contains(box(*text.box))
