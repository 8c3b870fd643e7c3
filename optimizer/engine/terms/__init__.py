"""Every loss that the engine counts, one file a term. Choices, order and slabs that are there stand apart:
the first two depend on no single place, the last on prices.
"""

from typing import Final

from optimizer.engine.terms import detours, near_misses, place_order, roofs, smoke, sun, terraces, walking, wishes
from optimizer.engine.terms.choices import choice_losses
from optimizer.engine.terms.order import Order, Rect, Standing, order_of
from optimizer.engine.terms.slabs import slab_losses
from optimizer.engine.terms.term import CENTS, Losses, Term
from optimizer.engine.terms.walking import Pull, pulls_to_points

TERMS: Final[tuple[Term, ...]] = (
    walking.TERM,
    detours.TERM,
    sun.TERM,
    smoke.TERM,
    place_order.TERM,
    terraces.TERM,
    roofs.TERM,
    roofs.SHARED,
    wishes.TERM,
    near_misses.TERM,
)

__all__ = [
    "CENTS",
    "TERMS",
    "Losses",
    "Order",
    "Pull",
    "Rect",
    "Standing",
    "Term",
    "choice_losses",
    "order_of",
    "pulls_to_points",
    "slab_losses",
]
