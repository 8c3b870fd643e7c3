"""Rules about who cooks."""

from collections.abc import Iterator
from math import acos, degrees, hypot

from optimizer.check.case import TOLERANCE_FT, CheckCase
from optimizer.check.finding import Finding
from optimizer.layout import FRONT_VECTORS, counter_middle


def cook_looks_at_table(case: CheckCase) -> Iterator[Finding]:
    """Kitchens whose cook turns the back on a gathering: over 90 degrees between the way they serve and its middle.

    Measured from the middle of the front counter.
    """
    for kitchen in case.placed.of_kind("kitchen"):
        out_x, out_y = FRONT_VECTORS[kitchen.front]
        for table in case.placed.of_kind("gathering"):
            (x, y), (table_x, table_y) = counter_middle(kitchen), table.centre
            ahead = (table_x - x) * out_x + (table_y - y) * out_y
            if ahead < -TOLERANCE_FT:
                angle = degrees(acos(ahead / hypot(table_x - x, table_y - y)))
                words = f"{kitchen.name} serves {angle:.0f} degrees away from {table.name}, at most 90 is asked"
                yield Finding("cook_looks_at_table", (kitchen.name, table.name), angle - 90, "degrees", words)
