"""Doors with their landing and steps, windows and entrances."""

from functools import lru_cache
from math import cos, pi, sin

from shapely import Polygon

from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.outlines import along_wall, areas_of, moved
from optimizer.fields import door_zone
from optimizer.site import Door, Entrance, Point, Site, Window

LANDING_FT = 4.0
TREAD_FT = 14 / 12
"""Landing and treads as the door zone counts them; common practice, no source."""
SWING_STEPS = 8


@lru_cache(maxsize=8)
def door_zones(site: Site) -> tuple[Polygon, ...]:
    """Landing and steps in front of every door, in the order of `site.doors`."""
    return tuple(door_zone(site, building, door) for building in site.buildings for door in building.doors)


@lru_cache(maxsize=8)
def door_zone_marks(site: Site) -> tuple[Mark, ...]:
    """Landing and treads in front of every door."""
    return tuple(
        mark
        for door, zone in zip(site.doors, door_zones(site), strict=True)
        for mark in (*areas_of("door_zone", zone), *_treads(door, zone))
    )


def _treads(door: Door, zone: Polygon) -> tuple[Mark, ...]:
    """Draw the edge of the landing and of each tread, as far out as the zone reaches."""
    (x, y), (ox, oy) = door.at, door.outward
    depth_ft = max((corner_x - x) * ox + (corner_y - y) * oy for corner_x, corner_y in zone.exterior.coords)
    edges = (LANDING_FT + tread * TREAD_FT for tread in range(round((depth_ft - LANDING_FT) / TREAD_FT)))
    return tuple(
        Line("step", along_wall(moved(door.at, door.outward, edge), door.outward, door.width_ft + 2.0))
        for edge in edges
    )


def door_marks(door: Door) -> tuple[Mark, ...]:
    """Draw the opening, with a leaf and its swing into the house, or with two panels that slide."""
    jambs = along_wall(door.at, door.outward, door.width_ft)
    return (Line("door_gap", jambs), *(_panels(door) if door.sliding else _leaf(door, jambs)))


def _panels(door: Door) -> tuple[Mark, ...]:
    left, right = along_wall(door.at, door.outward, door.width_ft)
    middle = door.at
    return (
        Line("door", (moved(left, door.outward, 0.15), moved(middle, door.outward, 0.15))),
        Line("door", (moved(middle, door.outward, -0.15), moved(right, door.outward, -0.15))),
    )


def _leaf(door: Door, jambs: tuple[Point, Point]) -> tuple[Mark, ...]:
    hinge, latch = jambs
    inward = (-door.outward[0], -door.outward[1])
    across = ((latch[0] - hinge[0]) / door.width_ft, (latch[1] - hinge[1]) / door.width_ft)
    turns = [pi / 2 * step / SWING_STEPS for step in range(SWING_STEPS + 1)]
    arc = tuple(
        moved(moved(hinge, across, door.width_ft * cos(turn)), inward, door.width_ft * sin(turn)) for turn in turns
    )
    return (Line("door", (hinge, arc[-1])), Line("swing", arc))


def window_marks(window: Window) -> tuple[Mark, ...]:
    """Draw the opening in the wall and its pane."""
    jambs = along_wall(window.at, window.outward, window.width_ft)
    return (Line("window_gap", jambs), Line("window", jambs))


def entrance_marks(entrance: Entrance) -> tuple[Mark, ...]:
    """Draw the gap in the boundary and an arrowhead into the yard."""
    jambs = along_wall(entrance.at, entrance.inward, entrance.width_ft)
    foot = along_wall(moved(entrance.at, entrance.inward, 1.0), entrance.inward, 2.4)
    return (Line("entrance_gap", jambs), Area("entrance", ((*foot, moved(entrance.at, entrance.inward, 3.4)),)))
