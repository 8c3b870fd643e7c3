"""How sure an estimate is: all prices drawn many times within their ranges, with a market that they share.

Only prices are drawn. Quantities are those of the layout, and steps are shares; contingency counts as spent, as
estimators expect it to be. So a chance says what the price book knows, and no more.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache
from math import prod, sqrt
from typing import Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr

from optimizer.appraisal.cost_sheet import Cost, CostLine
from optimizer.catalogue import draws, price_correlation

Floats = NDArray[np.float64]
_SEED: Final = 19
_MOVERS: Final = 5
_HUNDREDS: Final = -2


@dataclass(frozen=True, slots=True)
class Mover:
    """A line of the estimate, and the share of the total's variance that moves with it."""

    room: str
    item: str
    share: float


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """Of phase 1: the chance to stay under the ceiling (None without one), what one time in ten lies below and above
    [money, to the hundred], and the five lines that move it most.
    """

    chance_under: float | None
    one_in_ten_below: Decimal
    one_in_ten_above: Decimal
    movers: tuple[Mover, ...] = ()


def uncertainty_of(cost: Cost, ceiling: Decimal | None, *, correlation: float | None = None) -> Uncertainty | None:
    """Simulate phase 1; None where nothing is built in it. The same draws every time, so that a run repeats."""
    lines = tuple(line for line in cost.lines if line.phase == 1 and not line.is_step)
    if not lines:
        return None
    factor = prod(1 + float(line.quantity) for line in cost.lines if line.phase == 1 and line.is_step)
    carried = np.array([[1.0 if line.is_owners_sum else factor] for line in lines])
    amounts = carried * _amounts(lines, price_correlation() if correlation is None else correlation)
    totals = amounts.sum(axis=0)
    low, high = np.quantile(totals, (0.1, 0.9))
    return Uncertainty(
        chance_under=None if ceiling is None else round(float(np.mean(totals <= float(ceiling))), 3),
        one_in_ten_below=Decimal(str(round(float(low), _HUNDREDS))),
        one_in_ten_above=Decimal(str(round(float(high), _HUNDREDS))),
        movers=_movers(lines, amounts, totals),
    )


def _amounts(lines: Sequence[CostLine], correlation: float) -> Floats:
    """Amounts by line and draw [money]. Lines of one item share its price, so they share its draw."""
    places = {item: place for place, item in enumerate(dict.fromkeys(line.item for line in lines))}
    ranks = ndtr(normals(len(places), correlation))[[places[line.item] for line in lines]]
    low, likely, high = (
        np.array([[float(getattr(line, part))] for line in lines]) for part in ("low", "amount", "high")
    )
    return triangular(ranks, low, likely, high)


@lru_cache(maxsize=8)
def normals(count: int, correlation: float) -> Floats:
    """Standard normal figures by item and draw, any two items correlated by the market that they share."""
    shared, own = np.random.default_rng(_SEED), np.random.default_rng(_SEED + 1)
    market = sqrt(correlation) * shared.standard_normal(draws())
    return np.asarray(market + sqrt(1 - correlation) * own.standard_normal((count, draws())))


def triangular(ranks: Floats, low: Floats, likely: Floats, high: Floats) -> Floats:
    """Value at each rank from 0 to 1 of a triangle from `low` over `likely` to `high`; all of them shapes that fit."""
    rising = low + np.sqrt(ranks * (high - low) * (likely - low))
    falling = high - np.sqrt((1 - ranks) * (high - low) * (high - likely))
    return np.asarray(np.where(ranks * (high - low) < likely - low, rising, falling))


def _movers(lines: Sequence[CostLine], amounts: Floats, totals: Floats) -> tuple[Mover, ...]:
    """Lines by their covariance with the total; the shares of all lines add up to 1."""
    apart = totals - totals.mean()
    variance = float(apart @ apart)
    if variance <= 0.0:
        return ()
    # Rounded first: of lines that move it alike the first in the estimate comes first, whatever hairs a sum leaves.
    shares = np.round(amounts @ apart / variance, 4)
    most = np.argsort(-shares, kind="stable")[:_MOVERS]
    return tuple(Mover(lines[i].room, lines[i].item, float(shares[i])) for i in most)
