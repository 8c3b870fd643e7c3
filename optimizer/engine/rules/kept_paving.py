"""No room stands on paving that is kept as it is."""

from collections.abc import Iterator

from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.rules.part import Part


def _on_kept_paving(context: Context, _room: SizedRoom) -> Iterator[KeptOff]:
    return (KeptOff(Polygon(paving.outline)) for paving in context.site.paving if paving.then == "keep")


PART = Part(kept_off=_on_kept_paving)
