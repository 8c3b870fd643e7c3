"""The part of the yard that one pair of eyes sees, on the plan."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Final

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import SizedRoom
from optimizer.catalogue.sight import eye_height_ft
from optimizer.drawing.backdrop import Caption, plan_sheet, room_texts
from optimizer.drawing.heights import room_levels
from optimizer.drawing.marks import Circle, Drawing, Mark
from optimizer.drawing.outlines import areas_of, box_of, polygon_of
from optimizer.drawing.plan import text_scale
from optimizer.fields import ground_at_ft, open_yard
from optimizer.fields.sight_ends import fixed_eye, site_screens
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

SEEN_AT_FT: Final = 3.0
"""Height above the ground at which something counts as seen: a seated body; common practice, no source."""
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
    in_rooms = (Viewer(p.room, p.centre, known[p.room] + eye_height_ft(kinds[p.room])) for p in layout.placements)
    at_home = [thing.name for b in site.buildings for things in (b.doors, b.windows) for thing in things]
    names = (*at_home, *(thing.name for thing in site.surroundings))
    eyes = ((name, fixed_eye(site, name)) for name in names)
    return (*in_rooms, *(Viewer(name, eye.at, eye.z_ft) for name, eye in eyes if eye is not None))


def seen_area(site: Site, viewer: Viewer) -> BaseGeometry:
    """Ground of the open yard on which a seated body is seen, past buildings, neighbours and fences.

    What stands lower than the eyes hides the ground behind it only as far as the line over its top says.
    """
    yard = open_yard(site)
    target_ft = ground_at_ft(site, (yard.centroid.x, yard.centroid.y)) + SEEN_AT_FT
    hidden = [
        _behind(np.array([start, end]), viewer, _reach(viewer.z_ft, top_ft, target_ft))
        for start, end, top_ft in _edges(site)
        if top_ft > target_ft
    ]
    seen: BaseGeometry = yard.difference(shapely.union_all(hidden))
    return seen


def _edges(site: Site) -> Iterator[tuple[Point, Point, float]]:
    """Every wall and fence on plan, with the height of its top above the datum."""
    for _, screen in site_screens(site):
        if screen.bottom_z_ft == -inf:
            corners = shapely.get_coordinates(screen.outline)
            yield from (((*start,), (*end,), screen.top_z_ft) for start, end in pairwise(corners.tolist()))


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
