"""Kitchens: an L of counter whose longer leg is the bar, with stools in front and the cook's aisle behind.

From back to front: the aisle, as deep as the side leg; the bar's counter; its overhang; and the stools with room for
people to walk past them. The side leg stands on the left, the cook goes in and out on the right.
"""

from dataclasses import replace
from itertools import product
from math import ceil, floor
from typing import Final

from optimizer.brief import Equipment, RoomWish
from optimizer.catalogue.clearances import clearance_ft
from optimizer.catalogue.kinds import kind_rules
from optimizer.catalogue.rooms import Item, Quantity
from optimizer.catalogue.sizing.frame import LEVELS, Fitting, Level, Size, Sizer, seats_of, sides
from optimizer.catalogue.sizing.run import USUAL, Legs, is_hot, known, legs_of, length_ft

_STOOL: Final[dict[Level, str]] = {
    "modest": "stool",
    "comfortable": "stool_outdoors",
    "generous": "stool_outdoors_wide",
}
_AISLE: Final[dict[Level, str]] = {
    "modest": "aisle_one_cook",
    "comfortable": "aisle_one_cook",
    "generous": "aisle_two_cooks",
}
_PASS: Final[dict[Level, str]] = {"modest": "walkway", "comfortable": "aisle_one_cook", "generous": "aisle_two_cooks"}
_COUNTER: Final[dict[Level, str]] = {"modest": "plain", "comfortable": "veneer", "generous": "stone"}
_LIGHTS: Final[dict[Level, int]] = {"modest": 1, "comfortable": 3, "generous": 5}
_PREPARATION: Final = Equipment("preparation")
_STOOL_GAP_FT: Final = 0.1
_TOLERANCE_FT: Final = 1e-6  # of sums of inches in feet


def _sizes(wish: RoomWish) -> tuple[Size, Size, Size]:
    seats = min(wish.bar_seats, most_stools())
    modest, comfortable, generous = (_least(wish, seats, level) for level in LEVELS)
    return modest, comfortable, generous


def _least(wish: RoomWish, seats: int, level: Level) -> Size:
    """Least size with so many stools, rounded up to whole feet, no longer for its width than its kind allows."""
    width, depth = (ceil(need - _TOLERANCE_FT) for need in _needs_ft(wish, seats, level))
    ratio = kind_rules("kitchen").longest_ratio
    return Size(max(width, ceil(depth / ratio - _TOLERANCE_FT)), max(depth, ceil(width / ratio - _TOLERANCE_FT)), seats)


def _needs_ft(wish: RoomWish, seats: int, level: Level) -> tuple[float, float]:
    """Width and depth that the counter, the cook and so many people on stools need [ft]."""
    legs = legs_of(wish.equipment, level)
    width = _bar_ft(legs, seats, level) + clearance_ft(_PASS[level])
    return width, _aisle_ft(legs, level) + clearance_ft("counter_depth") + _front_ft(seats)


def _bar_ft(legs: Legs, seats: int, level: Level) -> float:
    """Length of the bar's counter from the corner: equipment, or more where the stools need it.

    A full bar has narrower seats rather than a longer run than one may be.
    """
    longest, least = clearance_ft("counter_run_longest"), clearance_ft("stool")
    stools = max(seats * least, min(seats * clearance_ft(_STOOL[level]), longest))
    return max(clearance_ft("counter_depth") + length_ft(legs.bar), stools)


def starter_of(wish: RoomWish) -> RoomWish | None:
    """The wish cut down to what one cooks on and a counter to prepare at, without stools; None where it is no more."""
    hot = next((item for item in wish.equipment if is_hot(item)), Equipment("grill"))
    counter = next((item for item in wish.equipment if known(item) == known(_PREPARATION)), _PREPARATION)
    is_less = bool(wish.bar_seats) or len(wish.equipment or USUAL) > 2
    return replace(wish, equipment=(hot, counter), bar_seats=0) if is_less else None


def most_stools() -> int:
    """Most people on stools at the longest run of counter."""
    return floor(clearance_ft("counter_run_longest") / clearance_ft("stool") + _TOLERANCE_FT)


def _aisle_ft(legs: Legs, level: Level) -> float:
    """Depth of the cook's aisle, which the side leg spans."""
    return max(length_ft(legs.side), clearance_ft(_AISLE[level]))


def _front_ft(seats: int) -> float:
    """From the cook's counter to the room's front: overhang and passage where people sit, else a walkway."""
    if seats == 0:
        return clearance_ft("walkway")
    return clearance_ft("bar_overhang") + clearance_ft("walk_past_seated")


def _fit(wish: RoomWish, size: Size, level: Level) -> Fitting:
    """Kitchen in a size with as many of the stools as it holds; a tight size gets the modest level's clearances."""
    for seats, planned in product(range(min(size.seats, most_stools()), -1, -1), (level, LEVELS[0])):
        width, depth = _needs_ft(wish, seats, planned)
        if width <= size.width_ft + _TOLERANCE_FT and depth <= size.depth_ft + _TOLERANCE_FT:
            return _fitting(wish, size, level, _furniture(legs_of(wish.equipment, planned), size, seats, planned))
    return _fitting(wish, size, level, _single_run(size))


def _fitting(wish: RoomWish, size: Size, level: Level, furniture: tuple[Item, ...]) -> Fitting:
    counter = sum(item.width_ft * item.depth_ft for item in furniture if item.role not in {"ledge", "stool"})
    quantities = (
        Quantity("plain paving" if level == "modest" else "unit paving", size.area_sqft, by="ground"),
        Quantity(f"kitchen counter, {_COUNTER[level]}", counter / clearance_ft("counter_depth")),
        *_appliances(wish),
        Quantity("light", _LIGHTS[level]),
    )
    front = "bar" if seats_of(furniture) else "counter"
    return Fitting(furniture, quantities, sides(front=front, left="counter"))


def _appliances(wish: RoomWish) -> tuple[Quantity, ...]:
    """Each piece of equipment, and one branch of each supply that any of it needs."""
    entries = [known(item) for item in wish.equipment or USUAL]
    supplies = {supply for entry in entries for supply in entry["connect"]}
    pieces = (Quantity(entry["item"], 1) for entry in entries if entry["item"])
    return (*pieces, *(Quantity(f"{supply} branch", 1) for supply in sorted(supplies)))


def _furniture(legs: Legs, size: Size, seats: int, level: Level) -> tuple[Item, ...]:
    """Side leg, corner, bar, ledge and stools."""
    counter, bar = clearance_ft("counter_depth"), _bar_ft(legs, seats, level)
    bar_y = size.depth_ft - _front_ft(seats) - counter
    side = _side_leg(legs, bar_y)
    along, x = [Item("counter", 0.0, bar_y, counter, counter)], counter
    for piece in legs.bar:
        along.append(Item(piece.role, x, bar_y, piece.width_ft, counter))
        x += piece.width_ft
    if bar - x > _TOLERANCE_FT:
        along.append(Item("counter", x, bar_y, bar - x, counter))
    return (*side, *along, *_stools(bar, bar_y + counter, seats))


def _side_leg(legs: Legs, bar_y_ft: float) -> tuple[Item, ...]:
    """Pieces of the side leg, up to the corner."""
    y, placed, counter = bar_y_ft - length_ft(legs.side), [], clearance_ft("counter_depth")
    for piece in legs.side:
        placed.append(Item(piece.role, 0.0, y, counter, piece.width_ft))
        y += piece.width_ft
    return tuple(placed)


def _stools(bar_ft: float, ledge_y_ft: float, seats: int) -> tuple[Item, ...]:
    """Overhang of the bar and the stools before it, evenly along the bar."""
    if seats == 0:
        return ()
    pitch, seat, overhang = bar_ft / seats, clearance_ft("stool_seat"), clearance_ft("bar_overhang")
    y = ledge_y_ft + overhang + _STOOL_GAP_FT
    stools = (Item("stool", (i + 0.5) * pitch - seat / 2, y, seat, seat, shape="circle", seats=1) for i in range(seats))
    return (Item("ledge", 0.0, ledge_y_ft, bar_ft, overhang), *stools)


def _single_run(size: Size) -> tuple[Item, ...]:
    """One run along the front of a size too small for an L, as long as a run may be."""
    depth = min(clearance_ft("counter_depth"), size.depth_ft)
    length = min(floor(size.width_ft), clearance_ft("counter_run_longest"))
    return (Item("counter", 0.0, size.depth_ft - depth, length, depth),)


KITCHEN: Final = Sizer(_sizes, _fit)
