"""Where a room stands, in the words of somebody who knows the yard: doors, trees, walls, structures and edges."""

from typing import Final

import shapely
from shapely import Point, Polygon

from optimizer.fields import site_shapes
from optimizer.fields.existing_paving import slab_under
from optimizer.layout import Placement, footprint, outline
from optimizer.site import Door, Site

AT_DOOR_FT: Final = 8.0
"""A room so near to a door, and in front of it, is outside that door; all five are common practice, no source."""
BESIDE_FT: Final = 6.0
ALONG_A_WALL_FT: Final = 4.0
BY_A_CROWN_FT: Final = 4.0
BY_AN_EDGE_FT: Final = 15.0
OUT_IN_THE_GARDEN: Final = "out in the garden"


def whereabouts(placement: Placement, site: Site) -> str:
    """Words such as "outside the kitchen door" or "by the red oak": the first thing that tells where it is."""
    ground = footprint(placement)
    found = (
        _under(ground, site),
        _on_a_slab(ground, site),
        _at_a_door(ground, site),
        _beside_a_structure(ground, site),
        _by_a_tree(ground, site),
        _along_a_wall(ground, site),
        _at_a_building(ground, site),
        _along_an_edge(ground, site),
    )
    return next((words for words in found if words), OUT_IN_THE_GARDEN)


def off_house_ft(placement: Placement, site: Site) -> float:
    """Distance from the nearest building [ft]; 0 where there is none."""
    return min((footprint(placement).distance(shape) for shape in site_shapes(site).buildings), default=0.0)


def nearest_edge(placement: Placement, site: Site) -> str:
    """Name of the boundary's edge that the room lies nearest to."""
    return min(_edges_ft(footprint(placement), site))[1]


def _under(ground: Polygon, site: Site) -> str | None:
    for structure in site.structures:
        if ground.intersection(outline(structure.outline)).area >= ground.area / 2:
            return f"under the {structure.name}"
    return None


def _on_a_slab(ground: Polygon, site: Site) -> str | None:
    slab = slab_under(site, ground)
    return f"on the {slab.name}" if slab else None


def _at_a_door(ground: Polygon, site: Site) -> str | None:
    near = [(away, door.name) for door in site.doors if (away := _ahead_ft(ground, door)) <= AT_DOOR_FT]
    return f"outside the {min(near)[1]}" if near else None


def _ahead_ft(ground: Polygon, door: Door) -> float:
    """Distance of a room from a door [ft]; infinite where it does not lie in front of it."""
    (x, y), (out_x, out_y) = door.at, door.outward
    ahead = Point(x + out_x * AT_DOOR_FT, y + out_y * AT_DOOR_FT)
    is_ahead = ground.distance(ahead) < ground.distance(Point(x - out_x, y - out_y))
    return float(ground.distance(Point(x, y))) if is_ahead else float("inf")


def _beside_a_structure(ground: Polygon, site: Site) -> str | None:
    near = [(ground.distance(outline(s.outline)), s.name) for s in site.structures]
    return f"beside the {min(near)[1]}" if near and min(near)[0] <= BESIDE_FT else None


def _by_a_tree(ground: Polygon, site: Site) -> str | None:
    near = [(ground.distance(Point(tree.at)) - tree.canopy_radius_ft, tree.name) for tree in site.trees]
    return f"by the {min(near)[1]}" if near and min(near)[0] <= BY_A_CROWN_FT else None


def _along_a_wall(ground: Polygon, site: Site) -> str | None:
    near = [(ground.distance(shapely.LineString(wall.line)), wall.name) for wall in site.walls]
    return f"along the {min(near)[1]}" if near and min(near)[0] <= ALONG_A_WALL_FT else None


def _at_a_building(ground: Polygon, site: Site) -> str | None:
    near = [(ground.distance(outline(building.outline)), building.name) for building in site.buildings]
    return f"beside the {min(near)[1]}" if near and min(near)[0] <= BESIDE_FT else None


def _along_an_edge(ground: Polygon, site: Site) -> str | None:
    away, name = min(_edges_ft(ground, site))
    return f"towards the {name}" if away <= BY_AN_EDGE_FT and not name.startswith("edge ") else None


def _edges_ft(ground: Polygon, site: Site) -> list[tuple[float, str]]:
    """Distance and name of every edge of the boundary."""
    corners = [*site.boundary, site.boundary[0]]
    sides = (shapely.LineString(corners[n : n + 2]) for n in range(len(site.boundary)))
    return [(float(ground.distance(side)), name) for side, name in zip(sides, site.edge_names, strict=True)]
