"""One outline with its border course round paved rooms that touch: what is built as one terrace reads as one."""

from collections.abc import Iterator
from typing import Final

from shapely import union_all

from optimizer.drawing.marks import Mark
from optimizer.drawing.outlines import areas_of
from optimizer.layout import Placed

BORDER_FT: Final = 0.67
"""Width of a border course: one paver laid across, 8 in; common practice, no source."""
_TOUCH_FT: Final = 0.02


def terrace_marks(placed: Placed) -> Iterator[Mark]:
    """Outline of each terrace and the inner edge of its border."""
    terraces = union_all([room.shape.buffer(_TOUCH_FT, join_style="mitre") for room in placed.paved])
    yield from areas_of("terrace_border", terraces.buffer(-BORDER_FT, join_style="mitre"))
    yield from areas_of("terrace", terraces)
