"""A dining table with its chairs."""

from optimizer.catalogue.clearances import clearance_ft, table_length_ft
from optimizer.catalogue.rooms import Item

MOST_DINERS = 10


def table_size_ft(diners: int) -> tuple[float, float]:
    """Length and width [ft] of the table for so many diners; an odd one sits at the next larger table."""
    return table_length_ft(diners + diners % 2), clearance_ft("table_width")


def table_with_chairs(diners: int) -> tuple[Item, ...]:
    """Table along x with its lower left corner at (0, 0), chairs drawn one by one round it."""
    length, width = table_size_ft(diners)
    chairs = (*_row(diners, -clearance_ft("chair_depth")), *_row(diners, width), *_ends(length, width))
    return (Item("table", 0.0, 0.0, length, width), *chairs[:diners])


def _row(diners: int, y_ft: float) -> tuple[Item, ...]:
    """Chairs along one long side."""
    count = (diners + diners % 2 - 2) // 2
    length, pitch, chair = table_size_ft(diners)[0], clearance_ft("place_setting"), clearance_ft("chair_width")
    first = (length - count * pitch) / 2 + (pitch - chair) / 2
    return tuple(
        Item("chair", first + i * pitch, y_ft, chair, clearance_ft("chair_depth"), seats=1) for i in range(count)
    )


def _ends(length_ft: float, width_ft: float) -> tuple[Item, Item]:
    """Chairs at the two ends."""
    chair, depth = clearance_ft("chair_width"), clearance_ft("chair_depth")
    y = (width_ft - chair) / 2
    return (
        Item("chair", -depth, y, depth, chair, seats=1),
        Item("chair", length_ft, y, depth, chair, seats=1),
    )
