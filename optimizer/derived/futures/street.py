"""Where vehicles come from: the street before the entrances that machines use."""

from collections.abc import Iterator, Sequence
from typing import Final

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.derived.boxes import box_along
from optimizer.derived.futures.course import Gate
from optimizer.derived.futures.obstacles import Obstacle
from optimizer.fields import site_shapes
from optimizer.fields.site_walls import HALF_FT
from optimizer.layout import Pose
from optimizer.site import Site, clear_middle, clear_width_ft

_STREET_FT: Final = 24.0
"""Depth and width to each side of the ground before a gate on which a vehicle stands and turns in."""


def driven_ground(site: Site, there: Sequence[Obstacle]) -> BaseGeometry:
    """Ground of the yard without obstacles, and of the street before its gates.

    The boundary is open at gates alone, and there whatever wall stands on it: an entrance is one, as wide as the
    opening that it leads through where the wall has one.
    """
    yard = site_shapes(site).boundary
    gates = shapely.union_all([opening_of(gate) for gate in gates_of(site)])
    street = [street_of(gate) for gate in gates_of(site)]
    # Beyond the opening a fence or a neighbour's ground may begin: nothing is driven over the line there.
    line = yard.exterior.difference(gates).buffer(HALF_FT, cap_style="flat")
    standing = shapely.union_all([obstacle.ground for obstacle in there]).difference(gates)
    return shapely.union_all([yard, *street]).difference(shapely.union_all([line, standing]))


def gates_of(site: Site, pose: Pose | None = None) -> Iterator[Gate]:
    """Entrances that machines use with their clear widths, on the plan or in a pose."""
    for entrance in site.machine_entrances:
        at, inward = clear_middle(site, entrance), entrance.inward
        if pose is not None:
            (a, b, c, d), (x, y) = pose.matrix, inward
            at, inward = pose.point(at), (a * x + b * y, c * x + d * y)
        yield Gate(entrance.name, at, clear_width_ft(site, entrance), inward)


def opening_of(gate: Gate) -> Polygon:
    """The clear width of a gate, as a strip along the boundary [ft]."""
    return box_along(gate.at, gate.inward, gate.width_ft, -0.1, 0.1)


def street_of(gate: Gate) -> Polygon:
    """The street before a gate, as far as a vehicle stands and turns in on it [ft]."""
    return box_along(gate.at, gate.inward, gate.width_ft + 2 * _STREET_FT, -_STREET_FT, 0.0)
