"""What follows from a layout: ways, levels, beds and sun, each worked out once, when it is first asked for."""

from optimizer.derived.derived import Derived
from optimizer.derived.futures import Access, Barred, Fit, FutureSite, Miss
from optimizer.derived.pools import PoolSite, pool_sites

__all__ = ["Access", "Barred", "Derived", "Fit", "FutureSite", "Miss", "PoolSite", "pool_sites"]
