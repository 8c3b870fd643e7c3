"""Furniture of a placed room on the plan."""

from typing import Final

from shapely import Polygon, affinity, box

from optimizer.catalogue import Item, SizedChoice
from optimizer.layout.placement import Front, Placement

_TURNS: Final[dict[Front, int]] = {"+y": 0, "-x": 90, "-y": 180, "+x": -90}


def item_on_plan(placement: Placement, choice: SizedChoice, item: Item) -> Polygon:
    """Ground of an item [ft]: turned from the room's own axes about its middle, where the room's furniture stays."""
    x, y = item.x_ft - choice.width_ft / 2, item.y_ft - choice.depth_ft / 2
    local = affinity.rotate(box(x, y, x + item.width_ft, y + item.depth_ft), item.turn_deg)
    turned = affinity.rotate(local, _TURNS[placement.front], origin=(0, 0))
    return affinity.translate(turned, *placement.centre)
