"""A small drawing that is set into a sheet."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from optimizer.drawing.marks import Area, Circle, Line, Mark, Text
from optimizer.site import Point

Move = Callable[[Point], Point]


@dataclass(frozen=True, slots=True)
class Inset:
    """Marks and texts from the lower left corner (0, 0) on, and how much of the sheet they take [ft]."""

    marks: tuple[Mark, ...]
    texts: tuple[Text, ...]
    width_ft: float
    height_ft: float

    def set_at(self, corner: Point) -> "Inset":
        """The same with its lower left corner there."""

        def move(point: Point) -> Point:
            return (point[0] + corner[0], point[1] + corner[1])

        marks = tuple(moved_mark(mark, move) for mark in self.marks)
        texts = tuple(replace(text, at=move(text.at)) for text in self.texts)
        return Inset(marks, texts, self.width_ft, self.height_ft)


def moved_mark(mark: Mark, move: Move) -> Mark:
    """The mark with all of its points moved; a circle keeps its size."""
    match mark:
        case Area(role, rings):
            return Area(role, tuple(tuple(map(move, ring)) for ring in rings))
        case Line(role, points):
            return Line(role, tuple(map(move, points)))
        case Circle(role, centre, radius_ft):
            return Circle(role, move(centre), radius_ft)
