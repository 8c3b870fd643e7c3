"""From where a figure of the yard is seen."""

from math import atan2, cos, pi, radians, sin
from typing import Final

import shapely
from shapely import Point, Polygon

from optimizer.layout import Layout, footprint
from optimizer.site import Site

SIDEWAYS: Final = radians(25)
"""The eye stands this far beside the line from the house over the rooms."""
EYE: Final = 1.5
"""How far away the eye stands, in the figure's own measure."""


def scene_of(site: Site, layout: Layout) -> dict[str, object]:
    """One scale on all axes, no frame; seen over the rooms towards the house, which would hide them otherwise."""
    turn = _view_from(site, layout)
    eye = {"x": EYE * cos(turn), "y": EYE * sin(turn), "z": 0.8}
    centre = {"x": 0.0, "y": 0.0, "z": -0.4}
    hidden = {"visible": False}
    return {
        "aspectmode": "data",
        "xaxis": hidden,
        "yaxis": hidden,
        "zaxis": hidden,
        "camera": {"eye": eye, "center": centre},
    }


def _view_from(site: Site, layout: Layout) -> float:
    """Direction from the house over the rooms [rad], a little to the side on which no neighbour is in the way."""
    houses = shapely.union_all([Polygon(building.outline) for building in site.buildings])
    rooms = shapely.union_all([footprint(placement) for placement in layout.placements])
    ahead = pi / 2 if houses.is_empty or rooms.is_empty else _direction(houses.centroid, rooms.centroid)
    yard = Polygon(site.boundary).centroid
    beside = [_direction(yard, Polygon(thing.outline).centroid) for thing in site.surroundings if thing.outline]
    return min(
        (ahead + SIDEWAYS, ahead - SIDEWAYS), key=lambda turn: max([cos(turn - other) for other in beside] + [-2.0])
    )


def _direction(start: Point, end: Point) -> float:
    return atan2(end.y - start.y, end.x - start.x)
