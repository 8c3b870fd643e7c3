"""Rules about rooms that have grown to a line."""

from collections.abc import Iterator

from optimizer.check.case import TOLERANCE_FT, TOLERANCE_SQFT, CheckCase
from optimizer.check.finding import Finding
from optimizer.fields import edge_of, reach_ft
from optimizer.layout import PlacedRoom


def overgrown(case: CheckCase, placed: PlacedRoom) -> Iterator[Finding]:
    """Where a room is larger than its choice by more than it may be: more of its area, or a side too far out."""
    base, share = placed.placement.base, placed.room.grow
    more_sqft = placed.placement.area_sqft - base.area_sqft
    over_sqft = more_sqft - share * base.area_sqft
    if over_sqft > TOLERANCE_SQFT:
        found = more_sqft / base.area_sqft
        words = f"{placed.name} has grown by {found:.0%} of its area, at most {share:.0%} is allowed"
        yield Finding("known_choice", (placed.name,), over_sqft, "sq ft", words)
    for side, out_ft in placed.placement.moved_out_ft.items():
        most_ft = reach_ft(case.site, edge_of(placed.placement, side))
        if not -TOLERANCE_FT <= out_ft <= most_ft + TOLERANCE_FT:
            grown = f"has grown by {case.length(out_ft)} on one side, at most {case.length(most_ft)}"
            words = f"has lost {case.length(-out_ft)} on one side" if out_ft < 0 else grown
            over_ft = max(-out_ft, out_ft - most_ft)
            yield Finding("known_choice", (placed.name,), over_ft, "ft", f"{placed.name} {words}")
