"""A room's place on the plan, and all of them together."""

from dataclasses import dataclass
from typing import Final, Literal

Front = Literal["+x", "-x", "+y", "-y"]
FRONT_VECTORS: Final[dict[Front, tuple[int, int]]] = {"+x": (1, 0), "-x": (-1, 0), "+y": (0, 1), "-y": (0, -1)}


@dataclass(frozen=True, slots=True)
class Placement:
    """One placed room: lower left corner and size on plan axes [ft]; `width_ft` is along x as placed."""

    room: str
    choice: str
    x_ft: float
    y_ft: float
    width_ft: float
    depth_ft: float
    front: Front

    @property
    def right_ft(self) -> float:
        """Right edge [ft]."""
        return self.x_ft + self.width_ft

    @property
    def top_ft(self) -> float:
        """Upper edge [ft]."""
        return self.y_ft + self.depth_ft

    @property
    def centre(self) -> tuple[float, float]:
        """Centre [ft]."""
        return (self.x_ft + self.width_ft / 2, self.y_ft + self.depth_ft / 2)

    @property
    def area_sqft(self) -> float:
        """Area [sq ft]."""
        return self.width_ft * self.depth_ft


@dataclass(frozen=True, slots=True)
class Layout:
    """All placed rooms, in the brief's order; a wished room that is not here is left out."""

    placements: tuple[Placement, ...]

    def of(self, room: str) -> Placement | None:
        """Where a room stands, or None if it is left out."""
        return next((placement for placement in self.placements if placement.room == room), None)
