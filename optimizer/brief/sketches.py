"""A layout of one's own, as the file gives it: no rule is asked of it before it is read."""

from dataclasses import dataclass

from optimizer.brief.holds import Side


@dataclass(frozen=True, slots=True)
class SketchedRoom:
    """A room where a person drew it: lower left corner and size on the plan [ft], `width_ft` along x.

    `choice` is the label of one of its choices; None: the one whose size is nearest.
    """

    room: str
    at_ft: tuple[float, float]
    width_ft: float
    depth_ft: float
    front: Side
    choice: str | None = None


@dataclass(frozen=True, slots=True)
class Sketch:
    """A named layout of one's own."""

    name: str
    rooms: tuple[SketchedRoom, ...]
