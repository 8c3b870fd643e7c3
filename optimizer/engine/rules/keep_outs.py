"""Keep-out ground has only what is allowed there."""

from collections.abc import Iterator

from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.rules.part import Part


def _kept_out(context: Context, room: SizedRoom) -> Iterator[KeptOff]:
    """Kept-out ground that does not allow the room's kind."""
    return (KeptOff(Polygon(area.outline)) for area in context.site.keep_outs if room.rules.kind not in area.allow)


PART = Part(kept_off=_kept_out)
