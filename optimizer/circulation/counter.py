"""Where the front counter of a placed kitchen is, and where the cook stands behind it."""

from optimizer.catalogue import SizedChoice, clearance_ft, counter_middle_ft
from optimizer.layout import Placement
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.site import Point


def counter_middle(placement: Placement, choice: SizedChoice | None) -> Point:
    """Middle of the front counter on the plan [ft]; the room's centre where none is drawn."""
    right, ahead = counter_middle_ft(choice) if choice else (0.0, 0.0)
    (x, y), (out_x, out_y) = placement.centre, FRONT_VECTORS[placement.front]
    return (x + ahead * out_x + right * out_y, y + ahead * out_y - right * out_x)


def cook_stands(placement: Placement, choice: SizedChoice | None) -> Point:
    """Middle of the work aisle just behind the front counter [ft]."""
    (x, y), (out_x, out_y) = counter_middle(placement, choice), FRONT_VECTORS[placement.front]
    back_ft = (clearance_ft("counter_depth") + clearance_ft("aisle_one_cook")) / 2
    return (x - back_ft * out_x, y - back_ft * out_y)
