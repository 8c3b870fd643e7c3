"""What may be built later on held ground: how each future fits in, and its own way in from the street."""

from optimizer.derived.futures.access import Access
from optimizer.derived.futures.barred import Barred
from optimizer.derived.futures.distances import Distance
from optimizer.derived.futures.fit import Fit, Miss
from optimizer.derived.futures.futures import FutureSite, future_sites
from optimizer.derived.futures.obstacles import PhaseOne
from optimizer.derived.futures.shut_off import shut_off

__all__ = ["Access", "Barred", "Distance", "Fit", "FutureSite", "Miss", "PhaseOne", "future_sites", "shut_off"]
