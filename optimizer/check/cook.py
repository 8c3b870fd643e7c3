"""Rules about who cooks."""

from collections.abc import Iterator
from math import acos, degrees, hypot

from optimizer.check.case import TOLERANCE_FT, Case
from optimizer.check.finding import Finding
from optimizer.circulation import counter_middle
from optimizer.layout.placement import FRONT_VECTORS


def cook_looks_at_table(case: Case) -> Iterator[Finding]:
    """Kitchens whose cook turns the back on a gathering: over 90 degrees between the way they serve and its middle.

    Measured from the middle of the front counter.
    """
    kitchens = [placed for placed in case.placed if placed.room.rules.kind == "kitchen"]
    gatherings = [placed for placed in case.placed if placed.room.rules.kind == "gathering"]
    for kitchen in kitchens:
        out_x, out_y = FRONT_VECTORS[kitchen.placement.front]
        for table in gatherings:
            (x, y), (table_x, table_y) = counter_middle(kitchen.placement, kitchen.choice), table.placement.centre
            ahead = (table_x - x) * out_x + (table_y - y) * out_y
            if ahead < -TOLERANCE_FT:
                angle = degrees(acos(ahead / hypot(table_x - x, table_y - y)))
                words = f"{kitchen.name} serves {angle:.0f} degrees away from {table.name}, at most 90 is asked"
                yield Finding("cook_looks_at_table", (kitchen.name, table.name), angle - 90, "degrees", words)
