"""What a person holds: a decision on one room that every concept keeps, as hard as any rule."""

from dataclasses import dataclass
from typing import Literal

Side = Literal["+x", "-x", "+y", "-y"]
Corners = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Hold:
    """A decision on one room; None for what it leaves open.

    `at_ft` is the lower left corner on the plan [ft], `within` and `not_in` are counter-clockwise outlines of areas
    [ft], `front` is the side that the room opens or serves to, `choice` the label of one of its choices.
    """

    room: str
    at_ft: tuple[float, float] | None = None
    within: Corners | None = None
    not_in: Corners | None = None
    front: Side | None = None
    choice: str | None = None

    @property
    def asks_for_room(self) -> bool:
        """Whether the room must be there: a place or a choice is decided for a room that will be built."""
        return self.at_ft is not None or self.choice is not None
