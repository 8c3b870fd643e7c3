"""What is checked: a layout with its scenario and sized rooms, and what several rules need of it, made once."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from typing import Final

from shapely import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.check.finding import Finding
from optimizer.circulation import Access, Network, Way, Ways, ways
from optimizer.grading import Grading, grade
from optimizer.layout import Layout, Placed, outline, placed_of
from optimizer.scenario import Scenario
from optimizer.site import Site

TOLERANCE_FT: Final = 0.02
"""What lies within this touches."""
TOLERANCE_SQFT: Final = 0.05
"""Areas that share no more than this do not overlap."""


@dataclass(frozen=True)
class Case:
    """One layout to check; `phase_1_cost` includes contingency, None where nobody asks for the budget.

    A placed room that the brief does not know is in the layout alone; `known_choice` speaks of it.
    """

    scenario: Scenario
    placed: Placed
    phase_1_cost: Decimal | None = None
    given_ways: Ways | None = None
    """Ways of the layout where the caller has them already; they take most of the time of a check."""

    @property
    def site(self) -> Site:
        """What is there."""
        return self.scenario.site

    @property
    def layout(self) -> Layout:
        """Where every room stands."""
        return self.placed.layout

    @cached_property
    def boundary(self) -> Polygon:
        """Ground inside the boundary."""
        return outline(self.site.boundary)

    @cached_property
    def buildings(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the buildings."""
        return tuple((building.name, outline(building.outline)) for building in self.site.buildings)

    @cached_property
    def structures(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the kept structures."""
        return tuple((structure.name, outline(structure.outline)) for structure in self.site.structures)

    @cached_property
    def covers(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the rooms under a new roof."""
        return tuple((room.name, room.shape) for room, choice in self.placed.chosen if choice.cover)

    @cached_property
    def access(self) -> Access:
        """Walkable ground and stops."""
        return self.network.access

    @cached_property
    def network(self) -> Network:
        """Shortest ways between the stops."""
        return self.laid.network

    @cached_property
    def grading(self) -> Grading:
        """Levels of the rooms and what they ask for."""
        return grade(self.site, self._once, self.ways)

    @cached_property
    def laid(self) -> Ways:
        """Ways of the layout and the legs that they run on."""
        return self.given_ways or ways(self.site, self.scenario.brief, self._once)

    @property
    def ways(self) -> tuple[Way, ...]:
        """Ways of the layout."""
        return self.laid.ways

    @cached_property
    def _once(self) -> Placed:
        """The layout with each room where it stands last; that one stands twice, `required_rooms` says."""
        once = {placement.room: placement for placement in self.layout.placements}
        if len(once) == len(self.layout.placements):
            return self.placed
        return placed_of(self.placed.wished, Layout(tuple(once.values())))

    def shape_of(self, name: str) -> BaseGeometry | None:
        """Shape of a placed room or a thing of the site; None for a room that is left out."""
        placed, point, ring = self.placed.of(name), self.site.point_of(name), self.site.outline_of(name)
        if placed is not None:
            return placed.shape
        if point is not None:
            return Point(point)
        if ring is not None:
            return outline(ring)
        line = next((thing.line for thing in self.site.surroundings if thing.name == name), None)
        return LineString(line) if line is not None else None

    def length(self, length_ft: float) -> str:
        """Length in the words and unit of the scenario."""
        return f"{length_ft / self.scenario.unit_ft:.2f} {self.scenario.units}"


Check = Callable[[Case], Iterable[Finding]]


def overlap_sqft(one: BaseGeometry, other: BaseGeometry) -> float:
    """Area that two shapes share; 0 where it is no more than tolerance."""
    area = float(one.intersection(other).area) if one.intersects(other) else 0.0
    return area if area > TOLERANCE_SQFT else 0.0
