"""Groups of two sofas that face each other over a low table."""

from math import floor

from optimizer.catalogue.clearances import clearance_ft
from optimizer.catalogue.rooms import Item
from optimizer.catalogue.sizing.frame import moved, seats_of

_MARGIN_FT = 0.5
_LONGEST_SOFA = 4


def group_width_ft() -> float:
    """Width of a group: two sofas, the low table and the gaps for knees [ft]."""
    return 2 * (clearance_ft("sofa_depth") + clearance_ft("seat_to_low_table")) + clearance_ft("low_table")


def lounge(*, width_ft: float, depth_ft: float, seats: int) -> tuple[Item, ...]:
    """As much of a lounge for so many as a rectangle holds, groups side by side along x, in its middle."""
    per_sofa = min(_LONGEST_SOFA, floor((depth_ft - 2 * _MARGIN_FT) / clearance_ft("sofa_seat")))
    step, items = group_width_ft() + clearance_ft("walkway"), tuple[Item, ...]()
    room_for = max(0, floor((width_ft - 2 * _MARGIN_FT + clearance_ft("walkway")) / step))
    for number in range(room_for):
        left = seats - seats_of(items)
        if left > 0 and per_sofa > 0:
            items += moved(_group(min(left, 2 * per_sofa), per_sofa, depth_ft), right_ft=number * step)
    used = max((item.x_ft + item.width_ft for item in items), default=0.0)
    return moved(items, right_ft=(width_ft - used) / 2)


def _group(seats: int, per_sofa: int, depth_ft: float) -> tuple[Item, ...]:
    """One group with its sofas along y."""
    first = min(seats, per_sofa)
    gap, sofa_depth, table = (clearance_ft(name) for name in ("seat_to_low_table", "sofa_depth", "low_table"))
    length = first * clearance_ft("sofa_seat")
    items = (
        _sofa(first, 0.0, depth_ft),
        Item("low table", sofa_depth + gap, (depth_ft - length) / 2, table, length),
    )
    return items if seats == first else (*items, _sofa(seats - first, sofa_depth + 2 * gap + table, depth_ft))


def _sofa(seats: int, x_ft: float, depth_ft: float) -> Item:
    length = seats * clearance_ft("sofa_seat")
    return Item("sofa", x_ft, (depth_ft - length) / 2, clearance_ft("sofa_depth"), length, seats=seats)
