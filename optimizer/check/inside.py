"""Rules about where one room may stand on the site."""

from collections.abc import Iterable, Iterator
from itertools import product

from shapely import LineString, Point, Polygon

from optimizer.brief import RuleId
from optimizer.catalogue import root_rings
from optimizer.check.case import TOLERANCE_FT, CheckCase, overlap_sqft
from optimizer.check.finding import Finding
from optimizer.layout import PlacedRoom, outline

Area = tuple[str, Polygon]


def inside_setbacks(case: CheckCase) -> Iterator[Finding]:
    """Rooms that reach over the boundary, or nearer to an edge than what they are built as may stand."""
    grown = case.boundary.buffer(TOLERANCE_FT, join_style="mitre")
    for placed in case.placed:
        if not grown.covers(placed.shape):
            over = float(placed.shape.difference(case.boundary).area)
            words = f"{placed.name} reaches {over:.1f} sq ft over the boundary"
            yield Finding("inside_setbacks", (placed.name,), over, "sq ft", words)
        yield from _behind_setbacks(case, placed)


def _behind_setbacks(case: CheckCase, placed: PlacedRoom) -> Iterator[Finding]:
    built_as = placed.room.built_as(placed.choice) if placed.choice else placed.rules.built_as
    for edge, name, setbacks in zip(case.shapes.edges, case.site.edge_names, case.site.setbacks, strict=True):
        pairs = [(setbacks.of(built), float(placed.ground_of(built).distance(edge))) for built in built_as]
        asked, found = max(pairs, key=lambda pair: pair[0] - pair[1], default=(0.0, 0.0))
        if found < asked - TOLERANCE_FT:
            words = f"{placed.name} is {case.length(found)} from {name}, the setback is {case.length(asked)}"
            yield Finding("inside_setbacks", (placed.name, name), asked - found, "ft", words)


def off_buildings(case: CheckCase) -> Iterator[Finding]:
    """Rooms that stand in a building."""
    return _overlaps("off_buildings", product(case.placed, case.buildings))


def off_walls(case: CheckCase) -> Iterator[Finding]:
    """Rooms through which an existing wall, fence or hedge runs; one along an edge is fine."""
    for placed, wall in product(case.placed, case.site.walls):
        inner = placed.shape.buffer(-TOLERANCE_FT, join_style="mitre")
        found = float(inner.intersection(LineString(wall.line)).length)
        if found > 0:
            words = f"{wall.name} runs through {placed.name} for {case.length(found)}"
            yield Finding("off_walls", (placed.name, wall.name), found, "ft", words)


def under_structure(case: CheckCase) -> Iterator[Finding]:
    """Rooms under a structure that may not hold them, and new roofs under one that may."""
    held = {structure.name: structure.may_hold for structure in case.site.structures}
    pairs = product(case.placed, case.structures)
    yield from _overlaps("under_structure", ((room, area) for room, area in pairs if room.name not in held[area[0]]))
    roofed = (placed for placed in case.placed if placed.choice and placed.choice.cover)
    allowed = ((room, area) for room, area in product(roofed, case.structures) if room.name in held[area[0]])
    yield from _overlaps("under_structure", allowed)


def keep_outs(case: CheckCase) -> Iterator[Finding]:
    """Rooms on kept-out ground that does not allow their kind."""
    allowed = {area.name: area.allow for area in case.site.keep_outs}
    pairs = product(case.placed, case.keep_outs)
    return _overlaps("keep_outs", ((room, area) for room, area in pairs if room.kind not in allowed[area[0]]))


def kept_paving(case: CheckCase) -> Iterator[Finding]:
    """Rooms on paving that is kept as it is."""
    kept = [(paving.name, outline(paving.outline)) for paving in case.site.paving if paving.then == "keep"]
    return _overlaps("kept_paving", product(case.placed, kept))


def root_zone(case: CheckCase) -> Iterator[Finding]:
    """Rooms that come too near to the trunk of a kept tree."""
    for placed, tree in product(case.placed, case.site.trees):
        asked = root_rings(case.site).inner_trunks * tree.trunk_diameter_ft
        found = float(placed.shape.distance(Point(tree.at)))
        if found < asked - TOLERANCE_FT:
            words = f"{placed.name} is {case.length(found)} from {tree.name}, its roots need {case.length(asked)}"
            yield Finding("root_zone", (placed.name, tree.name), asked - found, "ft", words)


def _overlaps(rule: RuleId, pairs: Iterable[tuple[PlacedRoom, Area]]) -> Iterator[Finding]:
    for placed, (name, area) in pairs:
        if shared := overlap_sqft(placed.shape, area):
            words = f"{placed.name} takes {shared:.1f} sq ft of {name}"
            yield Finding(rule, (placed.name, name), shared, "sq ft", words)
