"""Where the level of a room is written, in it or beside it."""

from shapely import Polygon, box

from optimizer.drawing.level_marks import level_marks
from optimizer.layout import Layout, placed_of
from tests.yards import plain_rooms, sized, stand

PLACED = placed_of(
    plain_rooms(sized("table", "gathering", 14, 12, required=True)),
    Layout((stand("table", 10, 16, 14, 12), stand("nook", 24, 16, 8, 7))),
)
TABLE, NOOK = box(10, 16, 24, 28), box(24, 16, 32, 23)
NOTHING = Polygon()


def written(taken=NOTHING, beside=NOTHING):
    """Box of the table's figure."""
    _, texts = level_marks(PLACED, {"table": -0.6}, taken=taken, beside=beside, units="ft", scale=1.0)
    return [box(*text.box) for text in texts]


def test_in_the_room_where_it_is_free():
    """Near a corner, whatever lies beside the room."""
    (figure,) = written(beside=box(0, 0, 60, 40))
    assert TABLE.contains(figure)


def test_a_full_room_has_it_beside():
    """Close to it, off what lies there, and not at the room that touches it; with no free ground there is none."""
    (figure,) = written(taken=TABLE)
    assert not figure.intersects(TABLE)
    assert figure.distance(TABLE) < 3
    assert figure.distance(NOOK) > 1.5
    (other,) = written(taken=TABLE, beside=figure)
    assert not other.intersects(figure)
    assert written(taken=TABLE, beside=box(0, 0, 60, 40)) == []


def test_none_where_it_would_seem_another_rooms():
    """All that is free beside the full table lies within 1.5 ft of the nook."""
    free = box(24.05, 23.05, 40, 25.4)
    assert written(taken=TABLE, beside=box(0, 0, 60, 40).difference(free.buffer(-0.01))) == []
