"""A room that is held keeps its place, area, front and choice. Of what is held the problem itself makes the cells."""

from collections.abc import Iterator

import numpy as np
from shapely import Polygon

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.held import held_block, held_front
from optimizer.engine.grid.kept_off import KeptOff, outside
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.part import Part

_CONVERSION_FT = 0.01  # a cell may poke out by what conversion from metres adds, never more


def _as_held(context: Context, room: SizedRoom, variant: Variant) -> bool:
    """Whether a variant is of the choice and in the turn that are held."""
    choice, front = room.choices[variant.choice], held_front(context, room.name)
    labels = {hold.choice for hold in context.scenario.brief.holds_of(room.name)} - {None}
    if front is None or variant.front is not None:
        return labels <= {choice.label} and front in {None, variant.front}
    is_even = context.lattice.need(choice.width_ft) == context.lattice.need(choice.depth_ft)
    turned = variant.is_upright == (front in {"+y", "-y"})
    return labels <= {choice.label} and (is_even or turned)


def _out_of_areas(context: Context, room: SizedRoom) -> Iterator[KeptOff]:
    """Ground outside an area that the room is held in, or inside one that it is held out of."""
    pose = context.pose
    for hold in context.scenario.brief.holds_of(room.name):
        if hold.within is not None:
            yield outside(Polygon(map(pose.point, hold.within)).buffer(_CONVERSION_FT, join_style="mitre"))
        if hold.not_in is not None:
            yield KeptOff(Polygon(map(pose.point, hold.not_in)))


def _held_place(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """The one position at a held place."""
    block = held_block(context, room, variant)
    if block is None:
        return None
    rows, columns = context.lattice.rows, context.lattice.columns
    allowed = np.zeros((rows, columns), dtype=bool)
    if 0 <= block.y < rows and 0 <= block.x < columns:
        allowed[block.y, block.x] = True
    return allowed


PART = Part(sizes=_as_held, kept_off=_out_of_areas, positions=_held_place, whole=True)
