"""Who looks at what in a relation of sight, and what of the site stands between."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation, RoomKind
from optimizer.catalogue.sight import asked_share, eye_height_ft, seen_height_ft, sight_figure
from optimizer.fields.ground import ground_at_ft
from optimizer.fields.seen import Target
from optimizer.fields.sight import Eye, Numbers, Screen
from optimizer.fields.site_walls import wall_height_ft, walls_for_eyes
from optimizer.fields.sun import CROWN_BASE, DEFAULT_HEIGHT_FT
from optimizer.site import Building, Point, Site, Structure, Surrounding, Window

_OUT_FT: Final = 0.5  # an eye in a wall looks from just before it
_EVEN: Final = 1e-6  # what rounding adds to a share


@dataclass(frozen=True, slots=True)
class Look:
    """A relation of sight: who looks at what, and which share of it must be seen at least, or may be at most.

    `eye_ft` and `seen_ft` are heights above a room's ground; None at an end that is no room.
    """

    looker: str
    seen: str
    must_see: bool
    share: float
    eye_ft: float | None
    seen_ft: float | None

    def keeps(self, share: Numbers | float) -> np.ndarray:
        """Whether such shares of sight are what is asked."""
        return np.asarray(share >= self.share - _EVEN if self.must_see else share <= self.share + _EVEN)


def look_of(site: Site, relation: Relation, kinds: Mapping[str, RoomKind]) -> Look:
    """Look that a relation of sight asks for; `kinds` holds every room's.

    Who is in a neighbour's, a window or a door looks, and who comes in at an entrance; else the first room named.
    """
    first, second = relation.between
    looks_back = _has_eye(site, second) or (first not in kinds and not _has_eye(site, first))
    looker, seen = (second, first) if looks_back else (first, second)
    eye_ft = eye_height_ft(kinds[looker], relation.eye) if looker in kinds else None
    seen_ft = seen_height_ft(kinds[seen]) if seen in kinds else None
    return Look(looker, seen, relation.kind == "in_view", asked_share(relation), eye_ft, seen_ft)


def _has_eye(site: Site, name: str) -> bool:
    eyes = {thing.name for thing in site.surroundings if thing.at is not None}
    return name in eyes or name in _openings(site)


def _openings(site: Site) -> set[str]:
    doors, windows = ({thing.name for thing in things} for things in (site.doors, site.windows))
    return doors | windows | {entrance.name for entrance in site.entrances}


def fixed_eye(site: Site, name: str) -> Eye | None:
    """Eye at a door, window, entrance or in a neighbour's, just before its wall; None for anything else."""
    standing = sight_figure("standing_eye")
    for building in site.buildings:
        for door in building.doors:
            if door.name == name:
                return Eye(_moved(door.at, door.outward), _floor_ft(site, building, door.at) + standing)
        for window in building.windows:
            if window.name == name:
                return Eye(_moved(window.at, window.outward), _at_window_ft(site, building, window))
    for entrance in site.entrances:
        if entrance.name == name:
            return Eye(entrance.at, ground_at_ft(site, entrance.at) + standing)
    return _neighbour_eye(site, name)


def _at_window_ft(site: Site, building: Building, window: Window) -> float:
    if window.sill_z_ft is None:
        return _floor_ft(site, building, window.at) + sight_figure("window_eye")
    return window.sill_z_ft + sight_figure("above_sill")


def _floor_ft(site: Site, building: Building, at: Point) -> float:
    return ground_at_ft(site, at) if building.floor_z_ft is None else building.floor_z_ft


def _neighbour_eye(site: Site, name: str) -> Eye | None:
    middle = Polygon(site.boundary).centroid
    for thing in site.surroundings:
        if thing.name == name and thing.at is not None:
            away = np.array([middle.x - thing.at[0], middle.y - thing.at[1]])
            away /= float(np.hypot(*away)) or 1.0
            z_ft = ground_at_ft(site, thing.at) + sight_figure("standing_eye")
            return Eye(_moved(thing.at, (away[0], away[1])), z_ft if thing.eye_z_ft is None else thing.eye_z_ft)
    return None


@lru_cache(maxsize=64)
def seen_thing(site: Site, name: str) -> Target | None:
    """What is looked at of a thing of the site, at half its height; None for what is not there."""
    things: tuple[Building | Structure | Surrounding, ...] = (*site.buildings, *site.structures, *site.surroundings)
    tall = {thing.name: thing.height_ft for thing in things} | {w.name: wall_height_ft(w) for w in site.walls}
    usual = {thing.name: DEFAULT_HEIGHT_FT["structure"] for thing in site.structures}
    for tree in site.trees:
        if tree.name == name:
            height = tree.height_ft or DEFAULT_HEIGHT_FT["tree"]
            return _at_half(site, shapely.Point(tree.at).buffer(tree.canopy_radius_ft, quad_segs=4), height)
    point, ring = site.point_of(name), site.outline_of(name)
    line = site.line_of(name)
    if point is not None:
        return _at_half(site, shapely.Point(point), 2 * sight_figure("seated_head"))
    if ring is not None:
        low = 2 * sight_figure("low_ground")  # a keep-out, which has no height
        height = tall.get(name) or usual.get(name, DEFAULT_HEIGHT_FT["building"] if name in tall else low)
        return _at_half(site, Polygon(ring), height)
    return None if line is None else _at_half(site, LineString(line), tall[name] or DEFAULT_HEIGHT_FT["fence"])


def _at_half(site: Site, shape: BaseGeometry, height_ft: float) -> Target:
    middle = shape.centroid
    return Target(shape, ground_at_ft(site, (middle.x, middle.y)) + height_ft / 2)


@lru_cache(maxsize=64)
def screens_for(site: Site, look: Look) -> tuple[Screen, ...]:
    """What of the site may hide one end of a look from the other; neither the ends nor what the eye is in."""
    eye = fixed_eye(site, look.looker)
    return tuple(
        screen
        for name, screen in site_screens(site)
        if name not in (look.looker, look.seen) and not (eye and is_in(eye, screen))
    )


def is_in(eye: Eye, screen: Screen) -> bool:
    """Whether an eye is in what hides, and so looks out of it."""
    return screen.bottom_z_ft < eye.z_ft < screen.top_z_ft and bool(shapely.contains_xy(screen.outline, *eye.at))


def site_screens(site: Site) -> Iterator[tuple[str, Screen]]:
    """Buildings, neighbours, walls and fences from the ground up, and the crowns of evergreen trees."""
    solids: tuple[Building | Surrounding, ...] = (*site.buildings, *site.surroundings)
    for thing in solids:
        if thing.outline is not None:
            yield thing.name, _stood(site, Polygon(thing.outline), thing.height_ft or DEFAULT_HEIGHT_FT["building"])
        elif isinstance(thing, Surrounding) and thing.line is not None:
            for start, end in zip(thing.line, thing.line[1:], strict=False):
                height = thing.height_ft or DEFAULT_HEIGHT_FT["fence"]
                yield thing.name, _stood(site, LineString([start, end]), height)
    for wall, part in walls_for_eyes(site):
        # Each piece stands on its own ground, as one beside a slope would.
        for start, end in pairwise(part.coords):
            yield wall.name, _stood(site, LineString([start, end]), wall_height_ft(wall))
    for tree in site.trees:
        if tree.evergreen:
            crown = shapely.Point(tree.at).buffer(tree.canopy_radius_ft, quad_segs=4)
            height, ground = tree.height_ft or DEFAULT_HEIGHT_FT["tree"], ground_at_ft(site, tree.at)
            yield tree.name, Screen(crown, ground + height, ground + CROWN_BASE * height)


def _stood(site: Site, outline: BaseGeometry, height_ft: float) -> Screen:
    middle = outline.centroid
    return Screen(outline, ground_at_ft(site, (middle.x, middle.y)) + height_ft)


def _moved(at: Point, along: Point) -> Point:
    return (at[0] + along[0] * _OUT_FT, at[1] + along[1] * _OUT_FT)
