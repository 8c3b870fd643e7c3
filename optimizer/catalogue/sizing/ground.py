"""Arrivals, lawns, beds, storage and play: kinds whose sizes do not follow from people or equipment."""

from collections.abc import Callable
from math import floor
from typing import Final

from optimizer.brief import RoomKind, RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import Item, Quantity
from optimizer.catalogue.sizing.frame import Fitting, Level, Size, Sizer, sides

_PLANT_FT: Final = 2.5  # spread of a clump of plants; common practice, no source
_SHELF_FT: Final = 1.5  # depth of a shelf; common practice, no source
_PLAY_FRAME_SHARE: Final = 0.4  # the frame within its fall space; common practice, no source


def _sizes_of(kind: RoomKind) -> Callable[[RoomWish], tuple[Size, Size, Size]]:
    def sizes(_wish: RoomWish) -> tuple[Size, Size, Size]:
        modest, comfortable, generous = (Size(float(w), float(d)) for w, d in data("sizes.yaml")[kind])
        return modest, comfortable, generous

    return sizes


def _arrival(_wish: RoomWish, size: Size, _level: Level) -> Fitting:
    return Fitting((), (Quantity("unit paving", size.area_sqft, by="ground"), Quantity("light", 2)), sides())


def _lawn(_wish: RoomWish, size: Size, _level: Level) -> Fitting:
    return Fitting((), (Quantity("lawn", size.area_sqft, by="ground"),), sides())


def _bed(_wish: RoomWish, size: Size, _level: Level) -> Fitting:
    columns, rows = (max(1, floor(length / _PLANT_FT)) for length in (size.width_ft, size.depth_ft))
    pitch_x, pitch_y = size.width_ft / columns, size.depth_ft / rows
    spread = min(pitch_x, pitch_y) * 0.9
    plants = tuple(
        Item("plant", (c + 0.5) * pitch_x - spread / 2, (r + 0.5) * pitch_y - spread / 2, spread, spread, "circle")
        for r in range(rows)
        for c in range(columns)
    )
    return Fitting(plants, (Quantity("planting bed", size.area_sqft, by="ground"),), sides())


def _storage(_wish: RoomWish, size: Size, _level: Level) -> Fitting:
    shelf = Item("shelf", 0.0, 0.0, size.width_ft, min(_SHELF_FT, size.depth_ft))
    return Fitting((shelf,), (Quantity("storage shed", size.area_sqft, by="ground"),), sides(back="back"))


def _play(_wish: RoomWish, size: Size, _level: Level) -> Fitting:
    width, depth = size.width_ft * _PLAY_FRAME_SHARE, size.depth_ft * _PLAY_FRAME_SHARE
    frame = Item("play frame", (size.width_ft - width) / 2, (size.depth_ft - depth) / 2, width, depth)
    return Fitting(
        (frame,), (Quantity("play surface", size.area_sqft, by="ground"), Quantity("play equipment", 1)), sides()
    )


ARRIVAL: Final = Sizer(_sizes_of("arrival"), _arrival)
LAWN: Final = Sizer(_sizes_of("lawn"), _lawn)
BED: Final = Sizer(_sizes_of("bed"), _bed)
STORAGE: Final = Sizer(_sizes_of("storage"), _storage)
PLAY: Final = Sizer(_sizes_of("play"), _play)
