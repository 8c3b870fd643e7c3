"""What follows from a layout: ways, levels, beds and sun, each worked out once, when it is first asked for."""

from optimizer.derived.derived import Derived
from optimizer.derived.futures import Access, Barred, Distance, Fit, FutureSite, Miss
from optimizer.derived.pools import PoolSite, pool_sites
from optimizer.derived.stages import later_rooms, legs_without, reached_before, stages_of

__all__ = [
    "Access",
    "Barred",
    "Derived",
    "Distance",
    "Fit",
    "FutureSite",
    "Miss",
    "PoolSite",
    "later_rooms",
    "legs_without",
    "pool_sites",
    "reached_before",
    "stages_of",
]
