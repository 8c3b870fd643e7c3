"""What the rooms themselves put before an eye: counters, bars, seat walls, and panels that were bought."""

from collections.abc import Iterator, Mapping, Sequence

from shapely import LineString

from optimizer.catalogue.sides import side_kind, side_of_item
from optimizer.fields.ground import ground_at_ft
from optimizer.fields.sight import Screen
from optimizer.layout import FRONT_VECTORS, Placed, PlacedRoom, Placement, side_ends
from optimizer.layout.shapes import SIDES
from optimizer.site import Point, Site


def layout_screens(
    site: Site, placed: Placed, *, lookers: Mapping[str, Sequence[Point]], ends: Sequence[str]
) -> Iterator[Screen]:
    """Screens of the placed rooms.

    A bought panel stands round a room's sides towards each of its `lookers` [ft]. What stands in a room at one of the
    `ends` of a look is looked over or walked round, and left out.
    """
    for room, choice in placed.chosen:
        ground_ft = ground_at_ft(site, room.centre)
        if room.name not in ends:
            yield from _furniture(room, ground_ft)
        if choice.is_screened:
            for looker in lookers.get(room.name, ()):
                yield bought_screen(room.placement, looker, ground_ft)


def bought_screen(placement: Placement, towards: Point, ground_ft: float = 0.0) -> Screen:
    """Panel round the one or two sides of a room beyond which a point lies; none where the point is in the room."""
    (x, y), half = placement.centre, (placement.width_ft / 2, placement.depth_ft / 2)
    away = (towards[0] - x, towards[1] - y)
    facing = [
        side
        for side in SIDES
        if away[0] * FRONT_VECTORS[side][0] + away[1] * FRONT_VECTORS[side][1] > half[0 if side[1] == "x" else 1]
    ]
    lines = [side_ends(placement, side) for side in facing]
    if len(lines) == 2 and lines[0][1] != lines[1][0]:
        lines.reverse()  # +x and -y meet at the last corner and the first
    corners = [*lines[0], *(line[1] for line in lines[1:])] if lines else []
    return Screen(LineString(corners), ground_ft + side_kind("screen").height_ft)


def _furniture(room: PlacedRoom, ground_ft: float) -> Iterator[Screen]:
    for item, ground in room.furniture:
        side = side_of_item(room.kind, item)
        # Chairs, tables, fire, benches and low beds are looked past.
        if side and side.is_solid:
            yield Screen(ground, ground_ft + side.height_ft)
