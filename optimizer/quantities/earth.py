"""Volumes of earth beside the grid method of `grading`: average end areas, the zero line, loads."""

from collections.abc import Iterable
from math import ceil

from optimizer.quantities.figures import value

_CUFT: float = 27.0


def end_areas_cuyd(stretches: Iterable[tuple[float, float, float]]) -> float:
    """Volume [cu yd] of stretches, each by its two end areas [sq ft] and its length [ft]: mean of the ends x length."""
    return sum((first + last) / 2 * length / _CUFT for first, last, length in stretches)


def zero_line_ft(cut_ft: float, fill_ft: float, length_ft: float) -> float:
    """Distance from the end that is cut [ft] at which cut turns to fill, both depths at least 0 and not both 0."""
    return length_ft * cut_ft / (cut_ft + fill_ft)


def loads(loose_cuyd: float) -> int:
    """Loads that cart loose earth away."""
    return ceil(loose_cuyd / value("load_cuyd") - 1e-9)
