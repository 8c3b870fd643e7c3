"""Nooks: two lounge chairs with a small table, and a bench opposite for more, or a bed at their back."""

from math import ceil, floor
from typing import Final

from optimizer.brief import RoomWish
from optimizer.catalogue.clearances import clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.kinds import kind_rules
from optimizer.catalogue.rooms import Item, Quantity
from optimizer.catalogue.sides import side_quantities
from optimizer.catalogue.sizing.built_sides import bed_at_back
from optimizer.catalogue.sizing.frame import Fitting, Level, Size, Sizer, moved, seats_of, sides, turned

_MARGIN_FT: Final = 0.5
_CHAIRS: Final = 2
_KNEES_FT: Final = 2.0  # between a bench and the chairs opposite; common practice, no source


def _sizes(wish: RoomWish) -> tuple[Size, Size, Size]:
    seats = data("sizes.yaml")["seats"]["nook"] if wish.seats is None else wish.seats
    sizes = data("sizes.yaml")["nook for two" if seats <= _CHAIRS else "nook for four"]
    more = max(0, seats - 2 * _CHAIRS) * clearance_ft("bench_seat")
    modest, comfortable, generous = (_stretched(width + more, depth, seats) for width, depth in sizes)
    return modest, comfortable, generous


def _stretched(width_ft: float, depth_ft: float, seats: int) -> Size:
    """Size deepened where it would be too long for a nook."""
    return Size(width_ft, max(depth_ft, ceil(width_ft / kind_rules("nook").longest_ratio)), seats)


def _fit(_wish: RoomWish, size: Size, level: Level) -> Fitting:
    is_turned = size.width_ft < size.depth_ft
    furniture = turned(_furniture(size.turned, level)) if is_turned else _furniture(size, level)
    back = next((item.role for item in furniture if item.role in ("bench", "bed")), "open")
    planted = sum(item.width_ft * item.depth_ft for item in furniture if item.role == "bed")
    quantities = (
        Quantity("plain paving", size.area_sqft - planted, by="ground"),
        *side_quantities("nook", furniture),
        Quantity("light", 1),
    )
    # A turned plan has its back on the left.
    return Fitting(furniture, quantities, sides(left=back) if is_turned else sides(back=back))


def _furniture(size: Size, level: Level) -> tuple[Item, ...]:
    """Chairs in the middle; with a bench, the bench along the back and the chairs opposite; else a bed at the back."""
    chairs = _chairs_within(size)
    bench = _bench(size.width_ft, size.seats - seats_of(chairs))
    bench_end, chair = _MARGIN_FT + clearance_ft("bench_depth") + _KNEES_FT, clearance_ft("lounge_chair")
    if bench and bench_end + chair <= size.depth_ft:
        return (*_centred(bench, size, out_ft=_MARGIN_FT), *_centred(chairs, size, out_ft=bench_end))
    bed = () if level == "modest" else bed_at_back(size.width_ft)
    behind = sum(item.depth_ft for item in bed)
    if behind + chair + clearance_ft("walkway") > size.depth_ft:
        bed, behind = (), 0.0
    return (*bed, *_centred(chairs, size, out_ft=behind + (size.depth_ft - behind - chair) / 2))


def _chairs_within(size: Size) -> tuple[Item, ...]:
    """Two chairs, or as many of them as are asked for and as the size holds."""
    for count in range(min(size.seats, _CHAIRS), 0, -1):
        chairs = _chairs(count)
        if _used_ft(chairs) <= size.width_ft and clearance_ft("lounge_chair") <= size.depth_ft:
            return chairs
    return ()


def _chairs(count: int) -> tuple[Item, ...]:
    """One or two chairs from (0, 0) along x, with a small table between."""
    side, table, gap = clearance_ft("lounge_chair"), clearance_ft("side_table"), 0.25
    first = Item("lounge chair", 0.0, 0.0, side, side, seats=1)
    if count < _CHAIRS:
        return (first,)
    small = Item("side table", side + gap, (side - table) / 2, table, table, shape="circle")
    return (first, small, *moved((first,), right_ft=side + table + 2 * gap))


def _bench(width_ft: float, seats: int) -> tuple[Item, ...]:
    """Bench for as many as the width holds."""
    count = min(seats, floor((width_ft - 2 * _MARGIN_FT) / clearance_ft("bench_seat")))
    length = count * clearance_ft("bench_seat")
    return (Item("bench", 0.0, 0.0, length, clearance_ft("bench_depth"), seats=count),) if count > 0 else ()


def _centred(items: tuple[Item, ...], size: Size, *, out_ft: float) -> tuple[Item, ...]:
    return moved(items, right_ft=(size.width_ft - _used_ft(items)) / 2, out_ft=out_ft)


def _used_ft(items: tuple[Item, ...]) -> float:
    """Width that the items take from x = 0."""
    return max((item.x_ft + item.width_ft for item in items), default=0.0)


NOOK: Final = Sizer(_sizes, _fit)
