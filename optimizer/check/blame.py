"""Who is to blame for what the whole layout brings about: the rooms but for which it would not be so."""

from collections.abc import Callable, Iterable, Iterator
from typing import Final

from shapely.geometry.base import BaseGeometry

from optimizer.circulation import CLEAR_WIDTH_FT
from optimizer.layout import Placed, PlacedRoom

_ROUND_FT: Final = CLEAR_WIDTH_FT
"""How far round a room people are kept off it, and a step more: where they stand at its end of a walk moves with it."""


def blamed(placed: Placed, among: Iterable[PlacedRoom], holds: Callable[[Placed], bool]) -> tuple[str, ...]:
    """Names of those rooms without any one of which a rule holds; where there is none such, of all of them if it holds
    without them all, and of none if not even then.
    """
    names = tuple(room.name for room in among)
    alone = tuple(name for name in names if holds(placed.without(name)))
    if alone or len(names) < 2:
        return alone
    return names if holds(placed.without(*names)) else ()


def standing_between(
    rooms: Iterable[PlacedRoom], ends: tuple[BaseGeometry, BaseGeometry], within_ft: float
) -> Iterator[PlacedRoom]:
    """Rooms that a walk of no more than this from end to end may be led round; without any other it is no shorter."""
    one, other = ends
    reach_ft = within_ft + 2 * _ROUND_FT
    return (room for room in rooms if room.shape.distance(one) + room.shape.distance(other) <= reach_ft)
