"""Built water has a deck of 4 ft or more round it, and nobody digs for it in a tree's root ring."""

from shapely import Point

from optimizer.catalogue import SizedRoom, least_deck_ft, root_rings
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.raster import any_of, within
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_off
from optimizer.engine.rules.part import Part

_ROUNDING_FT = 0.02


def _has_deck(_context: Context, room: SizedRoom, variant: Variant) -> bool:
    """Whether the choice leaves the deck; rounding up to the grid only adds to it."""
    choice = room.choices[variant.choice]
    if not room.rules.has_deck or choice.water is None:
        return True
    left, low, right, top = choice.water
    return min(left, low, choice.width_ft - right, choice.depth_ft - top) >= least_deck_ft() - _ROUNDING_FT


def _off_roots(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions whose water stays out of the outer ring of every kept tree."""
    if not room.rules.has_deck:
        return None
    trunks = root_rings(context.site).outer_trunks
    near = [within(context.lattice, Point(t.at), trunks * t.trunk_diameter_ft) for t in context.site.trees]
    return water_off(context.lattice, room, variant, any_of(context.lattice, near))


PART = Part(sizes=_has_deck, positions=_off_roots)
