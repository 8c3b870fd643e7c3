"""Fire features: a round pit, seats in a ring round it, and ground behind them: the square round it all, or the circle.

A circle has no seat wall: a straight one along the back would stand out of it, and people step in on all sides.
"""

from math import ceil, cos, degrees, hypot, pi, sin, tau
from typing import Final

from optimizer.brief import RoomWish
from optimizer.catalogue.clearances import clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import Item, Quantity, ground_sqft
from optimizer.catalogue.sides import side_quantities
from optimizer.catalogue.sizing.built_sides import seat_wall
from optimizer.catalogue.sizing.frame import LEVELS, Fitting, Level, Size, Sizer, sides

_PIT_SHARE: Final[dict[Level, float]] = {"modest": 0.0, "comfortable": 0.5, "generous": 1.0}
_SEAT_WALL_INSET_FT: Final = 2.0  # at either end of the wall, so that one steps past it


def _sizes(wish: RoomWish) -> tuple[Size, Size, Size]:
    seats = data("sizes.yaml")["seats"]["fire"] if wish.seats is None else wish.seats
    modest, comfortable, generous = (ceil(_least_side_ft(wish, seats, level)) for level in LEVELS)
    return Size(modest, modest, seats), Size(comfortable, comfortable, seats), Size(generous, generous, seats)


def _least_side_ft(wish: RoomWish, seats: int, level: Level) -> float:
    """Side of the square, and what the circle is across: the pit with its surround, or the ring of seats with ground
    behind, if that is more.
    """
    seat = clearance_ft("fire_seat")
    behind = clearance_ft("behind_fire_seat" if level == "modest" else "seat_wall_depth")
    ring = hypot(_seat_front_ft(wish, seats, level) + seat, seat / 2) + behind
    return max(_pit_ft(level) + 2 * clearance_ft("fire_surround"), 2 * ring)


def _pit_ft(level: Level) -> float:
    least, largest = clearance_ft("fire_pit_least"), clearance_ft("fire_pit_largest")
    return least + _PIT_SHARE[level] * (largest - least)


def _seat_front_ft(wish: RoomWish, seats: int, level: Level) -> float:
    """From the pit's centre to the front of a seat: clear of the flame, and wide enough for all seats [ft]."""
    clear = clearance_ft("seat_to_wood_flame" if wish.fuel == "wood" else "seat_to_gas_flame")
    return max(_pit_ft(level) / 2 + clear, seats * clearance_ft("fire_seat_perimeter") / tau)


def _fit(wish: RoomWish, size: Size, level: Level) -> Fitting:
    wall = () if wish.shape == "circle" else _seat_wall(size, level)
    ring = _ring(wish, size, level, behind_ft=clearance_ft("seat_wall_depth"))
    if not wall or len(ring) < size.seats:
        # Promised seats come before a wall to sit on.
        wall, ring = (), _ring(wish, size, level, behind_ft=0.0)
    paving = "plain paving" if level == "modest" else "unit paving"
    quantities = (
        Quantity(paving, ground_sqft(wish.shape, size.width_ft, size.depth_ft), by="ground"),
        *_feature(wish, level),
        *side_quantities("fire", wall),
        *((Quantity("light", 4),) if level == "generous" else ()),
    )
    return Fitting((_pit(size, level), *ring, *wall), quantities, sides(back="seat wall" if wall else "open"))


def _pit(size: Size, level: Level) -> Item:
    """Pit in the middle, smaller in a size that has no room for seats anyway."""
    pit = min(_pit_ft(level), size.width_ft / 2, size.depth_ft / 2)
    return Item("fire pit", (size.width_ft - pit) / 2, (size.depth_ft - pit) / 2, pit, pit, shape="circle")


def _feature(wish: RoomWish, level: Level) -> tuple[Quantity, ...]:
    if wish.fuel == "wood":
        return (Quantity("wood fire feature", 1),)
    item = "gas fire feature, large" if level == "generous" else "gas fire feature"
    return (Quantity(item, 1), Quantity("gas branch", 1), Quantity("electric branch", 1))


def _seat_wall(size: Size, level: Level) -> tuple[Item, ...]:
    """Low wall along the back, with piers at the best level; its seats are not promised and not counted."""
    length = size.width_ft - 2 * _SEAT_WALL_INSET_FT
    if level == "modest" or min(size.width_ft, size.depth_ft) < 2 * clearance_ft("fire_surround"):
        return ()
    return seat_wall(_SEAT_WALL_INSET_FT, 0.0, length, with_piers=level == "generous")


def _ring(wish: RoomWish, size: Size, level: Level, *, behind_ft: float) -> tuple[Item, ...]:
    """As many of the seats as the square, and the circle in it, holds, evenly round the pit, each turned towards it."""
    reach = min(size.width_ft, size.depth_ft) / 2 - behind_ft
    seat = clearance_ft("fire_seat")
    for seats in range(size.seats, 0, -1):
        centre_ft = _seat_front_ft(wish, seats, level) + seat / 2
        # The outer corners of a turned seat lie a little farther out than its back.
        if hypot(centre_ft + seat / 2, seat / 2) <= reach:
            return tuple(_seat(size, centre_ft, tau * (i + 0.5) / seats - pi / 2) for i in range(seats))
    return ()


def _seat(size: Size, radius_ft: float, angle: float) -> Item:
    side = clearance_ft("fire_seat")
    x, y = size.width_ft / 2 + radius_ft * cos(angle), size.depth_ft / 2 + radius_ft * sin(angle)
    return Item("fire seat", x - side / 2, y - side / 2, side, side, seats=1, turn_deg=round(degrees(angle), 6))


FIRE: Final = Sizer(_sizes, _fit)
