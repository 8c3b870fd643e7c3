"""One layout's network of shortest ways: made once, asked often."""

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.stops import Access, Stop
from optimizer.circulation.visibility import Coordinates, all_shortest, in_sight, route, turning_points


@dataclass(frozen=True, slots=True, eq=False)
class Network:
    """Access of a layout with the shortest lengths [ft] between all nodes.

    Nodes are the stops' gates in order, then the turning points of the ground.
    """

    access: Access
    points: Coordinates
    lengths_ft: Coordinates
    previous: NDArray[np.int32]

    def gates(self, stop: Stop) -> list[int]:
        """Nodes of a stop's gates; none for a stop that is not in the network."""
        owners = [owner.name for owner in self.access.stops for _ in owner.gates]
        return [node for node, owner in enumerate(owners) if owner == stop.name]


def network_of(access: Access) -> Network:
    """Network over the ground and stops of one layout."""
    gates = np.array([gate for stop in access.stops for gate in stop.gates], dtype=np.float64).reshape(-1, 2)
    points = np.concatenate([gates, turning_points(access.ground)])
    return Network(access, points, *all_shortest(access.ground, points))


def walking_ft(network: Network, start: Stop, end: Stop) -> float:
    """Distance on foot from edge to edge [ft]; infinite where no way joins them."""
    by_nodes = to_edge_ft(network, start)[:, None] + network.lengths_ft + to_edge_ft(network, end)[None, :]
    return min(float(by_nodes.min(initial=np.inf)), _across_ft(network, start, end))


def walked_line(network: Network, start: Stop, end: Stop) -> BaseGeometry:
    """Line of the walk from edge to edge that `walking_ft` measures, without the steps through gates; empty where no
    way joins them.
    """
    by_nodes = to_edge_ft(network, start)[:, None] + network.lengths_ft + to_edge_ft(network, end)[None, :]
    least, across = float(by_nodes.min(initial=np.inf)), _across_ft(network, start, end)
    if across < least:
        return shapely.shortest_line(start.area, end.area)
    if not np.isfinite(least):
        return LineString()
    first, last = np.unravel_index(by_nodes.argmin(), by_nodes.shape)
    points = [shapely.Point(network.points[node]) for node in route(network.previous, int(first), int(last))]
    ends = [
        shapely.shortest_line(point, stop.area)
        for point, stop in ((points[0], start), (points[-1], end))
        if stop.area is not None
    ]
    return shapely.union_all([LineString([*points, points[-1]]), *ends])


def to_edge_ft(network: Network, stop: Stop) -> Coordinates:
    """Length from each node straight to the edge of a stop [ft]; infinite where the edge is not in sight."""
    lengths = np.full(len(network.points), np.inf)
    if stop.area is None:
        lengths[network.gates(stop)] = stop.edge_ft
    elif not stop.area.is_empty and len(network.points):
        lines = shapely.shortest_line(shapely.points(network.points), stop.area)
        ends = shapely.get_coordinates(lines).reshape(-1, 2, 2)
        seen = in_sight(network.access.ground, ends[:, 0], ends[:, 1])
        lengths[seen] = shapely.length(lines)[seen] + stop.edge_ft
    return lengths


def _across_ft(network: Network, start: Stop, end: Stop) -> float:
    """Straight length between two stops with ground of their own, where nothing stands between."""
    if start.area is None or end.area is None or start.area.is_empty or end.area.is_empty:
        return float("inf")
    line = shapely.shortest_line(start.area, end.area)
    ends = shapely.get_coordinates(line)
    seen = in_sight(network.access.ground, ends[:1], ends[1:])[0]
    return float(line.length) + start.edge_ft + end.edge_ft if seen else float("inf")
