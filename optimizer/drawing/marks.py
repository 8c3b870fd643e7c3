"""What a drawing is made of: areas, lines, circles, texts and dimensions, in plan feet, each with a role and no looks.

A role is a word, or two with a dot between (`room.kitchen`, `furniture.table`): a writer that knows no look for the
whole of it takes the look of its first word.
"""

from dataclasses import dataclass, field
from typing import Literal

from optimizer.drawing.type_width import width_of
from optimizer.site import Point, Ring

Box = tuple[float, float, float, float]
"""Least x, least y, greatest x, greatest y [ft]."""

TYPE_FT = 1.0
"""The one size of all that is written on a plan, before the scale of its sheet; layout rule 32."""


@dataclass(frozen=True, slots=True)
class Area:
    """A filled outline with its holes; each ring closes by itself."""

    role: str
    rings: tuple[Ring, ...]


@dataclass(frozen=True, slots=True)
class Line:
    """An open line through points."""

    role: str
    points: Ring


@dataclass(frozen=True, slots=True)
class Circle:
    """A full circle."""

    role: str
    centre: Point
    radius_ft: float


Mark = Area | Line | Circle


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; `at` is its left end, middle or right end at half height, `turn_deg` counter-clockwise."""

    role: str
    at: Point
    text: str
    size_ft: float
    anchor: Literal["start", "middle", "end"] = "middle"
    turn_deg: float = 0.0

    @property
    def width_ft(self) -> float:
        """Estimated length of the line [ft]."""
        return width_of(self.text) * self.size_ft

    @property
    def box(self) -> Box:
        """Estimated bounds; a text that is turned is turned by a quarter."""
        along, across = self.width_ft, self.size_ft
        back = {"start": 0.0, "middle": 0.5, "end": 1.0}[self.anchor] * along
        x, y = self.at
        if self.turn_deg:
            return (x - across / 2, y - back, x + across / 2, y - back + along)
        return (x - back, y - across / 2, x - back + along, y + across / 2)


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured length: the line lies `offset_ft` to the left of the way from `start` to `end` (right if negative).

    Its figure stands at a share of the line.
    """

    start: Point
    end: Point
    offset_ft: float
    text: str
    size_ft: float
    share: float = 0.5

    @property
    def is_upright(self) -> bool:
        """Whether it runs along y."""
        return abs(self.end[1] - self.start[1]) > abs(self.end[0] - self.start[0])

    @property
    def line(self) -> tuple[Point, Point]:
        """Ends of the dimension line [ft]."""
        (x1, y1), (x2, y2) = self.start, self.end
        length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5 or 1.0
        dx, dy = -(y2 - y1) / length * self.offset_ft, (x2 - x1) / length * self.offset_ft
        return ((x1 + dx, y1 + dy), (x2 + dx, y2 + dy))

    @property
    def label(self) -> Text:
        """Its figure, just above the line, or just left of an upright one."""
        (x1, y1), (x2, y2) = self.line
        x, y, rise = x1 + self.share * (x2 - x1), y1 + self.share * (y2 - y1), 0.7 * self.size_ft
        if self.is_upright:
            return Text("dimension", (x - rise, y), self.text, self.size_ft, turn_deg=90.0)
        return Text("dimension", (x, y + rise), self.text, self.size_ft)

    @property
    def box(self) -> Box:
        """Bounds of line, ticks and figure [ft]."""
        (x1, y1), (x2, y2) = self.line
        tick = self.size_ft / 2
        ends = (min(x1, x2) - tick, min(y1, y2) - tick, max(x1, x2) + tick, max(y1, y2) + tick)
        text = self.label.box
        return (min(ends[0], text[0]), min(ends[1], text[1]), max(ends[2], text[2]), max(ends[3], text[3]))


@dataclass(frozen=True, slots=True)
class Names:
    """Names of rooms in one size of type, and the leaders to those that stand outside."""

    leaders: tuple[Line, ...] = ()
    texts: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Drawing:
    """A whole sheet in plan feet: the plan within `plan_box`, the sheet around it within `sheet_box`.

    `marks` are the plan, first to last as they cover each other; `key` is what stands beside it: legend, north arrow
    and scale bar. Texts with the role `room_name_large` serve pictures too small for the others, `on_screen` the plan
    alone in part of a window.
    """

    title: str
    description: str
    metric: bool
    plan_box: Box
    sheet_box: Box
    marks: tuple[Mark, ...]
    key: tuple[Mark, ...]
    texts: tuple[Text, ...]
    dimensions: tuple[Dimension, ...]
    on_screen: Names = field(default_factory=Names)
