"""The marks of where most ways meet and where the party's walk is narrowest."""

import pytest
from shapely import LineString, Point, Polygon

from optimizer.appraisal.party import Pinch
from optimizer.circulation import Leg
from optimizer.drawing import Area, Drawing, Notable, Paths, draw_plan
from optimizer.drawing.notable_marks import FOCAL_ROLE, PINCH_ROLE
from optimizer.drawing.outlines import along_wall
from optimizer.layout import Layout, placed_of
from optimizer.scenario import Scenario

TRIP = ("family door", "quiet nook")
LEGS = (Leg(((31, 68), (31, 84)), 3.0, "service", (TRIP,)),)
ON_WAY = Pinch(TRIP, "way", 3.0, "arriving", 4.0, "B")
ON_EDGE = Pinch(("gathering area", "outdoor kitchen"), "edge", 12.0, "eating", 1.0, "A")


def drawn(yard: Scenario, rooms: tuple, layout: Layout, notable: Notable) -> Drawing:
    """The sample with what is to be pointed out."""
    return draw_plan(yard, placed_of(rooms, layout), (), title="A", paths=Paths(legs=LEGS, notable=notable))


def of_role(drawing: Drawing, role: str) -> list[Area]:
    """Areas of one role on the plan."""
    return [mark for mark in drawing.marks if mark.role == role and isinstance(mark, Area)]


@pytest.mark.parametrize(("pinch", "at"), [(ON_WAY, (31, 76)), (ON_EDGE, (62, 74))])
def test_the_pinch_is_marked_where_it_is(
    yard: Scenario, rooms: tuple, layout: Layout, pinch: Pinch, at: tuple[float, float]
) -> None:
    """Two wedges lie about the middle of the way, or of the edge that the rooms share, with a line of the legend."""
    drawing = drawn(yard, rooms, layout, Notable(pinch=pinch))
    (mark,) = of_role(drawing, PINCH_ROLE)
    wedges = [Polygon(ring) for ring in mark.rings]
    assert [Point(at).distance(wedge) < 0.5 and not wedge.contains(Point(at)) for wedge in wedges] == [True, True]
    assert [text.text for text in drawing.texts if text.role == "legend" and "narrowest" in text.text]


def test_the_focal_point_is_marked_and_no_text_lies_on_it(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """A star about the point, a line of the legend, and labels and figures clear of it."""
    drawing = drawn(yard, rooms, layout, Notable(focal_point=(40.0, 90.0)))
    (mark,) = of_role(drawing, FOCAL_ROLE)
    star = Polygon(mark.rings[0])
    assert star.centroid.distance(Point(40, 90)) == pytest.approx(0, abs=1e-9)
    assert [mark for mark in drawing.key if mark.role == FOCAL_ROLE]
    boxes = [text.box for text in (*drawing.texts, *(d.label for d in drawing.dimensions)) if "large" not in text.role]
    assert not [one for one in boxes if Polygon.from_bounds(*one).intersects(star)]


@pytest.mark.parametrize("at", [(31.0, 64.0), (30.0, 63.5), (62.0, 56.0), (66.5, 56.8)])
def test_no_star_lies_on_a_door(yard: Scenario, rooms: tuple, layout: Layout, at: tuple[float, float]) -> None:
    """Where most ways meet at a door it stands before it, on the landing."""
    (mark,) = of_role(drawn(yard, rooms, layout, Notable(focal_point=at)), FOCAL_ROLE)
    star = Polygon(mark.rings[0])
    jambs = (along_wall(door.at, door.outward, door.width_ft) for door in yard.site.doors)
    assert min(LineString(ends).distance(star) for ends in jambs) > 0.3
    assert not any(Polygon(building.outline).intersects(star) for building in yard.site.buildings)
    assert star.centroid.distance(Point(at)) < 4


def test_nothing_is_marked_where_nothing_is_found(yard: Scenario, rooms: tuple, layout: Layout) -> None:
    """Neither mark nor words without a finding, nor for a walk that the layout lacks."""
    for notable in (Notable(), Notable(pinch=ON_WAY._replace(between=("a", "b")))):
        drawing = drawn(yard, rooms, layout, notable)
        assert not {mark.role for mark in (*drawing.marks, *drawing.key)} & {FOCAL_ROLE, PINCH_ROLE}
