"""Rules about shares of ground: of the ring round a kept tree, and of the open yard."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from shapely import Point, union_all
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import root_rings
from optimizer.check.case import TOLERANCE_SQFT, CheckCase
from optimizer.check.finding import Finding
from optimizer.fields import SITES
from optimizer.fields.existing_paving import standing_paving
from optimizer.site import Site, Tree

_QUARTER_STEPS: Final = 64
"""Straight pieces in a quarter of a ring: its area is short of the circle's by a ten-thousandth."""


def root_ring(case: CheckCase) -> Iterator[Finding]:
    """Rings round kept trees of which the built rooms together cover more than the share allowed.

    Whatever is built counts, a pool as well as paving. Ground of the ring outside the yard counts as ring.
    """
    built = [placed for placed in case.placed if placed.rules.built_as]
    share = root_rings(case.site).paved_share
    for tree, ring in _rings(case.site):
        taken = float(union_all([placed.shape for placed in built]).intersection(ring).area)
        if taken > share * ring.area + TOLERANCE_SQFT:
            names = tuple(placed.name for placed in built if placed.shape.intersection(ring).area > TOLERANCE_SQFT)
            found = f"{' and '.join(names)} cover {taken / ring.area:.1%} of the outer ring of {tree.name}"
            words = f"{found}, at most {share:.1%} is allowed"
            yield Finding("root_ring", (*names, tree.name), taken - share * float(ring.area), "sq ft", words)


@lru_cache(maxsize=SITES)
def _rings(site: Site) -> tuple[tuple[Tree, BaseGeometry], ...]:
    """Trees with the outer ring round each."""
    rings = root_rings(site)
    return tuple(
        (tree, _disc(tree, rings.outer_trunks).difference(_disc(tree, rings.inner_trunks))) for tree in site.trees
    )


def _disc(tree: Tree, trunks: float) -> BaseGeometry:
    """Ground within so many trunk diameters of a tree's middle."""
    return Point(tree.at).buffer(trunks * tree.trunk_diameter_ft, quad_segs=_QUARTER_STEPS)


def paved_share(case: CheckCase) -> Iterator[Finding]:
    """Paved rooms, paths and paving that stays over more of the open yard than its limit, where it has one."""
    limit = case.site.paved_share_limit
    if limit is None:
        return
    yard = case.shapes.open_yard
    paved = float(_paved(case).intersection(yard).area)
    if paved > limit * yard.area + TOLERANCE_SQFT:
        words = f"paving covers {paved / yard.area:.1%} of the open yard, at most {limit:.1%} is allowed"
        yield Finding("paved_share", (), paved - limit * float(yard.area), "sq ft", words)


def _paved(case: CheckCase) -> BaseGeometry:
    there = standing_paving(case.site, case.placed.shapes)
    return union_all([case.derived.paths, there, *(placed.shape for placed in case.placed.paved)])
