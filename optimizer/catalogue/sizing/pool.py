"""Pools: water with coping, steps and a bench in it, a deck all round, and loungers on its wide side, the front."""

from itertools import zip_longest
from math import floor
from typing import Final

from optimizer.brief import RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.pools import least_deck_ft, pool_figure
from optimizer.catalogue.rooms import Item, Quantity
from optimizer.catalogue.sizing.frame import LEVELS, Fitting, Level, Size, Sizer, moved, seats_of, sides

_INSET_FT: Final = 0.25  # of a lounger from the deck's outer edge; common practice, no source
_LIGHTS: Final[dict[Level, int]] = {"modest": 2, "comfortable": 4, "generous": 6}


def _sizes(wish: RoomWish) -> tuple[Size, Size, Size]:
    """The wished water, or more of it at each level, in its deck; the wide deck lies along one long side."""
    modest, comfortable, generous = (_around(wish, level) for level in range(len(LEVELS)))
    return modest, comfortable, generous


def _around(wish: RoomWish, level: int) -> Size:
    long, short = sorted(wish.water_ft or pool_figure("water")[level], reverse=True)
    deck = _deck_ft(wish)
    wide = max(deck, pool_figure("wide_deck")[level])
    seats = data("sizes.yaml")["seats"]["pool"] if wish.seats is None else wish.seats
    return Size(float(long + 2 * deck), float(short + deck + wide), seats)


def _deck_ft(wish: RoomWish) -> float:
    return float(wish.deck_ft or least_deck_ft())


def _fit(wish: RoomWish, size: Size, level: Level) -> Fitting:
    water = _water(wish, size, LEVELS.index(level))
    inside = _inside(water, with_bench=level != "modest")
    furniture = (*inside, *_coping(water, size), *_loungers(water, size))
    water_sqft = water.width_ft * water.depth_ft
    quantities = (
        Quantity("pool shell", water_sqft),
        Quantity("pool equipment", 1),
        Quantity("plain paving" if level == "modest" else "unit paving", size.area_sqft - water_sqft),
        Quantity("electric branch", 1),
        Quantity("water branch", 1),
        Quantity("light", _LIGHTS[level]),
    )
    return Fitting(furniture, quantities, sides())


def _water(wish: RoomWish, size: Size, level: int) -> Item:
    """Water in the room, the deck's spare depth in front of it: as wished if it fits, else what the deck leaves."""
    if wish.water_ft is None:
        short = min(size.width_ft, size.depth_ft)
        deck = min(_deck_ft(wish), max(short / 4, min(least_deck_ft(), (short - pool_figure("least_water")) / 2)))
        along, across = size.width_ft - 2 * deck, size.depth_ft - 2 * deck
        if (narrower := across + deck - pool_figure("wide_deck")[level]) >= pool_figure("least_water"):
            across = min(across, narrower)
        return Item("water", deck, deck, along, across)
    long, short = max(wish.water_ft), min(wish.water_ft)
    sides = (long, short) if size.width_ft >= size.depth_ft else (short, long)
    along, across = min(sides[0], _most_ft(size.width_ft)), min(sides[1], _most_ft(size.depth_ft))
    back = min(_deck_ft(wish), (size.depth_ft - across) / 2)
    return Item("water", (size.width_ft - along) / 2, back, along, across)


def _most_ft(room_ft: float) -> float:
    """Water along a side of the room at most; half of a side that is too short, which the reader refuses."""
    return max(room_ft - 2 * least_deck_ft(), room_ft / 2)


def _inside(water: Item, *, with_bench: bool) -> tuple[Item, ...]:
    """The water in parts: steps across its left end, a bench across its right one, where it is long enough."""
    steps = pool_figure("steps") if water.width_ft >= 2 * pool_figure("least_water") else 0.0
    bench = pool_figure("bench") if with_bench and steps else 0.0
    parts = (("pool steps", steps), ("water", water.width_ft - steps - bench), ("pool bench", bench))
    items, x = list[Item](), water.x_ft
    for role, width in parts:
        if width > 0:
            items.append(Item(role, x, water.y_ft, width, water.depth_ft))
        x += width
    return tuple(items)


def _coping(water: Item, size: Size) -> tuple[Item, ...]:
    """Cap along the four edges of the water, on the deck."""
    beside = (water.x_ft, water.y_ft, size.depth_ft - water.y_ft - water.depth_ft)
    cap = min(pool_figure("coping"), *beside)
    left, low, long = water.x_ft - cap, water.y_ft - cap, water.width_ft + 2 * cap
    return (
        Item("coping", left, low, long, cap),
        Item("coping", left, water.y_ft + water.depth_ft, long, cap),
        Item("coping", left, water.y_ft, cap, water.depth_ft),
        Item("coping", water.x_ft + water.width_ft, water.y_ft, cap, water.depth_ft),
    )


def _loungers(water: Item, size: Size) -> tuple[Item, ...]:
    """As many as are asked for and as the wide deck holds, half to each side of its middle, all of them past a walk
    along the water: with their feet to it where the deck is deep enough, else along it.
    """
    depth = size.depth_ft - water.y_ft - water.depth_ft - pool_figure("walk") - _INSET_FT
    for width_ft, length_ft in (pool_figure("lounger"), pool_figure("lounger")[::-1]):
        if length_ft <= depth:
            pitch = width_ft + pool_figure("beside_lounger")
            half_ft = size.width_ft / 2 - pool_figure("middle") / 2 - _INSET_FT
            room_for = max(0, floor((half_ft + pool_figure("beside_lounger")) / pitch))
            y = size.depth_ft - _INSET_FT - length_ft
            return _shared_out(Item("lounger", 0.0, y, width_ft, length_ft, seats=1), size, pitch, room_for)
    return ()


def _shared_out(one: Item, size: Size, pitch: float, room_for: int) -> tuple[Item, ...]:
    """Loungers from the middle outwards, right and left in turn."""
    first = size.width_ft / 2 + pool_figure("middle") / 2
    right = [moved((one,), right_ft=first + number * pitch) for number in range(room_for)]
    left = [moved((one,), right_ft=size.width_ft - first - one.width_ft - number * pitch) for number in range(room_for)]
    found = tuple(item for pair in zip_longest(right, left) for side in pair if side for item in side)[: size.seats]
    assert seats_of(found) <= size.seats
    return found


POOL: Final = Sizer(_sizes, _fit)
