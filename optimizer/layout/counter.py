"""Where the front counter of a placed kitchen is, and where the cook stands behind it."""

from optimizer.catalogue import clearance_ft, counter_middle_ft
from optimizer.layout.placed import PlacedRoom
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.site import Point


def counter_middle(kitchen: PlacedRoom) -> Point:
    """Middle of the front counter on the plan [ft]; the room's centre where none is drawn."""
    right, ahead = counter_middle_ft(kitchen.choice) if kitchen.choice else (0.0, 0.0)
    (x, y), (out_x, out_y) = kitchen.centre, FRONT_VECTORS[kitchen.front]
    return (x + ahead * out_x + right * out_y, y + ahead * out_y - right * out_x)


def cook_stands(kitchen: PlacedRoom) -> Point:
    """Middle of the work aisle just behind the front counter [ft]."""
    (x, y), (out_x, out_y) = counter_middle(kitchen), FRONT_VECTORS[kitchen.front]
    back_ft = (clearance_ft("counter_depth") + clearance_ft("aisle_one_cook")) / 2
    return (x - back_ft * out_x, y - back_ft * out_y)
