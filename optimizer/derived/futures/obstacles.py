"""What stands in the way of a vehicle on a layout, and what it may drive over."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import shapely
from shapely import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import Surface
from optimizer.catalogue.heights import DEFAULT_HEIGHT_FT
from optimizer.catalogue.sides import side_of_item
from optimizer.derived.boxes import box_along
from optimizer.fields import site_shapes
from optimizer.fields.existing_paving import standing_paving
from optimizer.fields.site_walls import HALF_FT, standing_parts
from optimizer.grading import Flight, Grading
from optimizer.layout import Placed, PlacedRoom, areas_only
from optimizer.planting import Planting
from optimizer.site import Site, Structure
from optimizer.site import Surface as PavingSurface

_POST_FT: Final = 0.5  # half the side of a post with its base; common practice, no source
_TRUNK_FT: Final = 1.0  # common practice, no source: nothing is driven closer to a trunk
_WALL_FT: Final = 0.5  # half the thickness of a retaining wall; common practice, no source
_SOFT: Final = frozenset({"lawn", "bed", "reserve"})
"""Kinds of rooms that are ground and nothing else."""
_LIFTED: Final = frozenset({"gathering", "arrival", "nook"})
"""Kinds whose paving is taken up and laid again, where nothing is built along their sides."""

_SURFACE_OF: Final[dict[PavingSurface, Surface]] = {
    "asphalt": "hard paving",
    "concrete": "hard paving",
    "gravel": "gravel",
    "brick": "pavers",
    "pavers": "pavers",
    "stone": "pavers",
}


@dataclass(frozen=True, slots=True, eq=False)
class PhaseOne:
    """What is on the yard once phase 1 is built: rooms, steps, walls, planting, and paved ground of ways [ft]."""

    site: Site
    placed: Placed
    grading: Grading
    planting: Planting
    paths: BaseGeometry


@dataclass(frozen=True, slots=True, eq=False)
class Obstacle:
    """Ground that a vehicle keeps off [ft], by the name that the owner knows."""

    name: str
    ground: BaseGeometry


def obstacles(built: PhaseOne, height_ft: float) -> Iterator[Obstacle]:
    """All that a vehicle so high drives round: what stands on the site, and what phase 1 builds to last."""
    yield from on_site(built.site, height_ft)
    yield from (Obstacle(room.name, ground) for room in built.placed for ground in _built(room))
    yield from of_levels(built.grading)


def on_site(site: Site, height_ft: float) -> Iterator[Obstacle]:
    """What stands on the site already. Gates of walls stand open to a vehicle. Crowns of trees are no obstacle: an
    arborist lifts them.
    """
    shapes = site_shapes(site)
    for building, ground in zip(site.buildings, shapes.buildings, strict=True):
        yield Obstacle(building.name, ground)
    for area, ground in zip(site.keep_outs, shapes.keep_outs, strict=True):
        if "access" not in area.allow:
            yield Obstacle(area.name, ground)
    yield from (Obstacle(f"steps at the {door.name}", zone) for door, zone in shapes.door_zones)
    yield from (
        Obstacle(tree.name, Point(tree.at).buffer(max(_TRUNK_FT, tree.trunk_diameter_ft))) for tree in site.trees
    )
    yield from (Obstacle(structure.name, under_roof(structure, height_ft)) for structure in site.structures)
    yield from _walls(site)


def surfaces(built: PhaseOne) -> dict[Surface, BaseGeometry]:
    """What a vehicle may drive over, by what it is; all that is in none of them is lawn [ft]."""
    rooms, standing = built.placed, standing_paving(built.site, built.placed.shapes)
    there: dict[Surface, list[BaseGeometry]] = {"hard paving": [], "gravel": [], "pavers": [built.paths], "bed": []}
    for paving in built.site.paving:
        there[_SURFACE_OF[paving.surface]].append(Polygon(paving.outline).intersection(standing))
    there["pavers"] += [room.shape for room in rooms if room.kind in _LIFTED and room.phase == 1]
    there["bed"] += [bed.outline for bed in built.planting.beds]
    there["bed"] += [room.shape for room in rooms.of_kind("bed")]
    return {surface: areas_only(shapely.union_all(grounds)) for surface, grounds in there.items()}


def under_roof(structure: Structure, height_ft: float) -> BaseGeometry:
    """Posts, and all ground under a roof that is too low for a vehicle so high [ft]."""
    posts = [Point(corner).buffer(_POST_FT, cap_style="square") for corner in structure.outline]
    high_ft = DEFAULT_HEIGHT_FT["structure"] if structure.height_ft is None else structure.height_ft
    return shapely.union_all([*posts, *([Polygon(structure.outline)] if high_ft < height_ft else [])])


def _walls(site: Site) -> Iterator[Obstacle]:
    for wall in site.walls:
        parts = [part.buffer(HALF_FT, cap_style="flat", join_style="mitre") for part in standing_parts(wall)]
        yield Obstacle(wall.name, shapely.union_all(parts))


def _built(room: PlacedRoom) -> Iterator[BaseGeometry]:
    """What of a room of phase 1 is there to last: nothing of lawn and beds; of paving that can be lifted what is built
    along its sides, if it has no roof or screen; all of any other room.
    """
    if room.phase > 1 or room.kind in _SOFT:
        return
    has_more = room.choice is not None and (room.choice.cover is not None or room.choice.is_screened)
    if room.kind in _LIFTED and not has_more:
        sides = [ground for item, ground in room.furniture if (s := side_of_item(room.kind, item)) and s.name != "bed"]
        yield from ([shapely.union_all(sides)] if sides else [])
    else:
        yield room.shape


def of_levels(grading: Grading) -> Iterator[Obstacle]:
    """Steps on ways and between rooms, and retaining walls."""
    for flight in grading.flights:
        yield Obstacle(f"steps from {flight.between[0]} to {flight.between[1]}", _flight(flight))
    for wall in grading.walls:
        yield Obstacle(f"retaining wall of the {wall.room}", LineString(wall.line).buffer(_WALL_FT, cap_style="flat"))


def _flight(flight: Flight) -> Polygon:
    """Ground of a flight, down from the edge of its top riser [ft]."""
    deep_ft = max(1, flight.risers - 1) * flight.tread_in / 12
    return box_along(flight.at, flight.going, flight.width_ft, -deep_ft, 0.0)
