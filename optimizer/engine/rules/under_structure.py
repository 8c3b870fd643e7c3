"""Only rooms that are allowed there stand under an existing structure, with no second roof."""

from collections.abc import Sequence

from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part


def _under_other_roofs(context: Context, room: SizedRoom) -> Sequence[KeptOff]:
    """Ground under a structure that may not hold the room."""
    return _under(context, room, may_hold=False)


def _second_roof(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions of a covered choice that lie under no structure."""
    if not variant.covered:
        return None
    roofs = _under(context, room, may_hold=True)
    return ~on_any(context.lattice, variant, roofs) if roofs else None


def _under(context: Context, room: SizedRoom, *, may_hold: bool) -> list[KeptOff]:
    return [KeptOff(Polygon(s.outline)) for s in context.site.structures if (room.name in s.may_hold) == may_hold]


PART = Part(kept_off=_under_other_roofs, positions=_second_roof)
