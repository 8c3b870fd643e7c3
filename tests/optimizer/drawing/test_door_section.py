"""The small section at the main garden door: heights and steps by hand."""

from dataclasses import replace

import pytest

from optimizer.brief import Trip
from optimizer.drawing.door_section import door_section
from optimizer.drawing.inset import Inset, moved_mark
from optimizer.drawing.marks import Area, Circle, Line, Mark
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario
from optimizer.site import SpotLevel

TABLE = Layout((Placement("table", "one", 24, 70, 14, 12, "+y"),))


def section(
    yard: Scenario, layout: Layout = TABLE, known: dict | None = None, scale: float = 1.0, **changes: object
) -> Inset | None:
    """At the family door, whose floor lies 1.0 ft above level ground at 0: two risers of 6 in."""
    flat = tuple(SpotLevel(at, 0.0) for at in ((0, 0), (100, 0), (0, 120)))
    site = replace(yard.site, levels=flat)
    brief = replace(yard.brief, trips=(Trip("family door", "table", 9), Trip("kitchen door", "table", 2)))
    site = replace(site, **changes)
    return door_section(site, brief, layout, {"table": 0.0} if known is None else known, units="ft", scale=scale)


def areas(inset: Inset, role: str) -> list[list[tuple[float, float]]]:
    """Rings of a role back in feet: out from the wall, and above the lowest point."""
    rings = [mark.rings[0] for mark in inset.marks if isinstance(mark, Area) and mark.role == role]
    return [[(x / 2 - 3, y / 2) for x, y in ring] for ring in rings]


def test_it_says_the_heights(yard: Scenario) -> None:
    """Floor, steps and what one steps onto."""
    found = section(yard)
    assert [text.text for text in found.texts] == [
        "Section at the family door, at twice the scale of the plan",
        "floor +1.0, 2 risers of 0'-6\", table ±0.0",
    ]


def test_landing_and_treads_to_scale(yard: Scenario) -> None:
    """A landing of 4 ft at the floor's height, one tread of 14 in, and two steps of 6 in down to the ground."""
    stairs, table = areas(section(yard), "section_room")
    low = 1.2 + 0.0  # the earth below the ground is drawn 1.2 ft deep
    expected = [(0, 1), (4, 1), (4, 0.5), (4 + 14 / 12, 0.5), (4 + 14 / 12, 0)]
    assert [(x, y - low) for x, y in stairs[:5]] == [pytest.approx(point) for point in expected]
    assert min(x for x, _ in table) == pytest.approx(4 + 14 / 12)  # built up to the tread, 10 in before it
    (earth,) = areas(section(yard, known={"table": -0.3}), "section_earth")
    assert max(y for x, y in earth if x > 4 + 14 / 12 + 1e-6) - low == pytest.approx(0)
    assert max(y for _, y in table) - low == pytest.approx(0)


def test_it_is_at_twice_the_scale_of_the_plan_whatever_the_size_of_type(yard: Scenario) -> None:
    """18 ft of ground, and steps of the same size, with larger letters."""
    one, other = section(yard), section(yard, scale=1.8)
    assert one.width_ft == other.width_ft == pytest.approx(2 * 18)
    assert areas(one, "section_room") == areas(other, "section_room")
    assert other.texts[0].size_ft == pytest.approx(1.8 * one.texts[0].size_ft)


def test_onto_the_ground_where_no_room_is_near(yard: Scenario) -> None:
    """A table 20 ft away is not what one steps onto."""
    far = Layout((Placement("table", "one", 24, 90, 14, 12, "+y"),))
    assert section(yard, far).texts[1].text.endswith("ground ±0.0")


def test_nothing_is_drawn_of_what_is_not_known(yard: Scenario) -> None:
    """Without levels, or without the floor's height, there is none."""
    assert section(yard, known={}) is not None
    assert section(yard, levels=()) is None
    house = replace(yard.site.buildings[0], floor_z_ft=None)
    assert section(yard, buildings=(house,)) is None


def test_all_of_it_lies_in_its_frame(yard: Scenario) -> None:
    """From (0, 0) to its width and height, wherever it is set."""
    found = section(yard)
    for inset, (x, y) in ((found, (0, 0)), (found.set_at((30, -7)), (30, -7))):
        points = [p for m in inset.marks for p in (m.rings[0] if isinstance(m, Area) else m.points)]
        assert min(p[0] for p in points) == pytest.approx(x)
        assert min(p[1] for p in points) == pytest.approx(y)
        assert max(p[0] for p in points) <= x + inset.width_ft + 1e-9
        assert max(text.box[3] for text in inset.texts) <= y + inset.height_ft


@pytest.mark.parametrize(
    "mark", [Area("a", (((0, 0), (1, 0), (0, 1)),)), Line("l", ((0, 0), (1, 1))), Circle("c", (0, 0), 2)]
)
def test_every_mark_moves(mark: Mark) -> None:
    moved = moved_mark(mark, lambda point: (point[0] + 3, point[1] + 4))
    first = {Area: lambda m: m.rings[0][0], Line: lambda m: m.points[0], Circle: lambda m: m.centre}[type(mark)]
    assert first(moved) == (3, 4)
