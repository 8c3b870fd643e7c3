"""Rules about what lies in the ground or over it: known lines, septic tanks and fields, overhead lines."""

from collections.abc import Iterator
from itertools import product

from shapely import LineString, Polygon

from optimizer.catalogue import keep_out_ft, line_clear_ft
from optimizer.check.case import TOLERANCE_FT, CheckCase, overlap_sqft
from optimizer.check.finding import Finding
from optimizer.layout import PlacedRoom
from optimizer.site import KeepOut


def utility_lines(case: CheckCase) -> Iterator[Finding]:
    """Built rooms nearer to a known line than its clear width on each side."""
    for placed, line in product(_built(case), case.site.utility_lines):
        asked, found = line_clear_ft(case.site, line), float(placed.shape.distance(LineString(line.line)))
        if found < asked - TOLERANCE_FT:
            words = f"{placed.name} is {case.length(found)} from {line.name}, rooms keep {case.length(asked)}"
            yield Finding("utility_lines", (placed.name, line.name), asked - found, "ft", words)


def septic(case: CheckCase) -> Iterator[Finding]:
    """Built rooms too near to a septic tank or field or an overhead line, or on a field, whatever it allows."""
    for placed, (area, ground) in product(_built(case), zip(case.site.keep_outs, case.shapes.keep_outs, strict=True)):
        pairs = (
            (keep_out_ft(case.site, area.kind, (built,)), float(placed.ground_of(built).distance(ground)))
            for built in placed.rules.built_as
        )
        asked, found = max(pairs, key=lambda pair: pair[0] - pair[1])
        if found < asked - TOLERANCE_FT:
            words = (
                f"{placed.name} is {case.length(found)} from {area.name}, a {area.kind}; it keeps {case.length(asked)}"
            )
            yield Finding("septic", (placed.name, area.name), asked - found, "ft", words)
        elif area.kind == "septic field":
            yield from _on_the_field(placed, area, ground)


def _on_the_field(placed: PlacedRoom, area: KeepOut, ground: Polygon) -> Iterator[Finding]:
    if shared := overlap_sqft(placed.shape, ground):
        words = f"{placed.name} takes {shared:.1f} sq ft of {area.name}, on which nothing is built"
        yield Finding("septic", (placed.name, area.name), shared, "sq ft", words)


def _built(case: CheckCase) -> Iterator[PlacedRoom]:
    yield from (placed for placed in case.placed if placed.rules.built_as)
