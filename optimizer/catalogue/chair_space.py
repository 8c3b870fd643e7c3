"""The ground in a room that no path may cross: its furniture, and behind each dining chair the room to push it back."""

from collections.abc import Iterator
from dataclasses import replace

from optimizer.catalogue.clearances import clearance_ft
from optimizer.catalogue.rooms import Item, SizedChoice


def kept_from_paths(choice: SizedChoice) -> tuple[Item, ...]:
    """Furniture of a choice in the room's own axes [ft]; a dining chair takes 36 in from the table's edge outwards."""
    tables = [item for item in choice.furniture if item.role == "table"]
    return tuple(_kept(choice, tables))


def _kept(choice: SizedChoice, tables: list[Item]) -> Iterator[Item]:
    for item in choice.furniture:
        if item.role == "chair" and tables:
            yield _pushed_back(item, min(tables, key=lambda table: _apart_ft(item, table)))
        else:
            yield item


def _pushed_back(chair: Item, table: Item) -> Item:
    """The chair's ground when somebody gets up: as deep as the clearance behind the table's edge."""
    depth = clearance_ft("past_seated_edge")
    if chair.y_ft + chair.depth_ft <= table.y_ft:
        return replace(chair, y_ft=table.y_ft - depth, depth_ft=depth)
    if chair.y_ft >= table.y_ft + table.depth_ft:
        return replace(chair, y_ft=table.y_ft + table.depth_ft, depth_ft=depth)
    if chair.x_ft + chair.width_ft <= table.x_ft:
        return replace(chair, x_ft=table.x_ft - depth, width_ft=depth)
    return replace(chair, x_ft=table.x_ft + table.width_ft, width_ft=depth)


def _apart_ft(one: Item, other: Item) -> float:
    along = abs(one.x_ft + one.width_ft / 2 - other.x_ft - other.width_ft / 2)
    return along + abs(one.y_ft + one.depth_ft / 2 - other.y_ft - other.depth_ft / 2)
