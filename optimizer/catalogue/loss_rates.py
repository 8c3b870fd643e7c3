"""What each loss counts in money. Every rate is invented, and a starting point for a firm's own judgement."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from optimizer.catalogue.data_files import data


@dataclass(frozen=True, slots=True)
class Rates:
    """Money per unit of a loss; the data file says of what."""

    cost: float
    walking: float
    stands_in: float
    sun: float
    order: float
    disorder: float
    bare_doors: tuple[float, ...]
    empty_roof: float
    off_structure: float
    off_axis: float
    across_contour: float
    near_miss: float
    leftover: float
    scattered_lawn: float
    destination: float
    way_off: float
    jog: float
    overpaved: float
    unbacked: float
    cook: float
    sight: float
    smoke: float
    paving: float
    party: float
    worth_without_ceiling: float
    worth_by_default: float


@cache
def rates() -> Rates:
    """Rates of the data file."""
    entry = data("rates.yaml")
    return Rates(**{name: _read(entry[name]) for name in Rates.__dataclass_fields__})


def _read(value: Any) -> Any:
    return tuple(map(float, value)) if isinstance(value, list) else float(value)
