"""The part of the yard that one pair of eyes sees, on the plan."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue.sight import eye_height_ft
from optimizer.check import lookers_of
from optimizer.drawing.backdrop import Caption, plan_sheet, room_texts
from optimizer.drawing.heights import room_levels
from optimizer.drawing.marks import Circle, Drawing, Line, Mark
from optimizer.drawing.outlines import areas_of
from optimizer.drawing.paving_marks import PAVING_WORDS
from optimizer.drawing.sheet_size import text_scale
from optimizer.drawing.wall_marks import WALL_WORDS
from optimizer.fields import ground_at_ft, open_yard
from optimizer.fields.room_screens import layout_screens
from optimizer.fields.seen import Target, seen_part
from optimizer.fields.sight import Eye, Screen
from optimizer.fields.sight_ends import fixed_eye, is_in, site_screens
from optimizer.layout import Layout, Placed, Placement, footprint
from optimizer.scenario import Scenario
from optimizer.site import Point, Site

SEEN_AT_FT: Final = 3.0
"""Height above the ground at which something counts as seen: a seated body; common practice, no source."""
_EVEN_FT: Final = 1e-6  # what rounding leaves of a height
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
    eye = Eye(viewer.at, viewer.z_ft)
    target = Target(yard, ground_at_ft(site, (yard.centroid.x, yard.centroid.y)) + SEEN_AT_FT)
    standing = (s for name, s in site_screens(site) if name != viewer.name and not is_in(eye, s))
    return seen_part(eye, target, (*standing, *own))


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
