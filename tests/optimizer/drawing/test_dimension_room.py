"""Where a dimension finds room: its figure off planting and steps, its line where nobody takes it for another room's."""

import pytest
from shapely import Polygon, box

from optimizer.drawing.dimension_room import Sheet, first_clear
from optimizer.drawing.marks import Dimension
from optimizer.layout import Placement
from tests.yards import PLAIN_SITE

TABLE = Placement("table", "one", 20, 16, 14, 12, "+y")
BED = Placement("bed", "one", 20, 28, 14, 4, "+y")
PLAN = (-8.0, -8.0, 68.0, 60.0)


def above(*, offset_ft: float, share: float = 0.5) -> Dimension:
    """The table's width above its upper edge."""
    return Dimension((20, 28), (34, 28), offset_ft, "14'-0\"", 1.0, share)


def clear(*wanted: Dimension, rooms: tuple[Placement, ...] = (TABLE,), unwritten: Polygon | None = None) -> list[float]:
    """Offset and share of the one that is taken."""
    sheet = Sheet.of(PLAIN_SITE, rooms, (), unwritten or Polygon(), PLAN)
    return [value for found in first_clear(sheet, TABLE, wanted, ()) for value in (found.offset_ft, found.share)]


def test_a_figure_keeps_off_planting_and_steps_that_its_line_may_cross() -> None:
    """A bed of 4 ft along the room: the figure stands beyond it, the lines to it run across."""
    wanted = [above(offset_ft=offset) for offset in (1.3, 2.6, 3.9)]
    assert clear(*wanted) == [1.3, 0.5]
    assert clear(*wanted, unwritten=box(20, 28, 34, 31.9)) == [3.9, 0.5]


def test_a_figure_moves_along_its_line_to_free_ground() -> None:
    """Half of the line lies over a landing."""
    wanted = [above(offset_ft=1.3, share=share) for share in (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74)]
    assert clear(*wanted, unwritten=box(20, 28, 27, 32)) == pytest.approx([1.3, 0.66])


def test_no_dimension_lies_beyond_another_room() -> None:
    """There it would measure that room."""
    assert clear(above(offset_ft=5.2), rooms=(TABLE, BED)) == []
    assert clear(above(offset_ft=5.2)) == [5.2, 0.5]
