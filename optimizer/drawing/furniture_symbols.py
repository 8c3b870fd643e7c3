"""Lines within furniture that tell it at a glance: backs of seats, caps of walls, slats, basins, grates and flames."""

from collections.abc import Iterator
from dataclasses import replace
from math import cos, radians, sin
from typing import Final

from optimizer.catalogue import Item, SizedChoice
from optimizer.site import Point

_BACK_FT: Final = {"chair": 0.28, "fire seat": 0.35, "lounge chair": 0.45, "sofa": 0.55}
_HEAD_SHARE: Final = 0.3  # of a lounger's length that is raised; common practice, no source
"""Thickness of a seat's back [ft]; common practice, no source."""
_MIDDLES: Final = ("table", "low table", "fire pit", "bench")
_CAPPED: Final = ("seat wall", "pier")
_CAP_FT: Final = 0.2  # what a wall's cap stands out over its face; common practice, no source
_GRATED: Final = ("grill", "griddle", "smoker", "side burner")
_BARS: Final = 4
_SLATS: Final = 3
_TREADS: Final = 3
_LINE_FT: Final = 0.04
_RINGS: Final = (0.75, 0.35)


def symbols(choice: SizedChoice) -> tuple[Item, ...]:
    """Details of a choice's furniture as further items in the room's own axes [ft], all with the role `detail`."""
    return tuple(detail for item in choice.furniture for detail in _details(choice, item))


def _details(choice: SizedChoice, item: Item) -> Iterator[Item]:
    width, depth = item.width_ft, item.depth_ft
    if item.role in _BACK_FT:
        yield _back(choice, item)
    elif item.role in _CAPPED:
        yield _inset(item, _CAP_FT)
    elif item.role == "bench":
        yield from _stripes(item, _SLATS, along_x=width >= depth)
    elif item.role in _GRATED:
        grate = _inset(item, min(width, depth) / 5)
        yield grate
        yield from _stripes(grate, _BARS, along_x=width < depth)
    elif item.role == "pool steps":
        yield from _stripes(item, _TREADS - 1, along_x=False)
    elif item.role == "lounger":
        yield _head(item)
    elif item.role == "sink":
        yield _inset(item, min(width, depth) / 4)
    elif item.role == "fire pit":
        yield from (_inset(item, width / 2 * (1 - share)) for share in _RINGS)


def _back(choice: SizedChoice, seat: Item) -> Item:
    """Back of a seat, on the side that it does not look to; a turned seat looks along its own x from behind."""
    thick, width, depth = _BACK_FT[seat.role], seat.width_ft, seat.depth_ft
    dx, dy = (-1.0, 0.0) if seat.turn_deg else _looks(choice, seat)
    if abs(dx) > abs(dy):
        return _part(seat, width - thick if dx < 0 else 0.0, 0.0, thick, depth)
    return _part(seat, 0.0, depth - thick if dy < 0 else 0.0, width, thick)


def _head(lounger: Item) -> Item:
    """Raised end of a lounger, away from the water that lies behind it in the room's axes; its left end where it lies
    along the water.
    """
    width, depth = lounger.width_ft, lounger.depth_ft
    if depth > width:
        return _part(lounger, 0.0, depth * (1 - _HEAD_SHARE), width, depth * _HEAD_SHARE)
    return _part(lounger, 0.0, 0.0, width * _HEAD_SHARE, depth)


def _looks(choice: SizedChoice, seat: Item) -> Point:
    """Direction in which a seat looks: to the nearest table, fire or bench, else out of the room past its fellows."""
    x, y = seat.x_ft + seat.width_ft / 2, seat.y_ft + seat.depth_ft / 2
    middles = [_nearest_point(item, x, y) for item in choice.furniture if item.role in _MIDDLES]
    if middles:
        at = min(middles, key=lambda point: abs(point[0] - x) + abs(point[1] - y))
        return (at[0] - x, at[1] - y)
    fellows = [item for item in choice.furniture if item.role == seat.role]
    in_a_column = len({item.x_ft for item in fellows}) < len(fellows)
    return (1.0, 0.0) if in_a_column else (0.0, 1.0)


def _nearest_point(item: Item, x: float, y: float) -> Point:
    return (
        min(max(x, item.x_ft), item.x_ft + item.width_ft),
        min(max(y, item.y_ft), item.y_ft + item.depth_ft),
    )


def _inset(item: Item, by_ft: float) -> Item:
    return _part(item, by_ft, by_ft, item.width_ft - 2 * by_ft, item.depth_ft - 2 * by_ft)


def _stripes(item: Item, count: int, *, along_x: bool) -> Iterator[Item]:
    """Thin lines that part an item evenly."""
    for share in ((i + 1) / (count + 1) for i in range(count)):
        if along_x:
            yield _part(item, 0.0, share * item.depth_ft, item.width_ft, _LINE_FT)
        else:
            yield _part(item, share * item.width_ft, 0.0, _LINE_FT, item.depth_ft)


def _part(item: Item, x_ft: float, y_ft: float, width_ft: float, depth_ft: float) -> Item:
    """Rectangle or circle within an item, from its own corner, turned with it about its middle."""
    off_x, off_y = x_ft + (width_ft - item.width_ft) / 2, y_ft + (depth_ft - item.depth_ft) / 2
    cosine, sine = cos(radians(item.turn_deg)), sin(radians(item.turn_deg))
    x = item.x_ft + (item.width_ft - width_ft) / 2 + off_x * cosine - off_y * sine
    y = item.y_ft + (item.depth_ft - depth_ft) / 2 + off_x * sine + off_y * cosine
    return replace(item, role="detail", x_ft=x, y_ft=y, width_ft=width_ft, depth_ft=depth_ft, seats=0)
