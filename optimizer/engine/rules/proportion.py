"""No room is too long for its width, and none is smaller than 40 sq ft."""

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.variants import LEAST_AREA_SQFT, Variant
from optimizer.engine.rules.part import Part


def _is_room(context: Context, room: SizedRoom, variant: Variant) -> bool:
    long, short = max(variant.width, variant.depth), min(variant.width, variant.depth)
    area_sqft = variant.area * context.lattice.step_ft**2
    return long <= short * room.rules.longest_ratio + 1e-6 and area_sqft >= LEAST_AREA_SQFT - 1e-6


PART = Part(sizes=_is_room)
