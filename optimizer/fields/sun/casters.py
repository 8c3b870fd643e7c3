"""What throws a shadow: upright prisms for buildings, roofs, walls, fences and trunks, balls for crowns."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry, LineString, Polygon
from shapely import Point as PointShape

from optimizer.catalogue.data_files import data
from optimizer.catalogue.heights import DEFAULT_HEIGHT_FT
from optimizer.fields.ground import ground_at_ft, ground_of
from optimizer.fields.site_walls import wall_height_ft, walls_for_eyes
from optimizer.site import Point, Ring, Site, Structure, Surrounding, Tree

CROWN_BASE: Final = 0.3
"""Height of a crown's foot as a share of the tree's height; common practice, no source."""
PANEL_FT: Final = 10.0
"""On sloping ground a fence steps down in panels of about this length; common practice, no source."""
_SAMPLE_FT: Final = 5.0


@dataclass(frozen=True, slots=True)
class Caster:
    """Something that throws a shadow: an outline or line from `low_ft` to `high_ft`, holding back a share of the sun.

    Heights are above the file's datum, as the ground's are.
    """

    outline: Geometry
    low_ft: float
    high_ft: float
    share: float


@dataclass(frozen=True, slots=True)
class Ball:
    """A crown that throws a shadow: a ball round a plan point, drawn out from `low_ft` to `high_ft`; as `Caster`."""

    at: Point
    radius_ft: float
    low_ft: float
    high_ft: float
    share: float


def cover_caster(outline: Ring, z_ft: float, share: float) -> Caster:
    """A flat roof at `z_ft` above the file's datum that holds back a share of the sun, 0 to 1."""
    return Caster(Polygon(outline), z_ft, z_ft, share)


@lru_cache(maxsize=256)
def casters_of(site: Site, month: int) -> tuple[Caster | Ball, ...]:
    """Everything on and around the site that throws a shadow in a month, 1 to 12."""
    found: list[Caster | Ball] = [_block(site, Polygon(b.outline), b.height_ft) for b in site.buildings]
    found += [_roof(site, structure) for structure in site.structures]
    found += [part for tree in site.trees for part in _tree(site, tree, month)]
    found += [panel for wall, part in walls_for_eyes(site) for panel in _panels(site, part, wall_height_ft(wall))]
    found += [caster for thing in site.surroundings for caster in _beyond(site, thing)]
    return tuple(caster for caster in found if caster.share > 0)


def in_leaf(latitude: float, month: int) -> bool:
    """Whether trees that shed their leaves bear them in a month, 1 to 12; the south is six months behind."""
    northern = month if latitude >= 0 else (month + 5) % 12 + 1
    return northern in data("trees.yaml")["leaf_months"]


def _block(site: Site, outline: Polygon, height_ft: float | None) -> Caster:
    """A closed building, from the lowest ground at its walls to its height above their mean."""
    ground = _ground_at(site, outline)
    top_ft = float(ground.mean()) + _height(height_ft, "building")
    return Caster(outline, float(ground.min()), top_ft, 1.0)


def _roof(site: Site, structure: Structure) -> Caster:
    roof_ft = float(_ground_at(site, Polygon(structure.outline)).mean()) + _height(structure.height_ft, "structure")
    return cover_caster(structure.outline, roof_ft, structure.shade)


def _tree(site: Site, tree: Tree, month: int) -> tuple[Caster, Ball]:
    """Trunk and crown."""
    leafy = tree.evergreen or in_leaf(site.place.latitude, month)
    foot_ft = ground_at_ft(site, tree.at)
    height_ft = _height(tree.height_ft, "tree")
    crown_ft = foot_ft + CROWN_BASE * height_ft
    trunk = PointShape(tree.at).buffer(tree.trunk_diameter_ft / 2, quad_segs=2)
    share = float(data("trees.yaml")["held_back"]["in_leaf" if leafy else "bare"])
    crown = Ball(tree.at, tree.canopy_radius_ft, crown_ft, foot_ft + height_ft, share)
    return Caster(trunk, foot_ft, crown_ft, 1.0), crown


def _beyond(site: Site, thing: Surrounding) -> Iterator[Caster]:
    """A neighbour's building, or a fence; an eye throws no shadow."""
    if thing.outline is not None:
        yield _block(site, Polygon(thing.outline), thing.height_ft)
    elif thing.line is not None:
        yield from _panels(site, LineString(thing.line), _height(thing.height_ft, "fence"))


def _panels(site: Site, line: LineString, height_ft: float) -> Iterator[Caster]:
    """A wall or fence; on sloping ground it steps down in panels."""
    corners = shapely.get_coordinates(shapely.segmentize(line, PANEL_FT) if site.levels else line)
    feet = ground_of(site).z_ft(corners)
    for ends, foot in zip(pairwise(corners), pairwise(feet), strict=True):
        yield Caster(LineString(ends), min(foot), sum(foot) / 2 + height_ft, 1.0)


def _ground_at(site: Site, outline: Polygon) -> NDArray[np.float64]:
    """Ground along an outline [ft]."""
    edge = shapely.segmentize(outline.exterior, _SAMPLE_FT)
    return ground_of(site).z_ft(shapely.get_coordinates(edge)[:-1])


def _height(given_ft: float | None, kind: str) -> float:
    return DEFAULT_HEIGHT_FT[kind] if given_ft is None else given_ft
