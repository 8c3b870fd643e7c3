"""What paving that is there already does to prices: slabs that carry a room spare its base, what is lifted costs."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from shapely import Polygon, union_all

from optimizer.catalogue.rooms import KindRules, Quantity, SizedChoice
from optimizer.site import Site

OVERLAID: Final = {"unit paving": "unit paving overlay", "plain paving": "plain paving overlay"}
"""Paving of a room, and what is laid instead where a slab carries it."""
LIFTED: Final = "paving lifted"
_TOLERANCE_FT: Final = 0.02


@dataclass(frozen=True, slots=True)
class Existing:
    """Ground whose paving is lifted whatever is placed [sq ft], and the slabs that may carry, width and depth [ft]."""

    lifted_sqft: float = 0.0
    slabs: tuple[tuple[float, float], ...] = ()

    def may_carry(self, choice: SizedChoice, rules: KindRules) -> bool:
        """Whether a room of this kind and size might lie wholly on a slab, by their measures alone."""
        if not is_carried(rules):
            return False
        short, long = sorted((choice.width_ft, choice.depth_ft))
        sizes = (sorted(slab) for slab in self.slabs)
        return any(short <= least + _TOLERANCE_FT and long <= most + _TOLERANCE_FT for least, most in sizes)


NOTHING_THERE: Final = Existing()


def is_carried(rules: KindRules) -> bool:
    """Whether a slab carries rooms of a kind: those that are paved, and not dug through it as water is."""
    return rules.paved and "paving" in rules.built_as and "water" not in rules.built_as


@lru_cache(maxsize=16)
def existing_of(site: Site) -> Existing:
    """What a site's own paving does to prices."""
    houses = union_all([Polygon(building.outline) for building in site.buildings])
    ground = [Polygon(paving.outline) for paving in site.paving if paving.then == "lift"]
    lifted = union_all(ground).intersection(Polygon(site.boundary)).difference(houses)
    bounds = (Polygon(paving.outline).bounds for paving in site.paving if paving.then == "reuse")
    return Existing(float(lifted.area), tuple((x2 - x1, y2 - y1) for x1, y1, x2, y2 in bounds))


def overlaid(quantities: Iterable[Quantity]) -> tuple[Quantity, ...]:
    """Quantities of a room that a slab carries: its paving needs no base."""
    return tuple(replace(quantity, item=OVERLAID.get(quantity.item, quantity.item)) for quantity in quantities)
