"""Volumes of earth beside the grid method of `grading`: average end areas, loads."""

from collections.abc import Iterable
from math import ceil

from optimizer.quantities.figures import value

_CUFT: float = 27.0


def end_areas_cuyd(stretches: Iterable[tuple[float, float, float]]) -> float:
    """Volume [cu yd] of stretches, each by its two end areas [sq ft] and its length [ft]: mean of the ends x length."""
    return sum((first + last) / 2 * length / _CUFT for first, last, length in stretches)


def loads(loose_cuyd: float) -> int:
    """Loads that cart loose earth away."""
    return ceil(loose_cuyd / value("load_cuyd") - 1e-9)
