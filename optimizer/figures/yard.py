"""The yard in three dimensions: ground, houses, roofs, trees, walls, rooms at their levels, shadows of a moment."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from html import escape
from typing import Final

import numpy as np
import plotly.graph_objects as go
import shapely
from shapely import Point as PointShape
from shapely import Polygon
from shapely.geometry import box
from shapely.geometry.base import BaseGeometry

from optimizer.circulation import Leg, way_polygon
from optimizer.drawing.heights import foot_and_top, room_levels
from optimizer.drawing.words import level_text, moment_text
from optimizer.fields import ground_of, shadows_at, sun_at, with_covers
from optimizer.fields.existing_paving import paved_z_ft, standing_paving
from optimizer.fields.site_walls import wall_height_ft, walls_for_eyes
from optimizer.fields.sun import CROWN_BASE, DEFAULT_HEIGHT_FT, LOWEST_ALTITUDE_DEG
from optimizer.figures.furniture import furnished
from optimizer.figures.held_ground import held_marks, is_held_ground
from optimizer.figures.pools import round_pools
from optimizer.figures.scene import scene_of
from optimizer.figures.solids import DRAPE_FT, Heights, Mesh, ball, curtain, draped, fence, joined, prism
from optimizer.layout import Placed, footprint
from optimizer.scenario import Scenario
from optimizer.site import Ring, Site, Structure, Tree

Shades = dict[float, BaseGeometry]
"""Shadows on the plan by the share of the sun that they hold back."""
SOFT_LIGHT: Final = {
    "ambient": 0.8,
    "diffuse": 0.35,
    "specular": 0.02,
    "fresnel": 0.0,
    # Else the faces of a chair are too small in a yard to have a direction, and stay grey.
    "facenormalsepsilon": 0,
    "vertexnormalsepsilon": 0,
}
EVEN_LIGHT: Final = {"ambient": 1.0, "diffuse": 0.0, "specular": 0.0, "fresnel": 0.0}
"""Ground and floors keep their colours: what light falls on them is told by the shadows."""
COLOURS: Final[dict[str, str]] = {
    "ground": "#d9dfc3",
    "building": "#cfc8bc",
    "neighbour": "#e3dfd6",
    "roof": "#8d7f70",
    "trunk": "#6b5640",
    "crown": "#8fab6d",
    "fence": "#a08d72",
    "wall": "#b3a794",
    "dug": "#a98f6f",
    "way": "#d8cbb3",
    "there": "#c4c1ba",
    "furniture": "#f3ead8",
    "water": "#6aa9bf",
}
ROOM_COLOURS: Final[dict[str, str]] = {
    "gathering": "#e6c98d",
    "kitchen": "#cf9f6a",
    "fire": "#dd9468",
    "nook": "#c3c98f",
    "pool": "#e0d3bd",
    "reserve": "#d3d8c4",
    "lawn": "#b9d08f",
    "bed": "#a5bd82",
}
OTHER_ROOM: Final = "#d8ccb8"
POST_FT: Final = 0.5
ROOF_FT: Final = 0.6
SLAB_FT: Final = 0.5
WATER_BELOW_FT: Final = 0.4  # below the deck
"""Sizes as drawn; common practice, no source."""
SHADOW_SHARE: Final = 0.6
"""How much darker ground is on which no sun falls."""


def yard_3d(
    scenario: Scenario,
    placed: Placed,
    levels: Mapping[str, float],
    when: datetime | None,
    *,
    legs: Sequence[Leg] = (),
) -> go.Figure:
    """Build the yard as a figure that can be turned; heights are true, in feet above the file's datum.

    `levels` are the rooms' levels [ft], the mean ground where one is missing; `when` is a moment of the yard's own
    clock whose shadows lie on the ground, None for none; `legs` are the paved ways.
    """
    site = with_covers(scenario.site, placed)
    layout, ground = placed.layout, ground_of(site).z_ft
    shades = _by_share(shadows_at(site, when)) if when else {}
    floors = shapely.union_all([footprint(placement) for placement in layout.placements])
    paved = way_polygon(site, placed, legs)
    yard, there = Polygon(site.boundary), standing_paving(site, placed.shapes)
    known = room_levels(site, layout, levels)
    traces = [
        *_covers(yard.difference(floors | paved | there), shades, ground, "ground", COLOURS["ground"]),
        *_covers(there, shades, lambda points: paved_z_ft(site, points), "paving that stays", COLOURS["there"]),
        *_covers(paved, shades, ground, "ways", COLOURS["way"]),
        *_solids(site, ground),
        *_rooms(scenario, placed, known, ground, shades),
        *_held_grounds(placed, ground, shades),
        *(_trace(mesh, name, COLOURS["furniture"]) for name, mesh in furnished(scenario, placed, known)),
        *(_trace(mesh, name, COLOURS["fence"]) for name, mesh in round_pools(site, placed, paved, ground)),
    ]
    figure = go.Figure(traces)
    words = f"{scenario.name}: {_moment(site, when)}" if when else scenario.name
    figure.update_layout(
        title=escape(words), showlegend=False, margin={"l": 0, "r": 0, "t": 40, "b": 0}, scene=scene_of(site, layout)
    )
    return figure


def _moment(site: Site, when: datetime) -> str:
    is_night = sun_at(site.place, when)[0] <= LOWEST_ALTITUDE_DEG
    return f"{moment_text(when)}{', the sun is down' if is_night else ''}"


def _by_share(shades: Sequence[tuple[BaseGeometry, float]]) -> Shades:
    """All shadows that hold back the same share of the sun, as one."""
    return {held: shapely.union_all([shape for shape, share in shades if share == held]) for _, held in shades}


def _lit(area: BaseGeometry, shades: Shades) -> dict[float, BaseGeometry]:
    """Parts of an area by the share of the sun that reaches them: shadows one over another multiply."""
    parts: dict[float, BaseGeometry] = {1.0: area}
    for held, shadow in shades.items():
        split: dict[float, list[BaseGeometry]] = {}
        for lit, part in parts.items():
            split.setdefault(lit, []).append(part.difference(shadow))
            split.setdefault(round(lit * (1 - held), 6), []).append(part.intersection(shadow))
        parts = {lit: shapely.union_all(pieces) for lit, pieces in split.items()}
    return {lit: part for lit, part in parts.items() if part.area > 1e-6}


def _covers(
    area: BaseGeometry, shades: Shades, heights: Heights, name: str, colour: str, *, words: str = ""
) -> Iterator[go.Mesh3d]:
    """An area in its colour, darker where less sun falls: side by side, since one over another would flicker."""
    for lit, part in _lit(area, shades).items():
        dark = 1 - SHADOW_SHARE * (1 - lit)
        told = f"{words or name}{'' if lit == 1.0 else ', in shadow'}"
        yield _trace(
            draped(part, heights),
            name if lit == 1.0 else f"{name}, shadow",
            _darker(colour, dark),
            is_cover=True,
            words=told,
        )


def _darker(colour: str, share: float) -> str:
    parts = (round(int(colour[i : i + 2], 16) * share) for i in (1, 3, 5))
    return "#" + "".join(f"{part:02x}" for part in parts)


def _trace(
    mesh: Mesh, name: str, colour: str, *, is_round: bool = False, is_cover: bool = False, words: str = ""
) -> go.Mesh3d:
    (x, y, z), (i, j, k) = mesh.corners.T.round(3), mesh.triangles.T
    return go.Mesh3d(
        x=x,
        y=y,
        z=z,
        i=i,
        j=j,
        k=k,
        name=name,
        color=colour,
        flatshading=not is_round,
        hovertext=escape(words or name),
        hoverinfo="text",
        lighting=EVEN_LIGHT if is_cover else SOFT_LIGHT,
        lightposition={"x": -2000, "y": -3000, "z": 6000},
    )


def _solids(site: Site, ground: Heights) -> Iterator[go.Mesh3d]:
    for building in site.buildings:
        yield _trace(_house(site, building.outline, building.height_ft), building.name, COLOURS["building"])
    for thing in site.surroundings:
        if thing.outline is not None:
            yield _trace(_house(site, thing.outline, thing.height_ft), thing.name, COLOURS["neighbour"])
        if thing.line is not None:
            height = thing.height_ft or DEFAULT_HEIGHT_FT["fence"]
            yield _trace(fence(thing.line, height, ground), thing.name, COLOURS["fence"])
    for wall, part in walls_for_eyes(site):
        mesh = fence(tuple(part.coords), wall_height_ft(wall), ground)
        yield _trace(mesh, wall.name, COLOURS["crown" if wall.kind == "hedge" else wall.kind])
    for structure in site.structures:
        yield _trace(_roof(site, structure), structure.name, COLOURS["roof"])
    for tree in site.trees:
        trunk, crown = _tree(tree, ground)
        yield _trace(trunk, f"{tree.name}, trunk", COLOURS["trunk"])
        yield _trace(crown, tree.name, COLOURS["crown"], is_round=True)


def _house(site: Site, outline: Ring, height_ft: float | None) -> Mesh:
    return prism(Polygon(outline), *foot_and_top(site, outline, height_ft, "building"))


def _roof(site: Site, structure: Structure) -> Mesh:
    outline, feet = Polygon(structure.outline), ground_of(site).z_ft(structure.outline)
    _, top = foot_and_top(site, structure.outline, structure.height_ft, "structure")
    posts = [
        prism(box(x - POST_FT / 2, y - POST_FT / 2, x + POST_FT / 2, y + POST_FT / 2), float(foot), top)
        for (x, y), foot in zip(structure.outline, feet, strict=True)
    ]
    return joined([prism(outline, top - ROOF_FT, top), *posts])


def _tree(tree: Tree, ground: Heights) -> tuple[Mesh, Mesh]:
    foot, height = float(ground(np.array([tree.at]))[0]), tree.height_ft or DEFAULT_HEIGHT_FT["tree"]
    trunk = PointShape(tree.at).buffer(max(tree.trunk_diameter_ft / 2, 0.3), quad_segs=3)
    crown = ball(tree.at, foot + CROWN_BASE * height, foot + height, tree.canopy_radius_ft)
    return prism(trunk, foot, foot + height / 2), crown


def _rooms(
    scenario: Scenario, placed: Placed, levels: Mapping[str, float], ground: Heights, shades: Shades
) -> Iterator[go.Mesh3d]:
    """Yield floors at their levels, and the earth's edge beside each, dug or filled; of held ground nothing."""
    for room in placed:
        if is_held_ground(room):
            continue
        floor, level = footprint(room.placement), levels[room.name]
        colour = ROOM_COLOURS.get(room.kind, OTHER_ROOM)
        words = f"{room.placement.title}, level {level_text(level, scenario.units)} {scenario.units}"
        wet = room.water if room.rules.has_deck else Polygon()
        yield from _covers(floor.difference(wet), shades, _at(level), room.name, colour, words=words)
        yield from _covers(wet, shades, _at(level - WATER_BELOW_FT), f"{room.name}, water", COLOURS["water"])
        yield _trace(_edge(floor, level, ground), f"{room.name}, edge", COLOURS["dug"])


def _held_grounds(placed: Placed, ground: Heights, shades: Shades) -> Iterator[go.Mesh3d | go.Scatter3d]:
    for room in placed:
        if is_held_ground(room):
            words, colour = f"{room.name}, kept free for later", ROOM_COLOURS["reserve"]
            yield from _covers(footprint(room.placement), shades, ground, room.name, colour, words=words)
            yield from held_marks(room.name, footprint(room.placement), ground)


def _at(level_ft: float) -> Heights:
    return lambda points: np.full(len(points), level_ft)


def _edge(floor: Polygon, level_ft: float, ground: Heights) -> Mesh:
    """Skin between a floor and the ground round it, at least as deep as the slab."""
    outline = shapely.get_coordinates(shapely.segmentize(floor.exterior, DRAPE_FT))
    around = ground(outline)
    return curtain(outline, np.minimum(around, level_ft - SLAB_FT), np.maximum(around, level_ft))
