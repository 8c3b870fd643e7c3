"""What a section cuts: the ground, houses, fences, rooms at their levels, roofs and trees along a line of the plan."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import cos, hypot, sin
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely import Point as PointShape
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue.sight import eye_height_ft
from optimizer.drawing.heights import foot_and_top, room_levels
from optimizer.drawing.marks import Area, Box, Circle, Line, Mark
from optimizer.drawing.outlines import ring_of_box
from optimizer.drawing.words import level_text
from optimizer.fields import ground_of
from optimizer.fields.site_walls import wall_height_ft, walls_for_eyes
from optimizer.fields.sun import CROWN_BASE, DEFAULT_HEIGHT_FT
from optimizer.layout import Layout, Placed, footprint
from optimizer.scenario import Scenario
from optimizer.site import Building, Point, Site, Surrounding

SLAB_FT: Final = 0.5
"""Depth of a paved room's slab with its base as drawn; common practice, no source."""
POST_FT: Final = 0.5
ROOF_FT: Final = 0.6
"""Thickness of posts and roofs as drawn; common practice, no source."""
STEP_FT: Final = 0.5
EARTH_FT: Final = 4.0
LEAST_FT: Final = 0.05


@dataclass(frozen=True, slots=True)
class Cut:
    """The line on the plan: what lies along it is told by the distance from its start [ft]."""

    site: Site
    start: Point
    end: Point

    @property
    def line(self) -> LineString:
        """The line itself."""
        return LineString([self.start, self.end])

    @property
    def length_ft(self) -> float:
        """Its length [ft]."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    def spans(self, shape: BaseGeometry) -> Iterator[tuple[float, float]]:
        """Stretches of the line within a shape."""
        for part in shapely.get_parts(self.line.intersection(shape)):
            if part.length > LEAST_FT:
                ends = sorted(self.line.project(PointShape(point)) for point in (part.coords[0], part.coords[-1]))
                yield ends[0], ends[1]

    def crossings(self, line: BaseGeometry) -> Iterator[float]:
        """Places at which the line meets another."""
        for part in shapely.get_parts(self.line.intersection(line)):
            if not part.is_empty:
                yield self.line.project(part.centroid)

    def ground(self, *along: float) -> list[float]:
        """Ground at distances along the line [ft above the datum]."""
        points = [self.line.interpolate(distance) for distance in along]
        return [float(z) for z in ground_of(self.site).z_ft([(point.x, point.y) for point in points])]


@dataclass(frozen=True, slots=True)
class Thing:
    """What the section shows of one thing: its marks, and its name over a place."""

    marks: tuple[Mark, ...]
    name: str = ""
    at: Point = (0.0, 0.0)


def earth_marks(cut: Cut, layout: Layout, levels: Mapping[str, float]) -> tuple[Mark, ...]:
    """Draw the earth dug and filled to the rooms' levels, and the line of the ground as it is."""
    spans = [(*span, levels[p.room]) for p in layout.placements for span in cut.spans(footprint(p))]
    edges = [
        end + side for start, stop, _ in spans for end, side in ((start, -1e-6), (start, 0), (stop, 0), (stop, 1e-6))
    ]
    steps = [*np.arange(0.0, cut.length_ft, STEP_FT), cut.length_ft, *edges]
    along = sorted({float(np.clip(step, 0.0, cut.length_ft)) for step in steps})
    ground = cut.ground(*along)
    surface = tuple(
        (s, next((level for start, stop, level in spans if start <= s <= stop), z))
        for s, z in zip(along, ground, strict=True)
    )
    depth = min(*ground, *(z for _, z in surface)) - EARTH_FT
    earth = Area("section_earth", ((*surface, (cut.length_ft, depth), (0.0, depth)),))
    return (earth, Line("section_ground", tuple(zip(along, ground, strict=True))))


def _box_mark(role: str, box: Box) -> Area:
    return Area(role, (ring_of_box(box),))


def around(cut: Cut) -> Iterator[Thing]:
    """Yield houses and neighbours that are cut, walls, fences, and where the boundary is crossed."""
    solids: tuple[Building | Surrounding, ...] = (*cut.site.buildings, *cut.site.surroundings)
    for solid in solids:
        if solid.outline is None:
            continue
        foot, top = foot_and_top(cut.site, solid.outline, solid.height_ft, "building")
        for start, end in cut.spans(Polygon(solid.outline)):
            yield Thing((_box_mark("section_building", (start, foot, end, top)),), solid.name, ((start + end) / 2, top))
    for name, line, height_ft in _fences(cut.site):
        for at in cut.crossings(line):
            foot = cut.ground(at)[0]
            top = foot + height_ft
            yield Thing((Line("section_fence", ((at, foot), (at, top))),), name, (at, top))
    for at in cut.crossings(Polygon(cut.site.boundary).exterior):
        foot = cut.ground(at)[0]
        yield Thing((Line("section_boundary", ((at, foot - EARTH_FT / 2), (at, foot + 1.5))),))


def _fences(site: Site) -> Iterator[tuple[str, LineString, float]]:
    """Name, line and height of every fence of the surroundings and every wall in the yard."""
    for thing in site.surroundings:
        if thing.line:
            yield thing.name, LineString(thing.line), thing.height_ft or DEFAULT_HEIGHT_FT["fence"]
    for wall, part in walls_for_eyes(site):
        yield wall.name, part, wall_height_ft(wall)


def rooms_along(cut: Cut, placed: Placed, levels: Mapping[str, float], scenario: Scenario) -> Iterator[Thing]:
    """Yield slabs at the rooms' levels, with the eyes of who sits or cooks there."""
    known = room_levels(cut.site, placed.layout, levels)
    for room in placed:
        z = known[room.name]
        eye = z + eye_height_ft(room.kind)
        for start, end in cut.spans(footprint(room.placement)):
            middle = (start + end) / 2
            person = (Line("section_person", ((middle, z), (middle, eye))), Circle("section_eye", (middle, eye), 0.4))
            slab = _box_mark("section_room", (start, z - SLAB_FT, end, z))
            yield Thing((slab, *person), f"{room.name} {level_text(z, scenario.units)}", (middle, eye + 0.8))


def standing(cut: Cut) -> Iterator[Thing]:
    """Yield roofs on their posts, and trees whose crown is cut."""
    for structure in cut.site.structures:
        _, top = foot_and_top(cut.site, structure.outline, structure.height_ft, "structure")
        for start, end in cut.spans(Polygon(structure.outline)):
            feet = cut.ground(start, end)
            posts = (
                _box_mark("section_post", (at, foot, at + POST_FT, top))
                for at, foot in zip((start, end - POST_FT), feet, strict=True)
            )
            roof = _box_mark("section_roof", (start, top - ROOF_FT, end, top))
            yield Thing((*posts, roof), structure.name, ((start + end) / 2, top))
    for tree in cut.site.trees:
        for start, end in cut.spans(PointShape(tree.at).buffer(tree.canopy_radius_ft)):
            middle = (start + end) / 2
            foot, height = cut.ground(middle)[0], tree.height_ft or DEFAULT_HEIGHT_FT["tree"]
            crown = _oval(
                middle, foot + height * (1 + CROWN_BASE) / 2, (end - start) / 2, height * (1 - CROWN_BASE) / 2
            )
            half = max(tree.trunk_diameter_ft / 2, 0.3)
            trunk = _box_mark("section_trunk", (middle - half, foot, middle + half, foot + height * 0.5))
            yield Thing((trunk, crown), tree.name, (middle, foot + height))


def _oval(x: float, z: float, half_x: float, half_z: float) -> Area:
    turns = np.linspace(0.0, 2 * np.pi, 48, endpoint=False)
    return Area("section_crown", (tuple((x + half_x * cos(turn), z + half_z * sin(turn)) for turn in turns),))
