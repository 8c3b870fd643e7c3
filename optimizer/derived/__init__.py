"""What follows from a layout: ways, levels, beds and sun, each worked out once, when it is first asked for."""

from optimizer.derived.derived import Derived
from optimizer.derived.pools import PoolSite, pool_sites

__all__ = ["Derived", "PoolSite", "pool_sites"]
