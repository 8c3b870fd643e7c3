"""Rooms built a little larger than their choice, to meet a line: how far they may, and what the choice then is."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from optimizer.brief import RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.kinds import kind_rules
from optimizer.catalogue.rooms import Item, LocalSide, SizedChoice, SizedRoom
from optimizer.catalogue.sides import side_of_item

_EVEN_FT: Final = 1e-6
_AT_EDGE_FT: Final = 1.0  # what stands no farther from an edge belongs to it; common practice, no source
_ACROSS: Final[Mapping[LocalSide, LocalSide]] = {"left": "right", "right": "left"}


def grow_share(wish: RoomWish) -> float:
    """Share of its area by which a wished room may grow: its own, else the usual one; 0 for kinds that never do, and
    for circles, which have no edge to put on a line.
    """
    if not kind_rules(wish.kind).grows or wish.shape == "circle":
        return 0.0
    return float(data("growth.yaml")["share"]) if wish.grow is None else wish.grow


def most_growth_ft(*, to_corner: bool) -> float:
    """How far a room may grow in one direction [ft]; farther to come level with a corner of the house or a post."""
    return float(data("growth.yaml")["feet_to_corner" if to_corner else "feet"])


def grown(choice: SizedChoice, by_ft: Mapping[LocalSide, float]) -> SizedChoice:
    """The choice with its sides moved out by so much [ft].

    Furniture stays where it was, seats and worth are what they were; ground, roof and screen are paid for as built.
    """
    out = {side: by_ft.get(side, 0.0) for side in ("front", "back", "left", "right")}
    width, depth = choice.width_ft + out["left"] + out["right"], choice.depth_ft + out["back"] + out["front"]
    more = {
        "ground": width * depth - choice.width_ft * choice.depth_ft,
        "two sides": width + depth - choice.width_ft - choice.depth_ft,
        None: 0.0,
    }
    return replace(
        choice,
        width_ft=width,
        depth_ft=depth,
        furniture=tuple(replace(i, x_ft=i.x_ft + out["left"], y_ft=i.y_ft + out["back"]) for i in choice.furniture),
        quantities=tuple(replace(q, amount=q.amount + more[q.by]) for q in choice.quantities),
    )


def may_move(room: SizedRoom, choice: SizedChoice, side: LocalSide) -> bool:
    """Whether a side may move out: nothing is built along it, such as a counter, a seat wall or a bed.

    Nor along the side across, of left and right: in a mirrored yard the furniture has its other hand there.
    """
    built = [item for item in choice.furniture if side_of_item(room.rules.kind, item)]
    sides = (side, _ACROSS.get(side, side))
    return not any(_is_along(item, choice, each) for item in built for each in sides)


def _is_along(item: Item, choice: SizedChoice, side: LocalSide) -> bool:
    """Whether a piece lies along a side: at it, and longer along the side than into the room."""
    away, into, along = {
        "left": (item.x_ft, item.width_ft, item.depth_ft),
        "right": (choice.width_ft - item.x_ft - item.width_ft, item.width_ft, item.depth_ft),
        "back": (item.y_ft, item.depth_ft, item.width_ft),
        "front": (choice.depth_ft - item.y_ft - item.depth_ft, item.depth_ft, item.width_ft),
    }[side]
    return away < _AT_EDGE_FT and into < along - _EVEN_FT
