"""One outline with its border course round paved rooms that touch: what is built as one terrace reads as one."""

from collections.abc import Iterator, Mapping
from typing import Final

from shapely import union_all

from optimizer.catalogue import SizedRoom
from optimizer.circulation import rectangle
from optimizer.drawing.marks import Mark
from optimizer.drawing.outlines import areas_of
from optimizer.layout import Layout

BORDER_FT: Final = 0.67
"""Width of a border course: one paver laid across, 8 in; common practice, no source."""
_TOUCH_FT: Final = 0.02


def terrace_marks(rooms: Mapping[str, SizedRoom], layout: Layout) -> Iterator[Mark]:
    """Outline of each terrace and the inner edge of its border."""
    paved = [rectangle(p) for p in layout.placements if rooms[p.room].rules.paved]
    terraces = union_all([room.buffer(_TOUCH_FT, join_style="mitre") for room in paved])
    yield from areas_of("terrace_border", terraces.buffer(-BORDER_FT, join_style="mitre"))
    yield from areas_of("terrace", terraces)
