"""Geometry of the site as cells: what a thing covers, and what lies within a distance of it."""

import itertools
from functools import lru_cache

import numpy as np
import shapely
from shapely import Geometry

from optimizer.engine.grid.lattice import Cells, Lattice, any_in_window, shifted, window_sums

COVERED_SQFT = 1e-3
NEAR_SLACK_FT = 1e-6
_ASKEW = 0.06  # a wall that leans so far from a grid line, as surveyed walls do, runs along it


@lru_cache(maxsize=256)
def covered(lattice: Lattice, geometry: Geometry) -> Cells:
    """Cells that share area with the geometry."""
    boxes = lattice.boxes()
    shapely.prepare(geometry)
    result = np.asarray(shapely.covers(geometry, boxes), dtype=bool)
    cut = shapely.intersects(geometry, boxes) & ~result
    result[cut] = shapely.area(shapely.intersection(boxes[cut], geometry)) > COVERED_SQFT
    return result


@lru_cache(maxsize=256)
def within(lattice: Lattice, geometry: Geometry, distance_ft: float) -> Cells:
    """Cells of which some part lies closer to the geometry than the distance.

    A room is the union of its cells, so a room keeps the distance exactly if none of its cells is among them.
    """
    if distance_ft <= 0:
        return np.zeros((lattice.rows, lattice.columns), dtype=bool)
    shapely.prepare(geometry)
    return np.asarray(shapely.dwithin(geometry, lattice.boxes(), distance_ft - NEAR_SLACK_FT), dtype=bool)


def flush_or_clear(
    lattice: Lattice, outline: Geometry, *, width: int, depth: int, gap_ft: float, built_up_ft: float = 0.0
) -> Cells:
    """Positions of a room that stand clear of a building by the gap, or flush with its wall and with no sliver left.

    Walls that lie on no grid line cannot be flush with a room on the grid: the room keeps the gap in front of them. One
    that is paved up to walls so far off may stand on the grid line before a wall that runs nearly along it.
    """
    cells = covered(lattice, outline)
    clear = ~any_in_window(within(lattice, outline, gap_ft), width=width, depth=depth)
    reach = lattice.need(gap_ft)
    edge = shared_edge(cells, width=width, depth=depth)
    sliver = _slivers(cells, width=width, depth=depth, reach=reach)
    crooked = any_in_window(_before_crooked_walls(lattice, outline, gap_ft, lean=0.0), width=width, depth=depth)
    if lattice.step_ft <= built_up_ft:
        # Of a wall that leans the cells at both ends may be covered in part.
        slanted = any_in_window(_before_crooked_walls(lattice, outline, gap_ft, lean=_ASKEW), width=width, depth=depth)
        crooked &= slanted | (edge < reach + 2)
    return clear | ((edge >= reach) & ~sliver & ~crooked)


def shared_edge(cells: Cells, *, width: int, depth: int) -> np.ndarray:
    """Longest edge, in steps, that a room at each position shares with covered cells on one of its sides."""
    result = np.zeros(cells.shape)
    for row, column, along_x in ((-1, 0, True), (depth, 0, True), (0, -1, False), (0, width, False)):
        beside = shifted(cells, right=column, up=row, fill=False)
        sums = window_sums(beside, width=width, depth=1) if along_x else window_sums(beside, width=1, depth=depth)
        result[: sums.shape[0], : sums.shape[1]] = np.maximum(result[: sums.shape[0], : sums.shape[1]], sums)
    return result


def _slivers(cells: Cells, *, width: int, depth: int, reach: int) -> Cells:
    """Positions where a ray from some side meets the building after a free gap narrower than `reach` steps."""
    result = np.zeros_like(cells)
    for dx, dy in ((0, 1), (0, -1), (1, 0), (-1, 0)):
        soon = np.zeros_like(cells)
        for steps in range(1, reach):
            soon |= shifted(cells, right=dx * steps, up=dy * steps, fill=False)
        first = ~cells & soon
        away = shifted(
            first,
            right=width if dx > 0 else -1 if dx < 0 else 0,
            up=depth if dy > 0 else -1 if dy < 0 else 0,
            fill=False,
        )
        result |= any_in_window(away, width=width if dy else 1, depth=depth if dx else 1)
    return result


@lru_cache(maxsize=64)
def _before_crooked_walls(lattice: Lattice, outline: Geometry, gap_ft: float, *, lean: float) -> Cells:
    """Cells in front of, and closer than the gap to, walls on no grid line that do not lean less than given."""
    result = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    for polygon in getattr(outline, "geoms", [outline]):
        ring = list(shapely.get_coordinates(shapely.orient_polygons(polygon).exterior))
        for start, end in itertools.pairwise(ring):
            if not (_on_grid(lattice, start, end) or _leans_less(start, end, lean)):
                wall = shapely.LineString([start, end])
                result |= within(lattice, wall, gap_ft) & _in_front(lattice, start, end)
    return result


def _on_grid(lattice: Lattice, start: np.ndarray, end: np.ndarray) -> bool:
    if abs(start[0] - end[0]) <= NEAR_SLACK_FT * 100:
        return lattice.line(float(start[0]), origin_ft=lattice.x0_ft) is not None
    if abs(start[1] - end[1]) <= NEAR_SLACK_FT * 100:
        return lattice.line(float(start[1]), origin_ft=lattice.y0_ft) is not None
    return False


def _leans_less(start: np.ndarray, end: np.ndarray, lean: float) -> bool:
    short, long = np.sort(np.abs(end - start))
    return bool(short < lean * long)


def _in_front(lattice: Lattice, start: np.ndarray, end: np.ndarray) -> Cells:
    """Cells of which some corner lies outside the wall's line, seen from a counter-clockwise outline."""
    direction = end - start
    corners = shapely.get_coordinates(lattice.boxes().ravel()).reshape(-1, 5, 2)[:, :4]
    outside = (corners - start) @ np.array([direction[1], -direction[0]]) / np.hypot(*direction)
    return np.asarray((outside > NEAR_SLACK_FT * 100).any(axis=1).reshape(lattice.rows, lattice.columns))


def any_of(lattice: Lattice, cells: list[Cells]) -> Cells:
    """Cells that are in any of these."""
    none = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    return np.asarray(np.logical_or.reduce([none, *cells]))
