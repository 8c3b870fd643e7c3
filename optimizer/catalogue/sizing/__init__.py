"""Sizing of rooms from people and equipment, one kind a module."""

from optimizer.catalogue.sizing.extras import COVERED, SCREENED, cover_price
from optimizer.catalogue.sizing.kitchen import most_stools
from optimizer.catalogue.sizing.prepared import PREPARED
from optimizer.catalogue.sizing.run import is_hot, too_long
from optimizer.catalogue.sizing.sized_rooms import ONLY_SIZE, sized_room, sized_rooms
from optimizer.catalogue.sizing.waiting import comes_later, phase_in

__all__ = [
    "COVERED",
    "ONLY_SIZE",
    "PREPARED",
    "SCREENED",
    "comes_later",
    "cover_price",
    "is_hot",
    "most_stools",
    "phase_in",
    "sized_room",
    "sized_rooms",
    "too_long",
]
