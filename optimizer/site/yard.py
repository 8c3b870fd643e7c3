"""The site as a whole: boundary with its setbacks, and everything on it."""

from dataclasses import dataclass
from typing import Final, Literal, get_args

from optimizer.site.existing import Paving, Wall
from optimizer.site.things import (
    Building,
    Door,
    Entrance,
    KeepOut,
    Machine,
    Point,
    Ring,
    SpotLevel,
    Structure,
    Surrounding,
    Tree,
    Utility,
    UtilityLine,
    Window,
)

BuiltClass = Literal["paving", "wall", "roof", "fire", "water", "equipment"]
BUILT_CLASSES: Final[tuple[BuiltClass, ...]] = get_args(BuiltClass)


@dataclass(frozen=True, slots=True)
class Setbacks:
    """Least distance from one boundary edge by what is built [ft]."""

    paving: float = 0.0
    wall: float = 0.0
    roof: float = 0.0
    fire: float = 0.0
    water: float = 0.0
    equipment: float = 0.0

    def of(self, built: BuiltClass) -> float:
        """Setback of one class [ft]."""
        return float(getattr(self, built))


DistanceName = Literal[
    "ahead_of_door",
    "beside_window",
    "gas_fire",
    "wood_fire",
    "utility_line",
    "septic_tank",
    "septic_field",
    "septic_field_to_water",
    "overhead_line_to_water",
]
"""Distances with a usual value that a scenario may override."""


@dataclass(frozen=True, slots=True)
class RootRings:
    """Two rings round a kept tree, in trunk diameters; None leaves the usual value."""

    inner: float | None = None
    """Nothing is built inside it."""
    outer: float | None = None
    """Between the two, light paving on a small share of the ring only."""
    paved_share: float | None = None


@dataclass(frozen=True, slots=True)
class WindRose:
    """Share of the using season in which the wind blows from each of 16 sectors, north first, clockwise.

    What the shares lack to 1 is calm.
    """

    shares: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Place:
    """Where on earth the plan lies; `plan_up_bearing_deg` is the compass bearing of +y, clockwise from true north."""

    latitude: float
    longitude: float
    time_zone: str
    plan_up_bearing_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class Site:
    """What is there. `setbacks[i]` and `edge_names[i]` belong to the edge from corner i to the next."""

    place: Place
    boundary: Ring
    edge_names: tuple[str, ...]
    setbacks: tuple[Setbacks, ...]
    paved_share_limit: float | None = None
    buildings: tuple[Building, ...] = ()
    entrances: tuple[Entrance, ...] = ()
    structures: tuple[Structure, ...] = ()
    paving: tuple[Paving, ...] = ()
    walls: tuple[Wall, ...] = ()
    trees: tuple[Tree, ...] = ()
    keep_outs: tuple[KeepOut, ...] = ()
    utilities: tuple[Utility, ...] = ()
    utility_lines: tuple[UtilityLine, ...] = ()
    surroundings: tuple[Surrounding, ...] = ()
    levels: tuple[SpotLevel, ...] = ()
    wind_from_deg: float | None = None
    wind_rose: WindRose | None = None
    distances: tuple[tuple[DistanceName, float], ...] = ()
    """Distances of the scenario that win over the usual ones [ft]."""
    root_rings: RootRings = RootRings()
    machine: Machine | None = None
    """The smallest machine that the builder would bring; None where the scenario does not say."""

    @property
    def doors(self) -> tuple[Door, ...]:
        """All doors of all buildings, in file order."""
        return tuple(door for building in self.buildings for door in building.doors)

    @property
    def windows(self) -> tuple[Window, ...]:
        """All windows of all buildings, in file order."""
        return tuple(window for building in self.buildings for window in building.windows)

    @property
    def machine_entrances(self) -> tuple[Entrance, ...]:
        """Entrances by which machines may come in."""
        return tuple(entrance for entrance in self.entrances if "machines" in entrance.used_by)

    def point_of(self, name: str) -> Point | None:
        """Where a door, window, entrance, tree or neighbour's eye of that name is; None for anything else."""
        things: tuple[Door | Window | Entrance | Tree, ...] = (
            *self.doors,
            *self.windows,
            *self.entrances,
            *self.trees,
        )
        for thing in things:
            if thing.name == name:
                return thing.at
        return next((eye.at for eye in self.surroundings if eye.name == name), None)

    def outline_of(self, name: str) -> Ring | None:
        """Outline of the building, structure, paving, keep-out or surrounding of that name; None for anything else."""
        things: tuple[Building | Structure | Paving | KeepOut | Surrounding, ...] = (
            *self.buildings,
            *self.structures,
            *self.paving,
            *self.keep_outs,
            *self.surroundings,
        )
        for thing in things:
            if thing.name == name:
                return thing.outline
        return None

    def line_of(self, name: str) -> tuple[Point, ...] | None:
        """Line of the wall or surrounding of that name; None for anything else."""
        things: tuple[Wall | Surrounding, ...] = (*self.walls, *self.surroundings)
        return next((thing.line for thing in things if thing.name == name), None)
