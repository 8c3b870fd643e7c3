"""What is built keeps its distance from septic tanks, septic fields and overhead lines."""

from collections.abc import Iterator

from shapely import Polygon

from optimizer.catalogue import SizedRoom, keep_out_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, cells_of
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_off
from optimizer.engine.rules.part import Part
from optimizer.site import BuiltClass


def _too_near(context: Context, room: SizedRoom) -> Iterator[KeptOff]:
    """Ground too near for what the room is built as up to its edge, and all of a septic field."""
    if not room.rules.built_as:
        return
    fields = (area for area in context.site.keep_outs if area.kind == "septic field")
    yield from (KeptOff(Polygon(field.outline)) for field in fields)
    yield from _near(context, room.rules.built_to_edge)


def _water_off(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions of water in its deck."""
    if not room.rules.has_deck:
        return None
    return water_off(context.lattice, room, variant, cells_of(context.lattice, _near(context, ("water",))))


def _near(context: Context, built_as: tuple[BuiltClass, ...]) -> Iterator[KeptOff]:
    for area in context.site.keep_outs:
        yield KeptOff(Polygon(area.outline), keep_out_ft(context.site, area.kind, built_as))


PART = Part(kept_off=_too_near, positions=_water_off)
