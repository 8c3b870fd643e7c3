"""What of a plan's writing lies on furniture, and which figures lie on planting or steps: nothing should."""

from shapely import LineString, Point, Polygon, box
from shapely.geometry.base import BaseGeometry

from optimizer.drawing import Area, Circle, Drawing, Mark

NOT_ON_THE_SHEET = "room_name_large"


def on_furniture(drawing: Drawing) -> list[tuple[str, str]]:
    """Texts and figures of dimensions that share ground with a piece of furniture, each with the piece's role.

    What may be built one day is a dashed outline: there is room for a label within it. A pool has its name on its water,
    as is usual.
    """
    pieces = [
        (mark.role, shape_of(mark))
        for mark in drawing.marks
        if isinstance(mark, Area | Circle)
        and mark.role.startswith("furniture")
        and mark.role not in ("furniture.future", "furniture.detail", "furniture.water")
    ]
    texts = [text for text in drawing.texts if text.role != NOT_ON_THE_SHEET]
    texts += [dimension.label for dimension in drawing.dimensions]
    assert pieces
    return [(text.text, role) for text in texts for role, piece in pieces if piece.intersects(box(*text.box))]


UNWRITTEN = ("bed", "mulch", "plant", "door_zone", "step", "riser", "later_way", "pool_barrier")


def on_unwritten(drawing: Drawing) -> list[tuple[str, str]]:
    """Figures of dimensions that share ground with planting, a landing, steps, a barrier or a machine's way."""
    marks = [(mark.role, shape_of(mark)) for mark in drawing.marks if mark.role in UNWRITTEN]
    assert marks
    figures = [(dimension.text, box(*dimension.label.box)) for dimension in drawing.dimensions]
    return [(text, role) for text, figure in figures for role, shape in marks if shape.intersects(figure)]


def shape_of(mark: Mark) -> BaseGeometry:
    """Ground or line of a mark."""
    if isinstance(mark, Circle):
        return Point(mark.centre).buffer(mark.radius_ft)
    return Polygon(mark.rings[0], mark.rings[1:]) if isinstance(mark, Area) else LineString(mark.points)
