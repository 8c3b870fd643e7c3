"""What rooms have at their backs: sides along a house, wall, bed, structure, fence or the room's own seat wall."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, hypot, radians
from typing import Any, Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import FOCAL_KIND
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sides import side_kind, side_of_item
from optimizer.fields import main_openings, site_shapes
from optimizer.fields.site_walls import wall_height_ft, walls_for_eyes
from optimizer.grading import Grading
from optimizer.layout import FRONT_VECTORS, Front, Placed, PlacedRoom, outline
from optimizer.layout.shapes import side_on_plan
from optimizer.planting import Planting
from optimizer.site import Door, Site, Window

_BACKING_KINDS: Final = ("bed", "storage")
_SCREENED_SIDES: Final = 2
_SAME: Final = 1e-3  # what just reaches a threshold does so however the yard lies


class RoomBacks(NamedTuple):
    """Sides of a room that want a back, and those that have one."""

    room: str
    wanted: int
    backed: int


@dataclass(frozen=True, slots=True)
class EnclosureMeasures:
    """Backs of the rooms that want any, and fires that turn their built back to a main door or window."""

    rooms: tuple[RoomBacks, ...] = ()
    backs_in_view: tuple[str, ...] = ()

    @property
    def missing(self) -> int:
        """Sides without the back that they want, and backs that a main opening looks at."""
        return sum(max(0, room.wanted - room.backed) for room in self.rooms) + len(self.backs_in_view)


def enclosure_measures(site: Site, placed: Placed, grading: Grading, planting: Planting) -> EnclosureMeasures:
    """Backs of a layout whose walls and beds are known."""
    wanted = _figures()["sides"]
    outside = np.array([*_of_site(site), *_of_walls(grading), *_of_beds(planting)], dtype=object)
    built = {room.name: list(_built(room)) for room in placed}
    return EnclosureMeasures(
        rooms=tuple(
            RoomBacks(room.name, wanted[room.kind], _backed(room, outside, built))
            for room in placed
            if room.kind in wanted
        ),
        backs_in_view=tuple(room.name for room in placed if _shows_its_back(site, room)),
    )


def _backed(room: PlacedRoom, outside: NDArray[np.object_], built: dict[str, list[BaseGeometry]]) -> int:
    """Sides of a room with something along them; a bought screen stands round two."""
    others = [shape for name, shapes in built.items() if name != room.name for shape in shapes]
    there = np.array([*outside, *others], dtype=object)
    own = np.array(built[room.name], dtype=object)
    least = float(_figures()["least_share"]) - _SAME
    sides = sum(
        max(_share(side, room, there, within=False), _share(side, room, own, within=True)) >= least
        for side in FRONT_VECTORS
    )
    return max(sides, _SCREENED_SIDES) if room.choice and room.choice.is_screened else sides


def _share(side: Front, room: PlacedRoom, shapes: NDArray[np.object_], *, within: bool) -> float:
    """Share of a side's length along which any of the shapes stand, in the strip beyond it or within it."""
    if not len(shapes):
        return 0.0
    strip = _strip(side, room, within=within)
    parts = shapely.get_parts(shapely.intersection(shapes[shapely.intersects(shapes, strip)], strip))
    bounds = shapely.bounds(parts[~shapely.is_empty(parts)])
    axis, length = (1, room.placement.depth_ft) if side[1] == "x" else (0, room.placement.width_ft)
    # A part is in one piece: along the side it covers all between its ends.
    covered, reached = 0.0, -np.inf
    for start, end in sorted((float(b[axis]), float(b[axis + 2])) for b in bounds):
        covered += max(0.0, end - max(start, reached))
        reached = max(reached, end)
    return covered / length


def _strip(side: Front, room: PlacedRoom, *, within: bool) -> Polygon:
    """Ground along a side: beyond it as far as a back may stand, or within the room as deep as its own may be."""
    figures, (x0, y0, x1, y1) = _figures(), room.shape.bounds
    depth = -figures["own_ft"] if within else figures["within_ft"]
    strips = {
        "+x": (x1, y0, x1 + depth, y1),
        "-x": (x0, y0, x0 - depth, y1),
        "+y": (x0, y1, x1, y1 + depth),
        "-y": (x0, y0, x1, y0 - depth),
    }
    ax, ay, bx, by = strips[side]
    return box(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))


def _of_site(site: Site) -> Iterator[BaseGeometry]:
    """Buildings, structures, walls, and what stands beyond the boundary: neighbours, fences and hedges."""
    yield from site_shapes(site).buildings
    yield from site_shapes(site).structures
    for wall, part in walls_for_eyes(site):
        if wall_height_ft(wall) >= _figures()["least_wall_ft"] - _SAME:
            yield part
    for beyond in site.surroundings:
        if beyond.outline is not None:
            yield outline(beyond.outline)
        elif beyond.line is not None:
            yield LineString(beyond.line)


def _of_walls(grading: Grading) -> Iterator[BaseGeometry]:
    return (LineString(wall.line) for wall in grading.walls if wall.height_ft >= _figures()["least_wall_ft"] - _SAME)


def _of_beds(planting: Planting) -> Iterator[BaseGeometry]:
    return (bed.outline for bed in planting.beds if bed.outline.area >= _figures()["least_bed_sqft"] - _SAME)


def _built(room: PlacedRoom) -> Iterator[BaseGeometry]:
    """What a room itself puts at a back: its sides as built, its roof's posts, or all of it if it is a bed or shed."""
    if room.kind in _BACKING_KINDS or (room.choice and room.choice.cover):
        yield room.shape
    for item, ground in room.furniture:
        side = side_of_item(room.kind, item)
        if side and not side.is_crossed:
            yield ground


def _shows_its_back(site: Site, room: PlacedRoom) -> bool:
    """Whether a fire with something built at its back turns it towards a main door or window."""
    back = dict(room.choice.sides).get("back", "open") if room.choice else "open"
    if room.kind != FOCAL_KIND or side_kind(back).is_crossed:
        return False
    away = FRONT_VECTORS[side_on_plan("back", room.front)]
    return any(_faces(away, room, opening) for opening in main_openings(site))


def _faces(away: tuple[int, int], room: PlacedRoom, opening: Door | Window) -> bool:
    """Whether an opening looks towards the room, and a side of the room towards it, each within half a quarter turn."""
    x, y = opening.at[0] - room.centre[0], opening.at[1] - room.centre[1]
    least = cos(radians(_figures()["in_view_deg"])) * hypot(x, y)
    is_seen = -(x * opening.outward[0] + y * opening.outward[1]) > least
    return is_seen and away[0] * x + away[1] * y > least


def _figures() -> Any:
    return data("enclosure.yaml")
