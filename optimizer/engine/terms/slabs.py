"""What a place costs that no existing slab carries, though one might carry the room, and where a slab is lifted for it.

It stands apart from the other losses of places, since it depends on the price book: the losses of choices count rooms
that a slab may carry at what they cost on it, and this is what they cost more elsewhere.
"""

from functools import lru_cache

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import LIFTED, PriceBook, SizedRoom, existing_of, is_carried, rates, room_price
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, on_any, outside
from optimizer.engine.grid.lattice import Cells, any_in_window, window_sums
from optimizer.engine.grid.variants import Variant
from optimizer.engine.terms.term import CENTS, Losses
from optimizer.fields.existing_paving import carrying_slabs, paving_to
from optimizer.layout import TOLERANCE_FT


def slab_losses(context: Context, room: SizedRoom, variant: Variant, book: PriceBook) -> Losses | None:
    """Loss at each lower left corner [cents], none of it above what the take-off counts; None without such slabs."""
    if not paving_to(context.site, "reuse"):
        return None
    choice, brief = room.choices[variant.choice], context.scenario.brief
    per_unit = CENTS * brief.weights.cost * rates().cost * float(brief.budget.factor)
    spared = room_price(choice, room, book) - room_price(choice, room, book, existing_of(context.site))
    lifted = float(book.of(LIFTED).price) * _lifted_sqft(context, variant) if room.phase_of(choice) == 1 else 0.0
    money = np.where(_carried(context, room, variant), 0.0, float(spared) + lifted)
    return np.asarray(np.floor(per_unit * money), dtype=np.int64)


def _carried(context: Context, room: SizedRoom, variant: Variant) -> Cells:
    """Positions in which the room, where it is paved, lies wholly on a slab that falls enough."""
    found = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    if is_carried(room.rules):
        for _, slab in carrying_slabs(context.site):
            if variant.is_round:
                found |= ~on_any(context.lattice, variant, [_beside(slab)])
            else:
                found |= ~any_in_window(~_inside(context, slab), width=variant.width, depth=variant.depth)
    return found


def _lifted_sqft(context: Context, variant: Variant) -> NDArray[np.float64]:
    """Area of the slabs under a room at each position."""
    result = np.zeros((context.lattice.rows, context.lattice.columns))
    if variant.is_round:
        return result  # a floor: the take-off counts what of a slab lies under the circle
    sums = window_sums(_slab_sqft(context), width=variant.width, depth=variant.depth)
    # Sums of areas leave hairs, and a loss below 0 would be a level less.
    result[: sums.shape[0], : sums.shape[1]] = np.round(sums, 6)
    return result


@lru_cache(maxsize=32)
def _beside(slab: BaseGeometry) -> KeptOff:
    """All ground that is not on a slab."""
    return outside(slab.buffer(TOLERANCE_FT / 2, join_style="mitre"))


@lru_cache(maxsize=32)
def _inside(context: Context, slab: BaseGeometry) -> Cells:
    """Cells that lie wholly on a slab."""
    wider = slab.buffer(TOLERANCE_FT / 2, join_style="mitre")
    return np.asarray(shapely.covers(wider, context.lattice.boxes()), dtype=bool)


@lru_cache(maxsize=8)
def _slab_sqft(context: Context) -> NDArray[np.float64]:
    """Area of the slabs that may carry a room, in each cell."""
    slabs = shapely.union_all([ground for _, ground in paving_to(context.site, "reuse")])
    return np.asarray(shapely.area(shapely.intersection(context.lattice.boxes(), slabs)))
