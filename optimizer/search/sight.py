"""Which positions of a room are hidden from another room's centre by a building."""

from functools import lru_cache

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.polygon import orient

from optimizer.instance import Variant
from optimizer.search.board import Board
from optimizer.search.state import Spot


def hidden_from(board: Board, moving: Variant, placed: Variant, spot: Spot) -> np.ndarray:
    """Positions at which the straight line between the two centres crosses a building; shape of the board."""
    lattice = board.instance.context.lattice
    eye = (
        round(lattice.x_ft(spot.x + placed.width / 2), 6),
        round(lattice.y_ft(spot.y + placed.depth / 2), 6),
    )
    x = lattice.x_ft(0) + lattice.step_ft * (board.xs + moving.width / 2)
    y = lattice.y_ft(0) + lattice.step_ft * (board.ys + moving.depth / 2)
    result = np.zeros((len(y), len(x)), dtype=bool)
    for outline in board.instance.context.buildings:
        for part in _convex_parts(outline):
            result |= _crosses(part, eye, x, y)
    return result


@lru_cache(maxsize=64)
def _convex_parts(outline: Polygon) -> tuple[tuple[tuple[float, float], ...], ...]:
    """Triangles of the outline: a line crosses the outline's inside where it crosses the inside of one of them, or
    runs along the seam of two.
    """
    triangles = shapely.constrained_delaunay_triangles(outline)
    return tuple(tuple(orient(triangle).exterior.coords[:-1]) for triangle in triangles.geoms)


def _crosses(
    corners: tuple[tuple[float, float], ...], eye: tuple[float, float], x: np.ndarray, y: np.ndarray
) -> np.ndarray:
    """Clip each line from the eye against a convex outline; it crosses where a piece of length is left."""
    dx, dy = (x - eye[0])[None, :] + 0 * y[:, None], (y - eye[1])[:, None] + 0 * x[None, :]
    enter, leave = np.zeros_like(dx), np.ones_like(dx)
    outside = np.zeros(dx.shape, dtype=bool)
    for (ax, ay), (bx, by) in zip(corners, corners[1:] + corners[:1], strict=True):
        normal_x, normal_y = by - ay, ax - bx
        distance = (eye[0] - ax) * normal_x + (eye[1] - ay) * normal_y
        speed = dx * normal_x + dy * normal_y
        with np.errstate(divide="ignore", invalid="ignore"):
            at = -distance / speed
        enter = np.where(speed < 0, np.maximum(enter, at), enter)
        leave = np.where(speed > 0, np.minimum(leave, at), leave)
        outside |= (speed == 0) & (distance >= 0)
    return np.asarray(~outside & (leave - enter > 1e-9))
