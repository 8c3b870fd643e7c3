"""A room's place on the plan, and all of them together."""

from dataclasses import dataclass, replace
from typing import Final, Literal

from optimizer.brief import RoomShape
from optimizer.catalogue import comes_later, ground_sqft

Front = Literal["+x", "-x", "+y", "-y"]
DIGITS: Final = 6
"""Decimals to which coordinates are rounded where a layout is turned: what turning and shifting adds is less."""
FRONT_VECTORS: Final[dict[Front, tuple[int, int]]] = {"+x": (1, 0), "-x": (-1, 0), "+y": (0, 1), "-y": (0, -1)}


@dataclass(frozen=True, slots=True)
class Placement:
    """One placed room: lower left corner and size on plan axes [ft]; `width_ft` is along x as placed.

    Where the room has grown to a line, `base_...` is where it stood before, in its choice's own size; else None.
    """

    room: str
    choice: str
    x_ft: float
    y_ft: float
    width_ft: float
    depth_ft: float
    front: Front
    base_x_ft: float | None = None
    base_y_ft: float | None = None
    base_width_ft: float | None = None
    base_depth_ft: float | None = None
    shape: RoomShape = "rectangle"
    """A circle lies in the square of its width and depth; it does not grow."""

    @property
    def right_ft(self) -> float:
        """Right edge [ft]."""
        return self.x_ft + self.width_ft

    @property
    def top_ft(self) -> float:
        """Upper edge [ft]."""
        return self.y_ft + self.depth_ft

    @property
    def has_grown(self) -> bool:
        """Whether it is larger than its choice."""
        return self.base_width_ft is not None and self.base_depth_ft is not None

    @property
    def base(self) -> "Placement":
        """The room before it grew; itself where it has not. Where a corner is not told, it is the lower left one."""
        if self.base_width_ft is None or self.base_depth_ft is None:
            return self
        x_ft = self.x_ft if self.base_x_ft is None else self.base_x_ft
        y_ft = self.y_ft if self.base_y_ft is None else self.base_y_ft
        size = self.base_width_ft, self.base_depth_ft
        return Placement(self.room, self.choice, x_ft, y_ft, *size, self.front, shape=self.shape)

    @property
    def moved_out_ft(self) -> dict[Front, float]:
        """How far each side of the plan has moved out since it was placed [ft]."""
        base = self.base
        return {
            "+x": self.right_ft - base.right_ft,
            "+y": self.top_ft - base.top_ft,
            "-x": base.x_ft - self.x_ft,
            "-y": base.y_ft - self.y_ft,
        }

    def edge_ft(self, side: Front) -> float:
        """Coordinate of one side's edge [ft]: x of the left and right ones, y of the others."""
        return {"+x": self.right_ft, "+y": self.top_ft, "-x": self.x_ft, "-y": self.y_ft}[side]

    def grown_to(self, side: Front, at_ft: float) -> "Placement":
        """The room with one side's edge at a coordinate [ft], rounded so that a turned copy has the same."""
        edges = {**{each: self.edge_ft(each) for each in FRONT_VECTORS}, side: at_ft}
        base = self.base
        return replace(
            base,
            x_ft=edges["-x"],
            y_ft=edges["-y"],
            width_ft=round(edges["+x"] - edges["-x"], DIGITS),
            depth_ft=round(edges["+y"] - edges["-y"], DIGITS),
            base_x_ft=base.x_ft,
            base_y_ft=base.y_ft,
            base_width_ft=base.width_ft,
            base_depth_ft=base.depth_ft,
        )

    @property
    def is_later(self) -> bool:
        """Whether the room comes later: only its pad and stubs are here, or its place is kept for it."""
        return comes_later(self.choice)

    @property
    def title(self) -> str:
        """Its room's name as it is written on plans and pictures: one that is built later says so."""
        return f"{self.room}, later" if self.is_later else self.room

    @property
    def centre(self) -> tuple[float, float]:
        """Centre [ft]."""
        return (self.x_ft + self.width_ft / 2, self.y_ft + self.depth_ft / 2)

    @property
    def area_sqft(self) -> float:
        """Area of its ground [sq ft]."""
        return ground_sqft(self.shape, self.width_ft, self.depth_ft)

    @property
    def is_circle(self) -> bool:
        """Whether its ground is a circle."""
        return self.shape == "circle"


@dataclass(frozen=True, slots=True)
class Layout:
    """All placed rooms, in the brief's order; a wished room that is not here is left out."""

    placements: tuple[Placement, ...]

    @property
    def base(self) -> "Layout":
        """The layout before any room grew."""
        if not any(placement.has_grown for placement in self.placements):
            return self
        return Layout(tuple(placement.base for placement in self.placements))

    def of(self, room: str) -> Placement | None:
        """Where a room stands, or None if it is left out."""
        return next((placement for placement in self.placements if placement.room == room), None)

    def has(self, room: str) -> bool:
        """Whether a room is there, and does not come later."""
        return any(placement.room == room and not placement.is_later for placement in self.placements)
