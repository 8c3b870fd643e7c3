"""What must hold of lines in the ground, of rings round trees and of the wind."""

from collections.abc import Iterator
from math import hypot
from statistics import median
from typing import Final

from shapely import LineString, Polygon

from optimizer.catalogue import usual_rings
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.rings import point_text
from optimizer.scenario.site_schema import SitePart, UtilityPart

_WHOLE: Final = 1.0 + 1e-6
"""All shares of a rose together, with what adding them rounds."""

_SAME_LEVEL_FT: Final = 0.02
"""What lies within this is one height, as in all of the program."""


def ground_complaints(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Complaints about utilities, root rings and the wind rose; `broken` are outlines that are none."""
    yield from _utilities(site)
    if ("site", "boundary", "corners") not in broken:
        yield from _lines_in_the_yard(site)
        yield from _far_levels(site)
    yield from _repeated_levels(site)
    yield from _trunks(site)
    yield from _root_rings(site)
    yield from _wind_rose(site)


def _utilities(site: SitePart) -> Iterator[Complaint]:
    """One of at and line, and a clear width of lines only."""
    for index, part in enumerate(site.utilities):
        path: Path = ("site", "utilities", index)
        if (part.at is None) == (part.line is None):
            found = "neither" if part.at is None else "both"
            yield Complaint(path, "one of `at` (where a run starts) and `line` (a known line)", found, "keep one")
        if part.line is None and part.clear is not None:
            yield Complaint((*path, "clear"), "`clear` with a `line` only", "it without one", "take it away")


def _lines_in_the_yard(site: SitePart) -> Iterator[Complaint]:
    """Known lines of which some part lies in the yard."""
    yard = Polygon(site.boundary.corners)
    for index, part in enumerate(site.utilities):
        if part.line is not None and not LineString(part.line).intersects(yard):
            path: Path = ("site", "utilities", index, "line")
            advice = "check its points and their unit, or leave it out"
            yield Complaint(path, "a line that crosses the yard", _where(part, part.line[0]), advice)


def _far_levels(site: SitePart) -> Iterator[Complaint]:
    """Levels of one ground: one that is farther above or below the rest than the yard is long is of another datum."""
    if not site.levels:
        return
    xs, ys = zip(*site.boundary.corners, strict=True)
    far_ft = hypot(max(xs) - min(xs), max(ys) - min(ys))
    middle = median(level.z for level in site.levels)
    for index, level in enumerate(site.levels):
        if abs(level.z - middle) > far_ft:
            found = f"{abs(level.z - middle):.0f} ft from the middle one of them"
            advice = "check its digits, its unit and its datum"
            yield Complaint(("site", "levels", index, "z"), "levels of one ground", found, advice)


def _repeated_levels(site: SitePart) -> Iterator[Complaint]:
    """Two heights at one place, between which the ground could not tell."""
    seen: dict[tuple[float, float], float] = {}
    for index, level in enumerate(site.levels):
        before = seen.setdefault(level.at, level.z)
        if abs(level.z - before) > _SAME_LEVEL_FT:
            found = f"a second at {point_text(level.at)}, {abs(level.z - before):.2f} ft from the first"
            advice = "take one out; of a wall, give foot and top a foot apart"
            yield Complaint(("site", "levels", index), "one level at a place", found, advice)


def _trunks(site: SitePart) -> Iterator[Complaint]:
    """Ask for crowns that are wider than their trunks."""
    for index, tree in enumerate(site.trees):
        if tree.trunk_diameter > 2 * tree.canopy_radius:
            found = f"{tree.trunk_diameter:g} ft under a crown of {2 * tree.canopy_radius:g} ft"
            path: Path = ("site", "trees", index, "trunk_diameter")
            yield Complaint(path, "a trunk thinner than its crown", found, "write it as 16 in if inches are meant")


def _where(part: UtilityPart, start: tuple[float, float]) -> str:
    return f"{part.name or f'{part.kind} line'} from {point_text(start)} on, all of it outside the boundary"


def _root_rings(site: SitePart) -> Iterator[Complaint]:
    """Ask for an outer ring that is no smaller than the inner one."""
    outer, inner = site.root_rings.outer, site.root_rings.inner
    inner = usual_rings().inner_trunks if inner is None else inner
    if outer is not None and outer < inner:
        expected = f"an outer ring of at least the inner one's {inner:g} trunk diameters"
        yield Complaint(("site", "root_rings", "outer"), expected, f"{outer:g}", "swap the two, or give both")


def _wind_rose(site: SitePart) -> Iterator[Complaint]:
    """Ask for shares that are no more than the whole season."""
    total = sum(site.wind_rose or ())
    if total > _WHOLE:
        advice = "divide each by their sum; what they lack to 1 is calm"
        yield Complaint(("site", "wind_rose"), "shares of 1 in all at most", f"{total:.4g}", advice)
