"""By what a composed plan is told from rooms put down on paper, counted on one concept (layout rules 5, 24, 26, 28)."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from optimizer.appraisal.order import room_edges
from optimizer.concepts import Option
from optimizer.fields import LINE_TOLERANCE_FT
from optimizer.fields.terraces import garden_doors
from optimizer.scenario import Scenario

SLANT_FT = 8.0
"""A slanted stretch of way shorter than this looks like a mistake; common practice, no source."""


@dataclass(frozen=True)
class Composed:
    """What is counted on one concept."""

    has_a_main_door: bool
    is_bare: bool
    """No terrace lies at the landing of the garden door of most trips."""
    aligned_share: float
    lines: int
    """Different lines on which edges of rooms lie."""
    rooms: int
    short_slants: int
    bends: int
    legs: int
    left_out: int


def composed_of(scenario: Scenario, option: Option) -> Composed:
    """Count a concept."""
    main = garden_doors(scenario.site, scenario.brief)[:1]
    legs = [leg.points for leg in option.appraisal.legs]
    return Composed(
        has_a_main_door=bool(main),
        is_bare=any(door.name in option.appraisal.bare_doors for door in main),
        aligned_share=option.appraisal.aligned_share,
        lines=_lines(option),
        rooms=len(option.layout.placements),
        short_slants=sum(_is_short_slant(*ends) for points in legs for ends in pairwise(points)),
        bends=sum(len(points) - 2 for points in legs),
        legs=len(legs),
        left_out=len(option.left_out),
    )


def ideas_of(options: Iterable[Option]) -> set[str]:
    """Names of the ideas that concepts follow; one that follows none adds nothing."""
    return {option.idea.name for option in options if option.idea}


def _lines(option: Option) -> int:
    found: list[tuple[str, float]] = []
    for edge in room_edges(option.layout):
        if not any(axis == edge.axis and abs(at - edge.at_ft) <= LINE_TOLERANCE_FT for axis, at in found):
            found.append((edge.axis, edge.at_ft))
    return len(found)


def _is_short_slant(start: tuple[float, float], end: tuple[float, float]) -> bool:
    (x0, y0), (x1, y1) = start, end
    return min(abs(x1 - x0), abs(y1 - y0)) > 0.1 and dist(start, end) < SLANT_FT
