"""The part of the yard that one pair of eyes sees, on the plan."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Final

import numpy as np
import shapely
from shapely import Polygon, affinity
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue.sight import eye_height_ft
from optimizer.check import lookers_of
from optimizer.drawing.backdrop import Caption, plan_sheet, room_texts
from optimizer.drawing.heights import room_levels
from optimizer.drawing.marks import Circle, Drawing, Line, Mark
from optimizer.drawing.outlines import areas_of
from optimizer.drawing.paving_marks import PAVING_WORDS
from optimizer.drawing.plan import text_scale
from optimizer.drawing.wall_marks import WALL_WORDS
from optimizer.fields import ground_at_ft, open_yard
from optimizer.fields.room_screens import layout_screens
from optimizer.fields.sight import Screen
from optimizer.fields.sight_ends import fixed_eye, site_screens
from optimizer.layout import Layout, Placed, Placement, footprint
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

SEEN_AT_FT: Final = 3.0
"""Height above the ground at which something counts as seen: a seated body; common practice, no source."""
_EVEN_FT: Final = 1e-6  # what rounding leaves of a height
_FAR: Final = 1e4  # as good as endless: how many times farther a shadow reaches than what throws it
WORDS: Final[dict[str, str]] = {
    "seen": "seen from there",
    "eye_here": "the eyes",
    "crown": "kept tree, crown",
    "roof": "roof over",
    **WALL_WORDS,
    **PAVING_WORDS,
    "screen": "panel or bar that hides what is behind",
}


@dataclass(frozen=True, slots=True)
class Viewer:
    """Eyes that look over the yard: where, and how high above the file's datum [ft]."""

    name: str
    at: Point
    z_ft: float


def viewers(site: Site, placed: Placed, levels: Mapping[str, float]) -> tuple[Viewer, ...]:
    """Everyone whose view can be drawn: who sits or cooks in a room, then doors, windows and neighbours' eyes."""
    known = room_levels(site, placed.layout, levels)
    in_rooms = (Viewer(room.name, room.centre, known[room.name] + eye_height_ft(room.kind)) for room in placed)
    at_home = [thing.name for b in site.buildings for things in (b.doors, b.windows) for thing in things]
    names = (*at_home, *(thing.name for thing in site.surroundings))
    eyes = ((name, fixed_eye(site, name)) for name in names)
    return (*in_rooms, *(Viewer(name, eye.at, eye.z_ft) for name, eye in eyes if eye is not None))


def seen_area(site: Site, viewer: Viewer, own: Iterable[Screen] = ()) -> BaseGeometry:
    """Ground of the open yard on which a seated body is seen, past what stands on the site and what the rooms add.

    What stands lower than the eyes hides the ground behind it only as far as the line over its top says, and what
    hangs, as a crown does, only from where the line under it ends.
    """
    yard = open_yard(site)
    target_ft = ground_at_ft(site, (yard.centroid.x, yard.centroid.y)) + SEEN_AT_FT
    screens = [screen for name, screen in site_screens(site) if name != viewer.name]
    hidden = [part for screen in (*screens, *own) for part in _hidden(screen, viewer, target_ft)]
    seen: BaseGeometry = yard.difference(shapely.union_all(hidden))
    return seen


def room_screens(scenario: Scenario, placed: Placed, viewer: Viewer) -> tuple[Screen, ...]:
    """Bought panels, and furniture higher than a seated body, of all rooms but that of the eyes."""
    lookers = lookers_of(scenario, placed)
    screens = layout_screens(scenario.site, placed, lookers=lookers, ends=(viewer.name,))
    return tuple(
        screen for screen in screens if not screen.outline.is_empty and _is_high(scenario.site, placed.layout, screen)
    )


def _is_high(site: Site, layout: Layout, screen: Screen) -> bool:
    """Whether a screen rises above a seated body on the level of its own room."""
    middle = screen.outline.centroid
    own = min(layout.placements, key=lambda placement: footprint(placement).distance(middle))
    return screen.top_z_ft > ground_at_ft(site, own.centre) + SEEN_AT_FT + _EVEN_FT


def _hidden(screen: Screen, viewer: Viewer, target_ft: float) -> Iterator[BaseGeometry]:
    """Ground that a screen hides: each of its points, from `near` to `far` times its distance from the eyes."""
    eye_ft = viewer.z_ft
    if screen.top_z_ft <= target_ft or _is_round(viewer, screen) or screen.bottom_z_ft >= eye_ft > target_ft:
        return
    far = _reach(eye_ft, screen.top_z_ft, target_ft)
    near = 1.0 if screen.bottom_z_ft <= target_ft else _reach(eye_ft, screen.bottom_z_ft, target_ft)
    if screen.bottom_z_ft > -inf:
        # What hangs is thick: between its near and its far edge it hides as well.
        yield affinity.scale(screen.outline, near, near, origin=viewer.at)
    corners = shapely.get_coordinates(screen.outline)
    yield from (_behind(np.array(edge), viewer, near, far) for edge in pairwise(corners.tolist()))


def _is_round(viewer: Viewer, screen: Screen) -> bool:
    """Whether the eyes are in what hangs."""
    in_height = screen.bottom_z_ft > -inf and screen.bottom_z_ft < viewer.z_ft < screen.top_z_ft
    return in_height and bool(shapely.contains_xy(screen.outline, *viewer.at))


def _reach(eye_ft: float, top_ft: float, target_ft: float) -> float:
    """How many times the distance to an edge its hidden strip ends at, by similar triangles."""
    return _FAR if top_ft >= eye_ft else min(_FAR, (eye_ft - target_ft) / (eye_ft - top_ft))


def _behind(edge: np.ndarray, viewer: Viewer, near: float, far: float) -> BaseGeometry:
    """Strip behind an edge as the eyes see it: from `near` to `far` times its distance."""
    eye = np.array(viewer.at)
    first, last = (eye + times * (edge - eye) for times in (near, far))
    return Polygon([first[0], first[1], last[1], last[0]]).buffer(0)


def draw_sight(scenario: Scenario, placed: Placed, viewer: Viewer, *, title: str) -> Drawing:
    """Draw what the viewer sees as a translucent fan, and how much of each room."""
    site, layout, own = scenario.site, placed.layout, room_screens(scenario, placed, viewer)
    seen = seen_area(site, viewer, own)
    shares = {placement.room: _share(seen, placement) for placement in layout.placements}

    def figure(placement: Placement) -> str:
        return "the eyes" if placement.centre == viewer.at else f"{shares[placement.room]:.0%} seen"

    said = "; ".join(f"{room} {share:.0%}" for room, share in shares.items())
    fan: tuple[Mark, ...] = (*areas_of("seen", seen), *(mark for screen in own for mark in _marks(screen)))
    return plan_sheet(
        scenario,
        layout,
        (*fan, Circle("eye_here", viewer.at, 0.9 * text_scale(site))),
        room_texts(layout, figure, text_scale(site), marked=viewer.at),
        Caption(
            title=title,
            description=f"What is seen of the yard of {scenario.name} from {viewer.name}. Rooms: {said or 'none'}.",
            words=WORDS,
            notes=(
                "Seen: a seated body, 3 ft up, past buildings, walls, fences, evergreen crowns, panels and bars.",
                "Trees that lose their leaves, other planting and open structures hide nothing here.",
            ),
        ),
    )


def _marks(screen: Screen) -> Iterator[Mark]:
    if isinstance(screen.outline, Polygon):
        yield from areas_of("screen", screen.outline)
    else:
        yield Line("screen", tuple((float(x), float(y)) for x, y in shapely.get_coordinates(screen.outline)))


def _share(seen: BaseGeometry, placement: Placement) -> float:
    room = footprint(placement)
    return float(seen.intersection(room).area / room.area)
