"""How much of each line lies inside some areas of a plan."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.circulation.visibility import Coordinates

_EVEN_FT: Final = 1e-6
_EDGE_FT: Final = 0.01  # lines along the edge of an area are beside it


@dataclass(frozen=True, slots=True, eq=False)
class Areas:
    """Convex areas in groups in which they do not overlap: their group, bounds (n, 4) and edges (n, k, 4).

    An edge is its first corner and the unit vector to the next, counter-clockwise.
    """

    groups: int
    group: NDArray[np.int64]
    bounds: Coordinates
    edges: Coordinates

    def within_ft(self, corners: Coordinates) -> Coordinates:
        """Length of the steps of lines, given by their corners (n, 4, 2), inside the areas of each group, shape
        (groups, n, 3) [ft].

        What runs along an edge does not count.
        """
        total = np.zeros((self.groups, len(corners), 3))
        area, line = self._meeting(corners)
        area, step = np.repeat(area, 3), (3 * line[:, None] + np.arange(3)).reshape(-1)
        starts, ends = corners[:, :-1].reshape(-1, 2)[step], corners[:, 1:].reshape(-1, 2)[step]
        kept = self._reached(area, starts, ends)
        area, step, starts, ends = area[kept], step[kept], starts[kept], ends[kept]
        np.add.at(total.reshape(self.groups, -1), (self.group[area], step), _inside_ft(self.edges[area], starts, ends))
        return total

    def _meeting(self, corners: Coordinates) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        """Areas and lines, by number, whose bounds overlap."""
        x, y = corners[..., 0], corners[..., 1]
        left, low, right, top = self.bounds.T[..., None]
        area, line = np.nonzero((_least(x) < right) & (-_least(-x) > left) & (_least(y) < top) & (-_least(-y) > low))
        return area, line

    def _reached(self, area: NDArray[np.int64], starts: Coordinates, ends: Coordinates) -> NDArray[np.bool_]:
        """Whether steps have a length and overlap the bounds of one area each."""
        bounds = self.bounds[area]
        over = (np.minimum(starts, ends) < bounds[:, 2:]) & (np.maximum(starts, ends) > bounds[:, :2])
        moves = starts != ends
        return np.asarray((moves[:, 0] | moves[:, 1]) & over[:, 0] & over[:, 1])


def areas_of(groups: Sequence[Sequence[Polygon]]) -> Areas:
    """Areas by groups."""
    areas = [area for group in groups for area in group]
    numbers = [number for number, group in enumerate(groups) for _ in group]
    bounds = shapely.bounds(np.array(areas, dtype=object)).reshape(-1, 4)
    return Areas(len(groups), np.array(numbers, dtype=np.int64), bounds, _edges(areas))


def _least(values: Coordinates) -> Coordinates:
    """Least of four columns."""
    return np.minimum(np.minimum(values[:, 0], values[:, 1]), np.minimum(values[:, 2], values[:, 3]))


def _inside_ft(edges: Coordinates, starts: Coordinates, ends: Coordinates) -> Coordinates:
    """Length of steps, shapes (n, 2), each inside one area, given by its edges (n, k, 4), shape (n,) [ft]."""
    (start_x, start_y), (step_x, step_y) = starts.T, (ends - starts).T
    enter, leave = np.zeros(len(starts)), np.ones(len(starts))
    for edge in range(edges.shape[1]):
        x, y, along_x, along_y = (edges[:, edge, part] for part in range(4))
        # Inside lies to the left of every edge: where a step crosses it, it enters or leaves.
        ahead = along_x * step_y - along_y * step_x
        depth = along_x * (start_y - y) - along_y * (start_x - x) - _EDGE_FT
        share = -depth / np.where(np.abs(ahead) < _EVEN_FT, 1.0, ahead)
        enter = np.where(ahead > _EVEN_FT, np.maximum(enter, share), enter)
        leave = np.where(ahead < -_EVEN_FT, np.minimum(leave, share), leave)
        leave = np.where((np.abs(ahead) <= _EVEN_FT) & (depth < 0), -1.0, leave)
    return np.asarray(np.maximum(0.0, leave - enter) * np.hypot(step_x, step_y))


def _edges(areas: Sequence[Polygon]) -> Coordinates:
    """Edges of convex areas; one with fewer than the others has its last edge again."""
    rings = [shapely.get_coordinates(shapely.orient_polygons(area).exterior) for area in areas]
    count = max((len(ring) for ring in rings), default=1) - 1
    found = np.empty((len(areas), count, 4))
    for number, ring in enumerate(rings):
        steps = np.diff(ring, axis=0)
        edges = np.column_stack([ring[:-1], steps / np.hypot(steps[:, 0], steps[:, 1])[:, None]])
        found[number] = edges[np.minimum(np.arange(count), len(edges) - 1)]
    return found
