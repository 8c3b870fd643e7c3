"""Ground that is held for later in a figure: as it lies today, outlined in dashes and hatched; nothing is built."""

from collections.abc import Iterator
from html import escape
from typing import Final

import numpy as np
import plotly.graph_objects as go
import shapely
from numpy.typing import NDArray
from shapely import LineString, Polygon

from optimizer.figures.solids import DRAPE_FT, Heights
from optimizer.layout import PlacedRoom

LINE_COLOUR: Final = "#6f7a5c"
ABOVE_FT: Final = 0.25
"""Lines lie so far above the ground, or it would hide parts of them."""
HATCH_FT: Final = 4.0
"""Between two lines of the hatching; as drawn, no source."""


def is_held_ground(room: PlacedRoom) -> bool:
    """Whether a room's ground is only kept free now: a reserve, or a pool of a later phase."""
    return room.kind == "reserve" or (room.rules.has_deck and room.phase > 1)


def held_marks(name: str, shape: Polygon, ground: Heights) -> Iterator[go.Scatter3d]:
    """Dashed outline and hatching of held ground, laid over the ground."""
    outline = [LineString(shape.exterior)]
    for lines, dash, width in ((outline, "dash", 5), (_hatching(shape), "solid", 2)):
        x, y, z = _over(lines, ground)
        yield go.Scatter3d(
            x=x,
            y=y,
            z=z,
            mode="lines",
            name=f"{name}, kept free",
            line={"color": LINE_COLOUR, "width": width, "dash": dash},
            hovertext=escape(f"{name}, kept free for later"),
            hoverinfo="text",
        )


def _hatching(shape: Polygon) -> list[LineString]:
    """Lines from lower left to upper right across a shape."""
    x1, y1, x2, y2 = shape.bounds
    rise = y2 - y1
    starts = np.arange(x1 - rise + HATCH_FT, x2, HATCH_FT)
    parts = [shapely.intersection(LineString([(x, y1), (x + rise, y2)]), shape) for x in starts]
    return [line for part in parts for line in shapely.get_parts(part) if isinstance(line, LineString)]


def _over(lines: list[LineString], ground: Heights) -> NDArray[np.float64]:
    """Points (3, n) of lines that follow the ground, with a gap after each."""
    pieces = []
    for line in lines:
        points = shapely.get_coordinates(shapely.segmentize(line, DRAPE_FT))
        pieces += [np.column_stack([points, ground(points) + ABOVE_FT]), np.full((1, 3), np.nan)]
    return np.concatenate(pieces).T.round(3) if pieces else np.empty((3, 0))
