"""What is built keeps its distance from known lines in the ground."""

from collections.abc import Iterator

from shapely import LineString

from optimizer.catalogue import SizedRoom, line_clear_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.rules.part import Part


def _near_lines(context: Context, room: SizedRoom) -> Iterator[KeptOff]:
    """Ground nearer to a known line than its clear width."""
    if not room.rules.built_as:
        return
    for line in context.site.utility_lines:
        yield KeptOff(LineString(line.line), line_clear_ft(context.site, line))


PART = Part(kept_off=_near_lines)
