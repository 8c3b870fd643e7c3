"""Rule about water that is built now: its deck, and the roots that nobody digs in for it."""

from collections.abc import Iterator
from itertools import product

from shapely import Point

from optimizer.catalogue import least_deck_ft, root_rings
from optimizer.check.case import TOLERANCE_FT, CheckCase
from optimizer.check.finding import Finding
from optimizer.layout import PlacedRoom


def water_clear(case: CheckCase) -> Iterator[Finding]:
    """Pools with less deck than nothing may stand on, and pools dug in the outer ring of a kept tree."""
    pools = [placed for placed in case.placed if placed.rules.has_deck]
    for placed in pools:
        yield from _narrow_deck(case, placed)
    for placed, tree in product(pools, case.site.trees):
        asked = root_rings(case.site).outer_trunks * tree.trunk_diameter_ft
        found = float(placed.water.distance(Point(tree.at)))
        if found < asked - TOLERANCE_FT:
            told = f"nobody digs within {case.length(asked)} of its trunk"
            words = f"the water of {placed.name} is {case.length(found)} from {tree.name}, {told}"
            yield Finding("water_clear", (placed.name, tree.name), asked - found, "ft", words)


def _narrow_deck(case: CheckCase, placed: PlacedRoom) -> Iterator[Finding]:
    """A deck too narrow on some side; of water that is not drawn nothing is known."""
    if placed.choice is None or placed.choice.water is None:
        return
    asked, found = least_deck_ft(), float(placed.water.distance(placed.shape.exterior))
    if found < asked - TOLERANCE_FT:
        words = (
            f"the deck of {placed.name} is {case.length(found)} wide at its narrowest, it needs {case.length(asked)}"
        )
        yield Finding("water_clear", (placed.name,), asked - found, "ft", words)
