"""The everyday table: how far it lies on foot, and how many risers, from the door that serves it."""

from typing import NamedTuple

from optimizer.catalogue import holds
from optimizer.circulation import kitchen_door, way_between
from optimizer.derived import Derived
from optimizer.fields.terraces import garden_doors
from optimizer.grading import climbed
from optimizer.layout import Placed, PlacedRoom
from optimizer.scenario import Scenario
from optimizer.site import Door


class TableWay(NamedTuple):
    """The way from the kitchen door to the everyday table; None for what is not known."""

    room: str
    door: str | None
    on_foot_ft: float | None
    risers: int | None


def table_way(derived: Derived) -> TableWay | None:
    """Measure it; None where no gathering is placed."""
    table = main_table(derived.placed)
    if table is None:
        return None
    door = serving_door(derived.scenario, derived.placed)
    stops = [derived.network.access.stop(name) for name in (door.name if door else "", table.name)]
    way = way_between(derived.network, stops[0], stops[1]) if stops[0] and stops[1] else None
    if door is None or way is None:
        return TableWay(table.name, door.name if door else None, None, None)
    known = derived.levelled.is_known
    risers = climbed(derived.levelled, derived.network, door.name, table.name) if known else None
    return TableWay(table.name, door.name, round(way.length_ft, 2), risers)


def main_table(placed: Placed) -> PlacedRoom | None:
    """The gathering with most chairs at its table, the first of those with as many."""
    tables = placed.of_kind("gathering")
    return max(tables, key=lambda there: holds(there.room, there.choice).table if there.choice else 0, default=None)


def serving_door(scenario: Scenario, placed: Placed) -> Door | None:
    """The door of the first wished kitchen, whether it is there or not; else the garden door of most trips."""
    kitchens = [room for room in placed.wished if room.rules.kind == "kitchen"]
    there = placed.of(kitchens[0].name) if kitchens else None
    joined = kitchen_door(scenario, kitchens[0], there.placement if there else None) if kitchens else None
    return joined or next(iter(garden_doors(scenario.site, scenario.brief)), None)
