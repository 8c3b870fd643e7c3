"""What must hold of walls and paving in the yard: inside the boundary, openings on their wall, slabs that can carry."""

from collections.abc import Iterator
from itertools import combinations, pairwise
from typing import Final

from shapely import LineString, Point, Polygon, get_parts

from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.existing_schema import WallPart
from optimizer.scenario.rings import outside_ft, point_text
from optimizer.scenario.site_schema import SitePart

ON_LINE_FT: Final = 0.1
OVERHANG_FT: Final = 0.5
_OVERLAP_SQFT: Final = 1.0
_ROUNDING_FT: Final = 1e-6


def existing_complaints(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Complaints about paving and walls; `broken` are outlines that are none."""
    yield from _paving(site, broken)
    yield from _walls(site, broken)


def _paving(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """What is no slab and is to carry a room, paving outside the boundary, and paving over other paving."""
    for index, paving in enumerate(site.paving):
        path: Path = ("site", "paving", index)
        if paving.then == "reuse" and paving.surface != "concrete":
            found = f"{paving.surface}, which is lifted or kept as it is"
            advice = "write then: keep or then: lift"
            yield Complaint((*path, "then"), "a slab of concrete where a room is to lie on it", found, advice)
        if broken.isdisjoint({(*path, "outline"), ("site", "boundary", "corners")}):
            over_ft = outside_ft(paving.outline, site.boundary.corners)
            if over_ft > OVERHANG_FT + _ROUNDING_FT:
                found = f"{paving.name} {over_ft:.2f} ft outside"
                yield Complaint((*path, "outline"), "paving inside the boundary", found, "end it at the boundary")
    yield from _laps(site, broken)


def _laps(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Pieces of paving that lie on each other."""
    paths: list[Path] = [("site", "paving", index, "outline") for index in range(len(site.paving))]
    parts = zip(site.paving, paths, strict=True)
    sound = [(part, Polygon(part.outline), path) for part, path in parts if path not in broken]
    for (first, one, _), (second, other, path) in combinations(sound, 2):
        shared = one.intersection(other).area
        if shared > _OVERLAP_SQFT:
            found = f"{second.name}, of which {shared:.1f} sq ft lie on {first.name}"
            yield Complaint(path, "pieces of paving side by side", found, "cut one back")


def _walls(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Lines that are none, walls outside the boundary, and openings off their wall."""
    for index, wall in enumerate(site.walls):
        path: Path = ("site", "walls", index)
        fault = line_fault(wall)
        if fault:
            advice = "list its points in order, each once"
            yield Complaint((*path, "line"), "a line that does not cross or repeat itself", fault, advice)
        else:
            yield from _openings(wall, path)
        if ("site", "boundary", "corners") not in broken:
            yield from _inside(wall, site, path)


def line_fault(wall: WallPart) -> str | None:
    """Say what keeps a wall's line from being one, or None."""
    twice = next((start for start, end in pairwise(wall.line) if start == end), None)
    if twice:
        return f"the point {point_text(twice)} twice in a row"
    return None if LineString(wall.line).is_simple else "a line that crosses or touches itself"


def _inside(wall: WallPart, site: SitePart, path: Path) -> Iterator[Complaint]:
    yard = Polygon(site.boundary.corners)
    # Between two points inside, a line may still cut across a corner of the boundary.
    beyond = get_parts(LineString(wall.line).difference(yard))
    ends = (part.interpolate(share, normalized=True) for part in beyond for share in (0.0, 0.5, 1.0))
    over_ft = max(yard.distance(point) for point in (*ends, *map(Point, wall.line)))
    if over_ft > OVERHANG_FT + _ROUNDING_FT:
        found = f"{wall.name} {over_ft:.2f} ft outside"
        advice = "move its points; what stands outside goes under `surroundings`"
        yield Complaint((*path, "line"), f"a {wall.kind} inside the boundary", found, advice)


def _openings(wall: WallPart, path: Path) -> Iterator[Complaint]:
    """Openings off the line, past its ends, or over each other."""
    line, before = LineString(wall.line), -1.0
    places = {index: line.project(Point(opening.at)) for index, opening in enumerate(wall.openings)}
    for index in sorted(places, key=lambda index: places[index]):
        opening, at = wall.openings[index], (*path, "openings", index)
        start, end = places[index] - opening.width / 2, places[index] + opening.width / 2
        off_ft = line.distance(Point(opening.at))
        if off_ft > ON_LINE_FT + _ROUNDING_FT:
            found = f"one at {point_text(opening.at)}, {off_ft:.2f} ft away from it"
            yield Complaint((*at, "at"), f"an opening on the line of {wall.name}", found, "move it there")
            continue
        past_ft = max(-start, end - line.length)
        if past_ft > OVERHANG_FT + _ROUNDING_FT:
            found = f"one {opening.width:.6g} ft wide that reaches {past_ft:.2f} ft past it"
            yield Complaint((*at, "width"), f"an opening within {wall.name}", found, "make it narrower, or move it")
        if start < before - _ROUNDING_FT:
            found = f"one at {point_text(opening.at)} that laps over another by {before - start:.2f} ft"
            yield Complaint(at, f"openings of {wall.name} beside each other", found, "move one, or make them one")
        before = max(before, end)
