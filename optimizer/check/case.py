"""What is checked: a layout with its scenario and sized rooms, and what several rules need of it, made once."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property
from typing import Final

from shapely import LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation
from optimizer.check.finding import Finding
from optimizer.check.sight import sight_share
from optimizer.circulation import Access, Network, Ways
from optimizer.derived import Derived
from optimizer.fields import SiteShapes, site_shapes
from optimizer.layout import Layout, Placed, outline
from optimizer.scenario import Scenario
from optimizer.site import Site

TOLERANCE_FT: Final = 0.02
"""What lies within this touches."""
TOLERANCE_SQFT: Final = 0.05
"""Areas that share no more than this do not overlap."""


@dataclass(frozen=True)
class CheckCase:
    """One layout to check; `price` gives the cost of a phase with contingency, None where nobody asks for money.

    A placed room that the brief does not know is in the layout alone; `known_choice` speaks of it.
    """

    derived: Derived
    price: Callable[[int], Decimal] | None = None
    _sight: dict[Relation, float | None] = field(default_factory=dict, init=False, repr=False, compare=False)

    @property
    def scenario(self) -> Scenario:
        """Site and brief."""
        return self.derived.scenario

    @property
    def placed(self) -> Placed:
        """Rooms where they stand."""
        return self.derived.placed

    @property
    def site(self) -> Site:
        """What is there."""
        return self.derived.site

    @property
    def layout(self) -> Layout:
        """Where every room stands."""
        return self.placed.layout

    @cached_property
    def shapes(self) -> SiteShapes:
        """Shapes of the site."""
        return site_shapes(self.site)

    @property
    def boundary(self) -> Polygon:
        """Ground inside the boundary."""
        return self.shapes.boundary

    @cached_property
    def buildings(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the buildings."""
        return tuple(zip((thing.name for thing in self.site.buildings), self.shapes.buildings, strict=True))

    @cached_property
    def structures(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the kept structures."""
        return tuple(zip((thing.name for thing in self.site.structures), self.shapes.structures, strict=True))

    @cached_property
    def keep_outs(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the keep-outs."""
        return tuple(zip((thing.name for thing in self.site.keep_outs), self.shapes.keep_outs, strict=True))

    @cached_property
    def landings(self) -> tuple[tuple[str, Polygon], ...]:
        """Names of the doors, with the landings and steps in front of them."""
        return tuple((door.name, zone) for door, zone in self.shapes.door_zones)

    @cached_property
    def covers(self) -> tuple[tuple[str, Polygon], ...]:
        """Names and grounds of the rooms under a new roof."""
        return tuple((room.name, room.shape) for room, choice in self.placed.chosen if choice.cover)

    @property
    def access(self) -> Access:
        """Walkable ground and stops."""
        return self.network.access

    @property
    def network(self) -> Network:
        """Shortest ways between the stops."""
        return self.derived.network

    @property
    def laid(self) -> Ways:
        """Ways of the layout and the legs that they run on."""
        return self.derived.laid

    def sight_share(self, relation: Relation) -> float | None:
        """Share of sight of a relation, as of the function of that name, asked once."""
        if relation not in self._sight:
            self._sight[relation] = sight_share(self.scenario, self.placed, relation)
        return self._sight[relation]

    def shape_of(self, name: str) -> BaseGeometry | None:
        """Shape of a placed room or a thing of the site; None for a room that is left out."""
        placed, point, ring = self.placed.of(name), self.site.point_of(name), self.site.outline_of(name)
        if placed is not None:
            return placed.shape
        if point is not None:
            return Point(point)
        if ring is not None:
            return outline(ring)
        line = self.site.line_of(name)
        return LineString(line) if line is not None else None

    def length(self, length_ft: float) -> str:
        """Length in the words and unit of the scenario."""
        return f"{length_ft / self.scenario.unit_ft:.2f} {self.scenario.units}"


Check = Callable[[CheckCase], Iterable[Finding]]


def overlap_sqft(one: BaseGeometry, other: BaseGeometry) -> float:
    """Area that two shapes share; 0 where it is no more than tolerance."""
    area = float(one.intersection(other).area) if one.intersects(other) else 0.0
    return area if area > TOLERANCE_SQFT else 0.0
