"""Gatherings: a table with its chairs, and a lounge for those whom the table does not seat."""

from collections.abc import Iterator
from math import ceil
from typing import Final

from optimizer.brief import RoomWish
from optimizer.catalogue.clearances import clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.kinds import kind_rules
from optimizer.catalogue.rooms import Item, Quantity
from optimizer.catalogue.sides import side_kind, side_quantities
from optimizer.catalogue.sizing.built_sides import seat_wall
from optimizer.catalogue.sizing.frame import Fitting, Level, Size, Sizer, moved, seats_of, sides, turned
from optimizer.catalogue.sizing.lounge import group_width_ft, lounge
from optimizer.catalogue.sizing.table import MOST_DINERS, table_size_ft, table_with_chairs

_ROUND_TABLE: Final = ("past_seated_edge", "behind_seated", "around_table_least")
"""Clearances round a table, the best first."""
_DEPTH_SHARE: Final = 0.8  # common practice, no source: 14 x 12 for six, 16 x 13 for eight
_SPARE_FT: Final = 0.5
_TEN_AND_LOUNGE_FT: Final = (24.0, 18.0)  # common practice, no source
_LOUNGE_SEATS_PER_GROUP: Final = 6
_SQFT_PER_LIGHT: Final = 90.0  # common practice, no source


def _sizes(wish: RoomWish) -> tuple[Size, Size, Size]:
    seats = data("sizes.yaml")["seats"]["gathering"] if wish.seats is None else wish.seats
    width, depth = _least(seats)
    modest, comfortable, generous = (
        Size(width + more, max(depth, ceil(_DEPTH_SHARE * (width + more))), seats)
        for more in data("sizes.yaml")["gathering growth"]
    )
    return modest, comfortable, generous


def _least(seats: int) -> tuple[float, float]:
    """Width and depth for so many [ft]."""
    if seats <= MOST_DINERS:
        width = float(ceil(table_size_ft(max(2, seats))[0] + 2 * clearance_ft("past_seated_edge") + _SPARE_FT))
        return width, ceil(_DEPTH_SHARE * width)
    groups = ceil((seats - MOST_DINERS) / _LOUNGE_SEATS_PER_GROUP)
    width = max(_TEN_AND_LOUNGE_FT[0], ceil(groups * (group_width_ft() + clearance_ft("walkway"))))
    return width, max(_TEN_AND_LOUNGE_FT[1], ceil(width / kind_rules("gathering").longest_ratio))


def _fit(_wish: RoomWish, size: Size, level: Level) -> Fitting:
    furniture = _furniture(size) if size.width_ft >= size.depth_ft else turned(_furniture(size.turned))
    if level == "generous":
        furniture += _wall_in_front(size, furniture)
    quantities = (
        Quantity("unit paving", size.area_sqft, by="ground"),
        *side_quantities("gathering", furniture),
        Quantity("light", max(1, round(size.area_sqft / _SQFT_PER_LIGHT))),
    )
    return Fitting(furniture, quantities, sides())


def _wall_in_front(size: Size, furniture: tuple[Item, ...]) -> tuple[Item, ...]:
    """Seat wall along half of the front, which looks away from the house, if people can still walk past the seated.

    One walks out beside it, to the left and to the right. Its seats are not promised and not counted.
    """
    y = size.depth_ft - side_kind("seat wall").depth_ft
    ends = (item.y_ft + item.depth_ft for item in furniture if item.role != "chair")
    if y - max(ends, default=0.0) < clearance_ft("walk_past_seated"):
        return ()
    return seat_wall(size.width_ft / 4, y, size.width_ft / 2)


def _furniture(size: Size) -> tuple[Item, ...]:
    """Plan that seats most; among those the widest clearances, then the longest table."""
    return max(_plans(size), key=seats_of, default=())


def _plans(size: Size) -> Iterator[tuple[Item, ...]]:
    for clearance in _ROUND_TABLE:
        for diners in range(min(size.seats, MOST_DINERS), 0, -1):
            yield from _plans_with_table(size, diners, clearance_ft(clearance))
    yield lounge(width_ft=size.width_ft, depth_ft=size.depth_ft, seats=size.seats)


def _plans_with_table(size: Size, diners: int, clear_ft: float) -> Iterator[tuple[Item, ...]]:
    """Table in the middle of its end or strip of the room, the lounge in what is left beside or before it."""
    length, width = table_size_ft(diners)
    block_x, block_y = length + 2 * clear_ft, width + 2 * clear_ft
    if block_x > size.width_ft or block_y > size.depth_ft:
        return
    table, rest = table_with_chairs(diners), size.seats - diners
    if rest == 0:
        yield moved(table, right_ft=(size.width_ft - length) / 2, out_ft=(size.depth_ft - width) / 2)
        return
    before = lounge(width_ft=size.width_ft, depth_ft=size.depth_ft - block_y, seats=rest)
    yield (*moved(table, right_ft=(size.width_ft - length) / 2, out_ft=clear_ft), *moved(before, out_ft=block_y))
    beside = lounge(width_ft=size.width_ft - block_x, depth_ft=size.depth_ft, seats=rest)
    yield (*moved(table, right_ft=clear_ft, out_ft=(size.depth_ft - width) / 2), *moved(beside, right_ft=block_x))


GATHERING: Final = Sizer(_sizes, _fit)
