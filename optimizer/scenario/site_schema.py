"""The `site` part of a scenario file, key by key. Lengths come out in feet."""

from typing import Annotated, Literal

from pydantic import Field

from optimizer.brief import Material
from optimizer.scenario.existing_schema import MOST_THINGS, PavingPart, WallPart
from optimizer.scenario.machine_schema import MachinePart
from optimizer.scenario.part import Part
from optimizer.scenario.values import Bearing, Coordinate, Corners, Distance, Name, Point, Size
from optimizer.site import DistanceName, KeepOutKind

SectorShares = Annotated[tuple[Annotated[float, Field(ge=0, le=1)], ...], Field(min_length=16, max_length=16)]


class BoundaryPart(Part):
    """The edge of the yard."""

    corners: Corners
    """Corners in order, the first not repeated; counter-clockwise, or clockwise and turned on reading."""
    edges: tuple[Name, ...] | None = None
    """Name of each edge; edge i runs from corner i to the next. Names may repeat where a side has several edges."""


class SetbackPart(Part):
    """Least distance from the boundary by what is built; an edge's own values win over `everywhere`."""

    paving: Distance | None = None
    """Paving."""
    wall: Distance | None = None
    """Walls and counters."""
    roof: Distance | None = None
    """Roofs."""
    fire: Distance | None = None
    """Fire."""
    water: Distance | None = None
    """Pools and tubs."""
    equipment: Distance | None = None
    """Equipment."""


class LimitsPart(Part):
    """Local limits that are hard."""

    paved_share: Annotated[float, Field(ge=0, le=1)] | None = None
    """Largest paved share of the open yard, which is the boundary less the buildings."""


class DoorPart(Part):
    """A door, at the wall of its building."""

    name: Name
    """Name by which relations and trips know it."""
    at: Point
    """Middle of the door, on the wall."""
    width: Size
    """Clear width."""
    sliding: bool = False
    """Whether it slides, so that nothing swings."""


class WindowPart(Part):
    """A window, at the wall of its building."""

    name: Name
    """Name by which relations know it."""
    at: Point
    """Middle of the window, on the wall."""
    width: Size
    """Width."""
    sill_z: Coordinate | None = None
    """Height of the sill above the datum."""
    opens: bool = True
    """Whether it opens; one that does keeps kitchens, fire and water away."""


class BuildingPart(Part):
    """A closed building that stays."""

    name: Name
    """Name by which relations know it."""
    outline: Corners
    """Corners of the walls."""
    height: Size | None = None
    """Height above the ground."""
    floor_z: Coordinate | None = None
    """Height of the floor above the datum."""
    doors: tuple[DoorPart, ...] = ()
    """Doors to the yard."""
    windows: tuple[WindowPart, ...] = ()
    """Windows to the yard."""
    material: Material | None = None
    """What its walls are made of, as far as a finish is to match them."""


class EntrancePart(Part):
    """Where people and machines come in."""

    name: Name
    """Name by which relations and trips know it."""
    at: Point
    """Middle of the opening, on the boundary."""
    width: Size
    """Clear width."""
    used_by: Annotated[tuple[Literal["guests", "machines"], ...], Field(min_length=1, max_length=2)] = (
        "guests",
        "machines",
    )
    """Who comes in here."""


class StructurePart(Part):
    """An existing roofed structure without walls, to be kept."""

    name: Name
    """Name by which relations know it."""
    outline: Corners
    """Corners of the roof."""
    height: Size | None = None
    """Height above the ground."""
    shade: Annotated[float, Field(ge=0, le=1)] = 0.0
    """Share of the sun that it keeps out."""
    may_hold: Annotated[tuple[Name, ...], Field(max_length=40)] = ()
    """Names of the rooms that may stand under it."""
    material: Material | None = None
    """What it is built of, as far as a finish is to match it."""


class TreePart(Part):
    """A tree that is kept."""

    name: Name
    """Name by which relations know it."""
    at: Point
    """Middle of the trunk."""
    trunk_diameter: Size
    """Diameter of the trunk at breast height."""
    canopy_radius: Size
    """Radius of the crown."""
    height: Size | None = None
    """Height above the ground."""
    evergreen: bool = False
    """Whether it keeps its leaves in winter."""


class KeepOutPart(Part):
    """Ground on which only some things may lie."""

    name: Name
    """Name by which relations know it."""
    outline: Corners
    """Corners of the ground."""
    allow: Annotated[tuple[Name, ...], Field(max_length=20)] = ()
    """What may lie there: room kinds, `path`, `access`."""
    kind: KeepOutKind = "plain"
    """What it is: around septic tanks and fields, and beside overhead lines, more ground is kept."""


class UtilityPart(Part):
    """Where a run starts (`at`), or a known line in the ground (`line`): one of the two."""

    kind: Literal["gas", "electric", "water", "drain", "communications"]
    """What runs there."""
    name: Name | None = None
    """What it is called, of a line; its kind where nothing is said."""
    at: Point | None = None
    """Where it starts."""
    line: Annotated[tuple[Point, ...], Field(min_length=2, max_length=500)] | None = None
    """Points of a known line."""
    clear: Distance | None = None
    """Of a line: what rooms keep from it on each side; the usual where nothing is said."""


class SurroundingPart(Part):
    """Something outside the boundary, for sun and sight: one of `outline`, `line` and `at`."""

    name: Name
    """Name by which relations know it."""
    outline: Corners | None = None
    """Corners, of a building."""
    line: Annotated[tuple[Point, ...], Field(min_length=2, max_length=500)] | None = None
    """Points of a line, of a fence or hedge."""
    at: Point | None = None
    """A point, of an eye."""
    height: Size | None = None
    """Height above the ground."""
    eye_z: Coordinate | None = None
    """Height of the eye above the datum."""


class RootRingsPart(Part):
    """Two rings round a kept tree, in trunk diameters."""

    inner: Annotated[float, Field(ge=0, le=60)] | None = None
    """Nothing is built inside it."""
    outer: Annotated[float, Field(ge=0, le=60)] | None = None
    """Between the two, light paving on a small share only."""
    paved_share: Annotated[float, Field(ge=0, le=1)] | None = None
    """The share."""


class LevelPart(Part):
    """A spot level of the ground; in between it is interpolated."""

    at: Point
    """Where."""
    z: Coordinate
    """Height above the datum."""


class SitePart(Part):
    """What is there."""

    latitude: Annotated[float, Field(ge=-90, le=90)]
    """Degrees, north positive."""
    longitude: Annotated[float, Field(ge=-180, le=180)]
    """Degrees, east positive."""
    time_zone: Name
    """Name of the time zone, such as America/New_York."""
    plan_up_bearing: Bearing = 0.0
    """Compass bearing of the plan's +y axis, degrees clockwise from true north."""
    boundary: BoundaryPart
    """The edge of the yard."""
    setbacks: Annotated[dict[Name, SetbackPart], Field(max_length=501)] = Field(default_factory=dict)
    """From the boundary: under `everywhere`, and under the name of an edge, whose own values win."""
    limits: LimitsPart = LimitsPart()
    """Local limits."""
    buildings: tuple[BuildingPart, ...] = ()
    """Closed buildings that stay."""
    entrances: tuple[EntrancePart, ...] = ()
    """Where people and machines come in."""
    structures: tuple[StructurePart, ...] = ()
    """Existing roofed structures to be kept."""
    paving: Annotated[tuple[PavingPart, ...], Field(max_length=MOST_THINGS)] = ()
    """What is paved already."""
    walls: Annotated[tuple[WallPart, ...], Field(max_length=MOST_THINGS)] = ()
    """Walls, fences and hedges inside the yard that stay."""
    trees: tuple[TreePart, ...] = ()
    """Trees that are kept."""
    keep_outs: tuple[KeepOutPart, ...] = ()
    """Ground on which only some things may lie."""
    utilities: tuple[UtilityPart, ...] = ()
    """Where runs of gas, electricity, water and drainage start."""
    surroundings: tuple[SurroundingPart, ...] = ()
    """Outside the boundary, for sun and sight."""
    levels: Annotated[tuple[LevelPart, ...], Field(max_length=5000)] = ()
    """Spot levels of the ground."""
    wind_from: Bearing | None = None
    """Compass bearing that the prevailing wind of the using season blows from."""
    wind_rose: SectorShares | None = None
    """Share of the using season with wind from each of 16 sectors, north first, clockwise; the rest is calm."""
    distances: Annotated[dict[DistanceName, Distance], Field(max_length=20)] = Field(default_factory=dict)
    """Distances that win over the usual ones, where local code says so."""
    root_rings: RootRingsPart = RootRingsPart()
    """Rings round kept trees that win over the usual ones."""
    machine_access: MachinePart | None = None
    """The smallest machine that the builder would bring."""
