"""Turning a room's own axes onto the plan."""

import pytest
from shapely import Polygon, box

from optimizer.catalogue import Item, SizedChoice
from optimizer.drawing import Area, Circle, furniture, to_plan
from optimizer.drawing.room_axes import side_line
from optimizer.layout import Placement
from optimizer.layout.placement import FRONT_VECTORS

FRONTS = ("+x", "-x", "+y", "-y")
CHOICE = SizedChoice(
    "one",
    14.0,
    10.0,
    4,
    5.0,
    furniture=(
        Item("counter", 0.0, 0.0, 9.0, 2.0),
        Item("stool", 12.6, 8.6, 1.4, 1.4, "circle", 1),
        Item("bench", 5.0, 4.0, 3.0, 1.0, turn_deg=45.0),
    ),
)


def placed(front: str, spare_ft: float = 0.0) -> Placement:
    """The choice placed with that front, larger than it by the spare both ways."""
    along, deep = 14.0 + spare_ft, 10.0 + spare_ft
    size = (along, deep) if front.endswith("y") else (deep, along)
    return Placement("kitchen", "one", 30.0, 50.0, *size, front)


@pytest.mark.parametrize("front", FRONTS)
def test_the_local_front_lies_on_the_placements_front(front: str) -> None:
    """The middle of the local front edge is the room's centre moved half its depth along the front's vector."""
    placement = placed(front)
    (x, y), (dx, dy) = placement.centre, FRONT_VECTORS[front]
    assert to_plan(placement, (7.0, 10.0)) == pytest.approx((x + 5.0 * dx, y + 5.0 * dy))


@pytest.mark.parametrize("front", FRONTS)
def test_the_room_is_turned_and_never_mirrored(front: str) -> None:
    """Back left, back right and front right turn counter-clockwise on the plan, as they do in the room."""
    placement = placed(front)
    (ax, ay), (bx, by), (cx, cy) = (to_plan(placement, corner) for corner in ((0, 0), (14, 0), (14, 10)))
    assert (bx - ax) * (cy - by) - (by - ay) * (cx - bx) == pytest.approx(140.0)


@pytest.mark.parametrize("front", FRONTS)
def test_back_left_is_at_the_left_hand_of_who_looks_to_the_front(front: str) -> None:
    """Seen from the back towards the front, local x grows to the right: the front's vector turned clockwise."""
    placement, (dx, dy) = placed(front), FRONT_VECTORS[front]
    (ax, ay), (bx, by) = to_plan(placement, (0, 0)), to_plan(placement, (1, 0))
    assert (bx - ax, by - ay) == pytest.approx((dy, -dx))


@pytest.mark.parametrize("front", FRONTS)
@pytest.mark.parametrize("spare_ft", [0.0, 0.75])
def test_furniture_lies_inside_its_room(front: str, spare_ft: float) -> None:
    """Every item is inside the placed rectangle, also where that was rounded up to the grid."""
    placement = placed(front, spare_ft)
    room = box(placement.x_ft, placement.y_ft, placement.right_ft, placement.top_ft).buffer(1e-9)
    marks = furniture(placement, CHOICE)
    assert len(marks) == 3
    for mark in marks:
        if isinstance(mark, Circle):
            (x, y), reach = mark.centre, mark.radius_ft
            assert room.contains(box(x - reach, y - reach, x + reach, y + reach))
        else:
            assert isinstance(mark, Area)
            assert room.contains(Polygon(mark.rings[0]))


def test_items_keep_their_size_and_turn_counter_clockwise() -> None:
    """A 3 x 1 ft bench turned by 45 degrees keeps its area, and its long side points up to the right."""
    bench = furniture(placed("+y"), CHOICE)[2]
    assert isinstance(bench, Area)
    (ax, ay), (bx, by), *_ = bench.rings[0]
    assert Polygon(bench.rings[0]).area == pytest.approx(3.0)
    assert (bx - ax, by - ay) == pytest.approx((3 / 2**0.5, 3 / 2**0.5))


@pytest.mark.parametrize("front", FRONTS)
def test_the_front_side_line_lies_along_the_front_edge(front: str) -> None:
    """The line of the front side is inset from the front edge, and that of the back from the back edge."""
    placement, (dx, dy) = placed(front), FRONT_VECTORS[front]
    cx, cy = placement.centre
    for side, sign in (("front", 1), ("back", -1)):
        for x, y in side_line(placement, side, inset_ft=0.5):
            assert (x - cx) * dx + (y - cy) * dy == pytest.approx(sign * 4.5)
