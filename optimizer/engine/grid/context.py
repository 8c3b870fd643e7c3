"""The posed yard on its grid, and the room that a rule is asked about."""

import math
from collections.abc import Hashable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry, Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.lattice import Lattice
from optimizer.layout import Pose, canonical_pose
from optimizer.scenario import Scenario
from optimizer.site import Site


@dataclass(frozen=True, eq=False)
class Context:
    """Everything that the parts of the model are made from. Geometry is posed; `scenario` is as on the plan.

    What is kept for a context is kept for this very one: to compare two by all that they hold would take too long.
    """

    scenario: Scenario
    rooms: tuple[SizedRoom, ...]
    pose: Pose
    site: Site
    lattice: Lattice

    @cached_property
    def boundary(self) -> Polygon:
        """The yard."""
        return Polygon(self.site.boundary)

    @cached_property
    def buildings(self) -> tuple[Polygon, ...]:
        """Outlines of the buildings."""
        return tuple(Polygon(building.outline) for building in self.site.buildings)

    @cached_property
    def known_shares(self) -> dict[Hashable, NDArray[np.float64]]:
        """Shares of sight that were worked out already; filled by who asks."""
        return {}

    def thing(self, name: str) -> Geometry | None:
        """A door, window, entrance, tree or eye as a point, a wall as its line, what has an outline as a polygon."""
        point = self.site.point_of(name)
        if point is not None:
            return shapely.Point(point)
        outline, line = self.site.outline_of(name), self.site.line_of(name)
        if line is not None:
            return shapely.LineString(line)
        return None if outline is None else Polygon(outline)


def context_of(scenario: Scenario, rooms: tuple[SizedRoom, ...]) -> Context:
    """The scenario in its canonical pose on a grid that runs along as many walls as one grid can."""
    pose = canonical_pose(scenario.site)
    site = pose.site(scenario.site)
    return Context(scenario, rooms, pose, site, _lattice(site, scenario.grid_step_ft))


def _lattice(site: Site, step_ft: float) -> Lattice:
    outlines = [b.outline for b in site.buildings] + [s.outline for s in site.structures]
    x0, y0 = (_origin(outlines, axis, step_ft) for axis in (0, 1))
    right, top = (max(corner[axis] for corner in site.boundary) for axis in (0, 1))
    columns, rows = (math.ceil((end - start) / step_ft - 1e-6) for end, start in ((right, x0), (top, y0)))
    return Lattice(step_ft, x0, y0, max(1, columns), max(1, rows))


def _origin(outlines: list[tuple[tuple[float, float], ...]], axis: int, step_ft: float) -> float:
    """Start of the grid, within one step below 0, that puts the longest length of walls on its lines."""
    weights: dict[float, float] = {0.0: 0.0}
    for outline in outlines:
        for start, end in zip(outline, outline[1:] + outline[:1], strict=True):
            if abs(start[axis] - end[axis]) < 1e-6:
                offset = round(start[axis] % step_ft, 4) % round(step_ft, 4)
                weights[offset] = weights.get(offset, 0.0) + abs(start[1 - axis] - end[1 - axis])
    best = max(sorted(weights), key=lambda offset: round(weights[offset], 3))
    return best - step_ft if best > 0 else 0.0
