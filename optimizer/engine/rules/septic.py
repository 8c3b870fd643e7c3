"""What is built keeps its distance from septic tanks, septic fields and overhead lines."""

import numpy as np
from shapely import Polygon

from optimizer.catalogue import SizedRoom, keep_out_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, covered, within
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_off
from optimizer.engine.rules.part import Part
from optimizer.site import BuiltClass


def _too_near(context: Context, room: SizedRoom) -> Cells | None:
    """Cells too near for what the room is built as up to its edge, and all of a septic field."""
    if not room.rules.built_as:
        return None
    fields = [Polygon(area.outline) for area in context.site.keep_outs if area.kind == "septic field"]
    on_fields = any_of(context.lattice, [covered(context.lattice, field) for field in fields])
    return np.asarray(on_fields | _near(context, room.rules.built_to_edge))


def _water_off(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions of water in its deck."""
    return water_off(context.lattice, room, variant, _near(context, ("water",))) if room.rules.has_deck else None


def _near(context: Context, built_as: tuple[BuiltClass, ...]) -> Cells:
    areas = ((Polygon(k.outline), keep_out_ft(context.site, k.kind, built_as)) for k in context.site.keep_outs)
    return any_of(context.lattice, [within(context.lattice, outline, asked) for outline, asked in areas])


PART = Part(cells=_too_near, positions=_water_off)
