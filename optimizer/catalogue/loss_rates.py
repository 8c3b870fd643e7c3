"""What each loss counts in money. Every rate is invented, and a starting point for a firm's own judgement."""

from dataclasses import dataclass
from functools import cache

from optimizer.catalogue.data_files import data


@dataclass(frozen=True, slots=True)
class Rates:
    """Money per unit of a loss: of money spent, foot walked in a trip, hour missed, foot off a line, foot off its place
    under a structure, fire off the axes, foot of rise across the contour, foot of edge just off another, wish not kept,
    place in smoke, square foot of path against the walking that it saves.
    """

    cost: float
    walking: float
    sun: float
    order: float
    off_structure: float
    off_axis: float
    across_contour: float
    near_miss: float
    sight: float
    smoke: float
    paving: float
    worth_without_ceiling: float


@cache
def rates() -> Rates:
    """Rates of the data file."""
    entry = data("rates.yaml")
    return Rates(**{name: float(entry[name]) for name in Rates.__dataclass_fields__})
