"""Every room lies inside the boundary and keeps the setbacks that apply to it."""

from collections.abc import Iterator

from shapely import LineString

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, cells_of, on_any, outside
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_off
from optimizer.engine.rules.part import Part
from optimizer.site import BuiltClass

_CONVERSION_FT = 0.01  # a cell may poke out by what conversion from metres adds, never more


def _outside(context: Context, room: SizedRoom) -> Iterator[KeptOff]:
    """Ground outside the boundary, or closer to an edge than the largest setback of what the room is built as."""
    yield outside(context.boundary.buffer(_CONVERSION_FT, join_style="mitre"))
    yield from _before_setbacks(context, room.rules.built_to_edge)


def _of_choice(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions behind the setbacks of what a choice adds to its kind, a roof or a screen, and of water in its deck."""
    added = room.built_as(room.choices[variant.choice])[len(room.rules.built_as) :]
    kept = ~on_any(context.lattice, variant, tuple(_before_setbacks(context, added)))
    if room.rules.has_deck:
        before = cells_of(context.lattice, _before_setbacks(context, ("water",)))
        kept &= water_off(context.lattice, room, variant, before)
    return kept if added or room.rules.has_deck else None


def _before_setbacks(context: Context, built_as: tuple[BuiltClass, ...]) -> Iterator[KeptOff]:
    corners = context.site.boundary
    for start, end, setbacks in zip(corners, corners[1:] + corners[:1], context.site.setbacks, strict=True):
        depth_ft = max((setbacks.of(built) for built in built_as), default=0.0)
        yield KeptOff(LineString([start, end]), depth_ft - _CONVERSION_FT)


PART = Part(kept_off=_outside, positions=_of_choice)
