"""Volumes of earth beside the grid method of `grading`: average end areas, loose earth, loads."""

from collections.abc import Iterable
from math import ceil

from optimizer.catalogue.data_files import data
from optimizer.grading import CUFT_PER_CUYD, loose_cuyd
from optimizer.quantities.figures import value
from optimizer.quantities.part import Line, Part


def end_areas_cuyd(stretches: Iterable[tuple[float, float, float]]) -> float:
    """Volume [cu yd] of stretches, each by its two end areas [sq ft] and its length [ft]: mean of the ends x length."""
    return sum((first + last) / 2 * length / CUFT_PER_CUYD for first, last, length in stretches)


def loose_part(line: Line, item: str, bank_cuyd: float) -> Part:
    """Part of a line: earth that was dug [cu yd in the bank], as it lies loose."""
    how = f"{bank_cuyd:,.2f} cu yd x {loose_cuyd(1):g} swell"
    return line.part(item, loose_cuyd(bank_cuyd), "cu yd", how, data("steps.yaml")["swell"]["source"])


def loads(earth_lcy: float) -> int:
    """Loads that cart so much loose earth away [cu yd]."""
    return ceil(earth_lcy / value("load_cuyd") - 1e-9)
