"""From a room's own axes to the plan: turned so that its front lies on the placement's front, never mirrored."""

from collections.abc import Iterable
from math import cos, radians, sin

from optimizer.catalogue import Item, LocalSide, SizedChoice
from optimizer.drawing.marks import Area, Circle, Mark
from optimizer.layout import Placement
from optimizer.site import Point, Ring


def to_plan(placement: Placement, local: Point) -> Point:
    """Plan point of a local one: local x runs along the front to the right of who looks out of it, y towards it."""
    along, out = local
    match placement.front:
        case "+y":
            return (placement.x_ft + along, placement.y_ft + out)
        case "+x":
            return (placement.x_ft + out, placement.top_ft - along)
        case "-y":
            return (placement.right_ft - along, placement.top_ft - out)
        case "-x":
            return (placement.right_ft - out, placement.y_ft + along)


def local_size(placement: Placement) -> tuple[float, float]:
    """Length along the front and depth from back to front of a placed room [ft]."""
    if placement.front in ("+y", "-y"):
        return (placement.width_ft, placement.depth_ft)
    return (placement.depth_ft, placement.width_ft)


def side_line(placement: Placement, side: LocalSide, *, inset_ft: float) -> tuple[Point, Point]:
    """Find the ends on the plan of one side's edge, moved into the room by the inset [ft]."""
    width, depth = local_size(placement)
    left, right, back, front = inset_ft, width - inset_ft, inset_ft, depth - inset_ft
    ends: dict[LocalSide, tuple[Point, Point]] = {
        "front": ((left, front), (right, front)),
        "back": ((left, back), (right, back)),
        "left": ((left, back), (left, front)),
        "right": ((right, back), (right, front)),
    }
    start, end = ends[side]
    return (to_plan(placement, start), to_plan(placement, end))


def furniture(placement: Placement, choice: SizedChoice) -> tuple[Mark, ...]:
    """Every item of a choice on the plan."""
    return items_on_plan(placement, choice, choice.furniture)


def items_on_plan(placement: Placement, choice: SizedChoice, items: Iterable[Item]) -> tuple[Mark, ...]:
    """Items in a choice's axes on the plan; where the room was rounded up to the grid, they stay in its middle."""
    width, depth = local_size(placement)
    spare = ((width - choice.width_ft) / 2, (depth - choice.depth_ft) / 2)
    return tuple(_item(placement, item, spare) for item in items)


def _item(placement: Placement, item: Item, spare: Point) -> Mark:
    role = f"furniture.{item.role}"
    centre = (item.x_ft + item.width_ft / 2 + spare[0], item.y_ft + item.depth_ft / 2 + spare[1])
    if item.shape == "circle":
        return Circle(role, to_plan(placement, centre), min(item.width_ft, item.depth_ft) / 2)
    return Area(role, (tuple(to_plan(placement, corner) for corner in _turned_corners(item, centre)),))


def _turned_corners(item: Item, centre: Point) -> Ring:
    cosine, sine = cos(radians(item.turn_deg)), sin(radians(item.turn_deg))
    half_x, half_y = item.width_ft / 2, item.depth_ft / 2
    return tuple(
        (centre[0] + x * cosine - y * sine, centre[1] + x * sine + y * cosine)
        for x, y in ((-half_x, -half_y), (half_x, -half_y), (half_x, half_y), (-half_x, half_y))
    )
