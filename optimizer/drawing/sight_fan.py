"""The part of the yard that one pair of eyes sees, on the plan."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import SizedRoom
from optimizer.drawing.backdrop import Caption, open_yard, plan_sheet, room_texts
from optimizer.drawing.heights import foot_and_top, room_levels
from optimizer.drawing.marks import Circle, Drawing, Mark
from optimizer.drawing.outlines import areas_of, box_of, moved, polygon_of
from optimizer.drawing.plan import text_scale
from optimizer.fields import ground_of
from optimizer.fields.sun import DEFAULT_HEIGHT_FT
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario
from optimizer.site import Building, Point, Site, Surrounding

SEATED_FT: Final = 3.75
STANDING_FT: Final = 5.25
"""Eyes above the floor; common practice, no source."""
WINDOW_EYE_FT: Final = 4.5
ABOVE_SILL_FT: Final = 1.5
"""Eyes at a window above the floor, or above its sill; common practice, no source."""
SEEN_AT_FT: Final = 3.0
"""Height above the ground at which something counts as seen: a seated body; common practice, no source."""
_OUT_FT: Final = 0.5  # an eye in a wall looks from just before it
_FAR: Final = 1e4  # as good as endless: how many times farther a shadow reaches than what throws it
WORDS: Final[dict[str, str]] = {
    "seen": "seen from there",
    "eye_here": "the eyes",
    "crown": "kept tree, crown",
    "roof": "roof over",
    "fence": "fence",
}


@dataclass(frozen=True, slots=True)
class Viewer:
    """Eyes that look over the yard: where, and how high above the file's datum [ft]."""

    name: str
    at: Point
    z_ft: float


def viewers(site: Site, rooms: Sequence[SizedRoom], layout: Layout, levels: Mapping[str, float]) -> tuple[Viewer, ...]:
    """Everyone whose view can be drawn: who sits or cooks in a room, then doors, windows and neighbours' eyes."""
    kinds = {room.name: room.rules.kind for room in rooms}
    known = room_levels(site, layout, levels)
    in_rooms = (
        Viewer(p.room, p.centre, known[p.room] + (STANDING_FT if kinds[p.room] == "kitchen" else SEATED_FT))
        for p in layout.placements
    )
    return (*in_rooms, *(viewer for building in site.buildings for viewer in _at_openings(site, building)), *_out(site))


def _at_openings(site: Site, building: Building) -> Iterator[Viewer]:
    for door in building.doors:
        floor = _ground(site, door.at) if building.floor_z_ft is None else building.floor_z_ft
        yield Viewer(door.name, moved(door.at, door.outward, _OUT_FT), floor + STANDING_FT)
    for window in building.windows:
        floor = _ground(site, window.at) if building.floor_z_ft is None else building.floor_z_ft
        z_ft = floor + WINDOW_EYE_FT if window.sill_z_ft is None else window.sill_z_ft + ABOVE_SILL_FT
        yield Viewer(window.name, moved(window.at, window.outward, _OUT_FT), z_ft)


def _out(site: Site) -> Iterator[Viewer]:
    """Eyes outside the yard; one in a neighbour's wall looks from just before it, towards the yard."""
    middle = Polygon(site.boundary).centroid
    for thing in site.surroundings:
        if thing.at is not None:
            away = np.array([middle.x - thing.at[0], middle.y - thing.at[1]])
            length = float(np.hypot(*away)) or 1.0
            z_ft = _ground(site, thing.at) + STANDING_FT if thing.eye_z_ft is None else thing.eye_z_ft
            yield Viewer(thing.name, moved(thing.at, (away[0] / length, away[1] / length), _OUT_FT), z_ft)


def _ground(site: Site, at: Point) -> float:
    return float(ground_of(site).z_ft([at])[0])


def seen_area(site: Site, viewer: Viewer) -> BaseGeometry:
    """Ground of the open yard on which a seated body is seen, past buildings, neighbours and fences.

    What stands lower than the eyes hides the ground behind it only as far as the line over its top says.
    """
    yard = open_yard(site)
    target_ft = _ground(site, (yard.centroid.x, yard.centroid.y)) + SEEN_AT_FT
    hidden = [
        _behind(np.array([start, end]), viewer, _reach(viewer.z_ft, top_ft, target_ft))
        for start, end, top_ft in _edges(site)
        if top_ft > target_ft
    ]
    seen: BaseGeometry = yard.difference(shapely.union_all(hidden))
    return seen


def _edges(site: Site) -> Iterator[tuple[Point, Point, float]]:
    """Every wall and fence on plan, with the height of its top above the datum."""
    solids: tuple[Building | Surrounding, ...] = (*site.buildings, *site.surroundings)
    for solid in solids:
        if solid.outline is not None:
            _, top = foot_and_top(site, solid.outline, solid.height_ft, "building")
            yield from ((start, end, top) for start, end in pairwise((*solid.outline, solid.outline[0])))
        elif isinstance(solid, Surrounding) and solid.line is not None:
            height = DEFAULT_HEIGHT_FT["fence"] if solid.height_ft is None else solid.height_ft
            for start, end in pairwise(solid.line):
                middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
                yield start, end, _ground(site, middle) + height


def _reach(eye_ft: float, top_ft: float, target_ft: float) -> float:
    """How many times the distance to an edge its hidden strip ends at, by similar triangles."""
    return _FAR if top_ft >= eye_ft else min(_FAR, (eye_ft - target_ft) / (eye_ft - top_ft))


def _behind(edge: np.ndarray, viewer: Viewer, reach: float) -> BaseGeometry:
    """Strip behind an edge as the eyes see it: from the edge to `reach` times its distance."""
    eye = np.array(viewer.at)
    far = eye + reach * (edge - eye)
    return Polygon([edge[0], edge[1], far[1], far[0]]).buffer(0)


def draw_sight(scenario: Scenario, layout: Layout, viewer: Viewer, *, title: str) -> Drawing:
    """Draw what the viewer sees as a translucent fan, and how much of each room."""
    site, seen = scenario.site, seen_area(scenario.site, viewer)
    shares = {placement.room: _share(seen, placement) for placement in layout.placements}

    def figure(placement: Placement) -> str:
        return "the eyes" if placement.centre == viewer.at else f"{shares[placement.room]:.0%} seen"

    said = "; ".join(f"{room} {share:.0%}" for room, share in shares.items())
    fan: tuple[Mark, ...] = (*areas_of("seen", seen), Circle("eye_here", viewer.at, 0.9 * text_scale(site)))
    return plan_sheet(
        scenario,
        layout,
        fan,
        room_texts(layout, figure, text_scale(site), marked=viewer.at),
        Caption(
            title=title,
            description=f"What is seen of the yard of {scenario.name} from {viewer.name}. Rooms: {said or 'none'}.",
            words=WORDS,
            notes=(
                "Seen: a seated body, 3 ft above the ground, past buildings and fences.",
                "Furniture, planting and crowns hide nothing here.",
            ),
        ),
    )


def _share(seen: BaseGeometry, placement: Placement) -> float:
    room = polygon_of(box_of(placement))
    return float(seen.intersection(room).area / room.area)
