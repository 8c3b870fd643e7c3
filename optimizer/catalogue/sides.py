"""Kinds of sides: what stands along an edge of a room, how high and deep it is, and what it costs by."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from optimizer.brief import RoomKind
from optimizer.catalogue.clearances import INCHES_PER_FT, clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import Item, Quantity


@dataclass(frozen=True, slots=True)
class SideKind:
    """Height and depth [ft] of what stands along a side, and what one can do with it.

    `is_crossed`: one steps over it; `is_sat_on`: one sits on it; `is_solid`: it hides what lies behind it. `item` is
    what it is paid by, None where the rest of the room pays for it.
    """

    name: str
    height_ft: float
    depth_ft: float
    is_crossed: bool
    is_sat_on: bool
    is_solid: bool
    item: str | None
    by: Literal["ft", "sq ft"] | None


@cache
def side_kind(name: str) -> SideKind:
    """Kind of side by its name in the data file; KeyError for a name that is not there."""
    entry: dict[str, Any] = data("sides.yaml")[name]
    return SideKind(
        name=name,
        height_ft=entry["inches"] / INCHES_PER_FT,
        depth_ft=clearance_ft(entry["depth"]) if entry["depth"] else 0.0,
        is_crossed=entry["crossed"],
        is_sat_on=entry["sat_on"],
        is_solid=entry["solid"],
        item=entry["item"],
        by=entry["by"],
    )


def side_of_item(kind: RoomKind, item: Item) -> SideKind | None:
    """Kind of side that a piece in a kind of room is built as; None for what stands free."""
    if kind == "kitchen" and item.role != "stool":
        return side_kind("bar" if item.role == "ledge" else "counter")
    return side_kind(item.role) if item.role in data("sides.yaml") else None


def side_quantities(kind: RoomKind, furniture: tuple[Item, ...]) -> tuple[Quantity, ...]:
    """What the drawn sides are paid by, each item of the price book once."""
    amounts: dict[str, float] = {}
    for item in furniture:
        side = side_of_item(kind, item)
        if side and side.item:
            amount = item.width_ft * item.depth_ft if side.by == "sq ft" else max(item.width_ft, item.depth_ft)
            amounts[side.item] = amounts.get(side.item, 0.0) + amount
    return tuple(Quantity(item, amount) for item, amount in amounts.items())
