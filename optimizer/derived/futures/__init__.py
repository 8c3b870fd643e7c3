"""What may be built later on held ground: how each future fits in, and its own way in from the street."""

from optimizer.derived.futures.access import Access
from optimizer.derived.futures.barred import Barred
from optimizer.derived.futures.distances import Distance
from optimizer.derived.futures.fit import Fit, Miss, is_fitted
from optimizer.derived.futures.futures import FutureSite, future_sites, wanted
from optimizer.derived.futures.obstacles import PhaseOne
from optimizer.derived.futures.shut_off import shut_off

__all__ = [
    "Access",
    "Barred",
    "Distance",
    "Fit",
    "FutureSite",
    "Miss",
    "PhaseOne",
    "future_sites",
    "is_fitted",
    "shut_off",
    "wanted",
]
