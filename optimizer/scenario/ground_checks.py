"""What must hold of lines in the ground, of rings round trees and of the wind."""

from collections.abc import Iterator
from typing import Final

from shapely import LineString, Polygon

from optimizer.catalogue import usual_rings
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.rings import point_text
from optimizer.scenario.site_schema import SitePart, UtilityPart

_WHOLE: Final = 1.0 + 1e-6
"""All shares of a rose together, with what adding them rounds."""


def ground_complaints(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Complaints about utilities, root rings and the wind rose; `broken` are outlines that are none."""
    yield from _utilities(site)
    if ("site", "boundary", "corners") not in broken:
        yield from _lines_in_the_yard(site)
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
