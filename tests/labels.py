"""What of a plan's writing lies on furniture: nothing should."""

from shapely import Point, Polygon, box

from optimizer.drawing import Area, Circle, Drawing

NOT_ON_THE_SHEET = "room_name_large"


def on_furniture(drawing: Drawing) -> list[tuple[str, str]]:
    """Texts and figures of dimensions that share ground with a piece of furniture, each with the piece's role.

    What may be built one day is a dashed outline: there is room for a label within it. A pool has its name on its water,
    as is usual.
    """
    pieces = [
        (mark.role, Polygon(mark.rings[0]) if isinstance(mark, Area) else Point(mark.centre).buffer(mark.radius_ft))
        for mark in drawing.marks
        if isinstance(mark, Area | Circle)
        and mark.role.startswith("furniture")
        and mark.role not in ("furniture.future", "furniture.detail", "furniture.water")
    ]
    texts = [text for text in drawing.texts if text.role != NOT_ON_THE_SHEET]
    texts += [dimension.label for dimension in drawing.dimensions]
    assert pieces
    return [(text.text, role) for text in texts for role, piece in pieces if piece.intersects(box(*text.box))]
