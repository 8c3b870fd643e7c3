"""Single things that stand or lie on the site. Lengths in feet on plan axes, heights above the file's datum."""

from dataclasses import dataclass
from typing import Literal

Point = tuple[float, float]
Ring = tuple[Point, ...]
"""Corners in counter-clockwise order, the first not repeated."""


@dataclass(frozen=True, slots=True)
class Door:
    """A door in a building's wall; `outward` is the unit vector that points away from the building."""

    name: str
    at: Point
    width_ft: float
    outward: Point
    sliding: bool = False


@dataclass(frozen=True, slots=True)
class Window:
    """A window in a building's wall; one that opens keeps kitchens, fire and water away."""

    name: str
    at: Point
    width_ft: float
    outward: Point
    sill_z_ft: float | None = None
    opens: bool = True


@dataclass(frozen=True, slots=True)
class Building:
    """A closed building that stays."""

    name: str
    outline: Ring
    height_ft: float | None = None
    floor_z_ft: float | None = None
    doors: tuple[Door, ...] = ()
    windows: tuple[Window, ...] = ()


@dataclass(frozen=True, slots=True)
class Entrance:
    """A place on the boundary where guests or machines come in; `inward` points into the yard."""

    name: str
    at: Point
    width_ft: float
    inward: Point
    used_by: tuple[Literal["guests", "machines"], ...] = ("guests", "machines")


@dataclass(frozen=True, slots=True)
class Machine:
    """A machine that drives on the yard; `turning_radius_ft` is of the middle of its way, `steepest` rise per run."""

    width_ft: float
    height_ft: float
    turning_radius_ft: float
    steepest: float


@dataclass(frozen=True, slots=True)
class Structure:
    """An existing open structure with a roof, kept; only rooms named in `may_hold` may stand under it."""

    name: str
    outline: Ring
    height_ft: float | None = None
    shade: float = 0.0
    may_hold: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Tree:
    """A tree that is kept."""

    name: str
    at: Point
    trunk_diameter_ft: float
    canopy_radius_ft: float
    height_ft: float | None = None
    evergreen: bool = False


KeepOutKind = Literal["plain", "septic tank", "septic field", "overhead line"]


@dataclass(frozen=True, slots=True)
class KeepOut:
    """Ground on which only the kinds named in `allow` may lie (a room kind, or `path`, `access`).

    Around a septic tank or field, and beside an overhead line, more ground is kept, by what would be built there.
    """

    name: str
    outline: Ring
    allow: tuple[str, ...] = ()
    kind: KeepOutKind = "plain"


@dataclass(frozen=True, slots=True)
class Utility:
    """Where a run of gas, electricity, water or drainage starts."""

    kind: Literal["gas", "electric", "water", "drain"]
    at: Point


@dataclass(frozen=True, slots=True)
class UtilityLine:
    """A known line in the ground; rooms keep `clear_ft` from it on each side, or the usual where that is None."""

    name: str
    kind: Literal["gas", "electric", "water", "drain", "communications"]
    line: tuple[Point, ...]
    clear_ft: float | None = None


@dataclass(frozen=True, slots=True)
class Surrounding:
    """Something outside the yard that shades it or looks into it: an outline, a line or an eye."""

    name: str
    outline: Ring | None = None
    line: tuple[Point, ...] | None = None
    at: Point | None = None
    height_ft: float | None = None
    eye_z_ft: float | None = None


@dataclass(frozen=True, slots=True)
class SpotLevel:
    """Height of the ground at a point."""

    at: Point
    z_ft: float
