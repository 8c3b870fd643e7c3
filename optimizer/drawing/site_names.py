"""Names of what is there, each set only where the plan has room for it: they help, but nothing hangs on them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.free_space import Points, by_distance, centres_within, first_free, union_of
from optimizer.drawing.marks import TYPE_FT, Box, Text
from optimizer.drawing.outlines import moved, polygon_of
from optimizer.drawing.words import short_name
from optimizer.site import Building, KeepOut, Paving, Point, Ring, Site, Structure, Wall

SEARCH_FT = 4.0


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A name, its size, and the area to set it in, best near the goal."""

    text: str
    size_ft: float
    within: Box
    goal: Point


def site_names(
    site: Site, *, taken: Sequence[BaseGeometry], shunned: BaseGeometry, plan_box: Box, scale: float
) -> tuple[Text, ...]:
    """All names that find a free place within the plan, each clear of those before it; on a bed only at need."""
    found: tuple[Text, ...] = ()
    for wanted in _wanted(site, scale):
        within = polygon_of(wanted.within).intersection(polygon_of(plan_box))
        if within.area > 0:
            over = (*taken, union_of(*(text.box for text in found)))
            found += _set(wanted, within.bounds, shunned, *over) or _set(wanted, within.bounds, *over)
    return found


def _set(wanted: _Wanted, within: Box, *taken: BaseGeometry) -> tuple[Text, ...]:
    text = Text("site_name", wanted.goal, wanted.text, wanted.size_ft)
    width, height = text.width_ft + 0.4, text.size_ft * 1.3
    centres: Points = centres_within(within, width_ft=width, height_ft=height, step_ft=0.5)
    centre = first_free(by_distance(centres, wanted.goal), *taken, width_ft=width, height_ft=height)
    return () if centre is None else (Text("site_name", centre, wanted.text, wanted.size_ft),)


def _wanted(site: Site, scale: float) -> Iterator[_Wanted]:
    size = TYPE_FT * scale
    for door in site.doors:
        leaf_ft = 0.0 if door.sliding else door.width_ft
        yield _near(door.name, moved(door.at, door.outward, -(1.0 + size + leaf_ft)), size)
    for window in site.windows:
        yield _near(window.name, moved(window.at, window.outward, -(1.0 + size)), size)
    for entrance in site.entrances:
        yield _near(entrance.name, moved(entrance.at, entrance.inward, 5.0), size)
    for tree in site.trees:
        yield _near(tree.name, moved(tree.at, (0.0, -1.0), 0.45 * tree.canopy_radius_ft), size)
    for wall in site.walls:
        yield _near(wall.name, _beside(wall, size), size)
    kept: tuple[Building | Structure | KeepOut | Paving, ...]
    kept = (*site.buildings, *site.structures, *site.keep_outs, *(p for p in site.paving if p.then != "lift"))
    for thing in kept:
        yield _inside(thing.name, thing.outline, size)
    for neighbour in site.surroundings:
        if neighbour.outline is not None:
            yield _inside(neighbour.name, neighbour.outline, size)


def _near(name: str, goal: Point, size_ft: float) -> _Wanted:
    reach = SEARCH_FT + len(short_name(name)) * size_ft / 2
    box = (goal[0] - reach, goal[1] - SEARCH_FT, goal[0] + reach, goal[1] + SEARCH_FT)
    return _Wanted(short_name(name), size_ft, box, goal)


def _beside(wall: Wall, size_ft: float) -> Point:
    """Where a wall's name stands beside its middle: above it, or to the right of one that runs up the plan."""
    line = LineString(wall.line)
    middle, (x1, y1, x2, y2) = line.interpolate(0.5, normalized=True), line.bounds
    if x2 - x1 >= y2 - y1:
        return (middle.x, middle.y + size_ft)
    return (middle.x + size_ft / 2 + Text("", (0.0, 0.0), short_name(wall.name), size_ft).width_ft / 2, middle.y)


def _inside(name: str, outline: Ring, size_ft: float) -> _Wanted:
    polygon = Polygon(outline)
    middle = polygon.representative_point() if not polygon.contains(polygon.centroid) else polygon.centroid
    return _Wanted(short_name(name), size_ft, polygon.bounds, (middle.x, middle.y))
