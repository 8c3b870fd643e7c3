"""What rooms have at their backs: sides along a house, wall, bed, structure, fence or the room's own seat wall."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, radians
from typing import Any, Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import FOCAL_KIND, SizedRoom
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sides import side_kind, side_of_item
from optimizer.circulation import outline, rectangle
from optimizer.circulation.furniture import item_on_plan
from optimizer.circulation.shapes import side_on_plan
from optimizer.fields import main_openings
from optimizer.grading import Grading
from optimizer.layout import Front, Layout, Placement
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.planting import Planting
from optimizer.site import Door, Site, Window

_BACKING_KINDS: Final = ("bed", "storage")
_SCREENED_SIDES: Final = 2


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


def enclosure_measures(
    site: Site, rooms: Sequence[SizedRoom], layout: Layout, grading: Grading, planting: Planting
) -> EnclosureMeasures:
    """Backs of a layout whose walls and beds are known."""
    by_name = {room.name: room for room in rooms}
    placed = [(by_name[place.room], place) for place in layout.placements if place.room in by_name]
    wanting = [(room, place) for room, place in placed if room.rules.kind in _figures()["sides"]]
    outside = np.array([*_of_site(site), *_of_walls(grading), *_of_beds(planting)], dtype=object)
    built = {place.room: list(_built(room, place)) for room, place in placed}
    return EnclosureMeasures(
        rooms=tuple(
            RoomBacks(room.name, _figures()["sides"][room.rules.kind], _backed(room, place, outside, built))
            for room, place in wanting
        ),
        backs_in_view=tuple(room.name for room, place in placed if _shows_its_back(site, room, place)),
    )


def _backed(
    room: SizedRoom, place: Placement, outside: NDArray[np.object_], built: dict[str, list[BaseGeometry]]
) -> int:
    """Sides of a room with something along them; a bought screen stands round two."""
    others = [shape for name, shapes in built.items() if name != place.room for shape in shapes]
    there = np.array([*outside, *others], dtype=object)
    own = np.array(built[place.room], dtype=object)
    least = float(_figures()["least_share"])
    sides = sum(
        max(_share(side, place, there, within=False), _share(side, place, own, within=True)) >= least
        for side in FRONT_VECTORS
    )
    choice = room.choice(place.choice)
    return max(sides, _SCREENED_SIDES) if choice and choice.is_screened else sides


def _share(side: Front, place: Placement, shapes: NDArray[np.object_], *, within: bool) -> float:
    """Share of a side's length along which any of the shapes stand, in the strip beyond it or within it."""
    if not len(shapes):
        return 0.0
    strip = _strip(side, place, within=within)
    parts = shapely.get_parts(shapely.intersection(shapes[shapely.intersects(shapes, strip)], strip))
    bounds = shapely.bounds(parts[~shapely.is_empty(parts)])
    axis, length = (1, place.depth_ft) if side[1] == "x" else (0, place.width_ft)
    # A part is in one piece: along the side it covers all between its ends.
    covered, reached = 0.0, -np.inf
    for start, end in sorted((float(b[axis]), float(b[axis + 2])) for b in bounds):
        covered += max(0.0, end - max(start, reached))
        reached = max(reached, end)
    return covered / length


def _strip(side: Front, place: Placement, *, within: bool) -> Polygon:
    """Ground along a side: beyond it as far as a back may stand, or within the room as deep as its own may be."""
    figures, (x0, y0, x1, y1) = _figures(), rectangle(place).bounds
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
    """Buildings, structures, and what stands beyond the boundary: neighbours, fences and hedges."""
    yield from (outline(building.outline) for building in site.buildings)
    yield from (outline(structure.outline) for structure in site.structures)
    for beyond in site.surroundings:
        if beyond.outline is not None:
            yield outline(beyond.outline)
        elif beyond.line is not None:
            yield LineString(beyond.line)


def _of_walls(grading: Grading) -> Iterator[BaseGeometry]:
    return (LineString(wall.ends) for wall in grading.walls if wall.height_ft >= _figures()["least_wall_ft"])


def _of_beds(planting: Planting) -> Iterator[BaseGeometry]:
    return (bed.outline for bed in planting.beds if bed.outline.area >= _figures()["least_bed_sqft"])


def _built(room: SizedRoom, place: Placement) -> Iterator[BaseGeometry]:
    """What a room itself puts at a back: its sides as built, its roof's posts, or all of it if it is a bed or shed."""
    choice = room.choice(place.choice)
    if room.rules.kind in _BACKING_KINDS or (choice and choice.cover):
        yield rectangle(place)
    for item in choice.furniture if choice else ():
        side = side_of_item(room.rules.kind, item)
        if choice and side and not side.is_crossed:
            yield item_on_plan(place, choice, item)


def _shows_its_back(site: Site, room: SizedRoom, place: Placement) -> bool:
    """Whether a fire with something built at its back turns it towards a main door or window."""
    choice = room.choice(place.choice)
    back = dict(choice.sides).get("back", "open") if choice else "open"
    if room.rules.kind != FOCAL_KIND or side_kind(back).is_crossed:
        return False
    away = FRONT_VECTORS[side_on_plan("back", place.front)]
    return any(_faces(away, place, opening) for opening in main_openings(site))


def _faces(away: tuple[int, int], place: Placement, opening: Door | Window) -> bool:
    """Whether an opening looks towards the room, and a side of the room towards it, each within half a quarter turn."""
    x, y = opening.at[0] - place.centre[0], opening.at[1] - place.centre[1]
    least = cos(radians(_figures()["in_view_deg"])) * hypot(x, y)
    is_seen = -(x * opening.outward[0] + y * opening.outward[1]) > least
    return is_seen and away[0] * x + away[1] * y > least


def _figures() -> Any:
    return data("enclosure.yaml")
