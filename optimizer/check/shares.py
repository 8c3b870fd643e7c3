"""Rules about shares of ground: of the ring round a kept tree, and of the open yard."""

from collections.abc import Iterator
from typing import Final

from shapely import Point, union_all
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import root_rings
from optimizer.check.case import TOLERANCE_SQFT, CheckCase
from optimizer.check.finding import Finding
from optimizer.site import Tree

_QUARTER_STEPS: Final = 64
"""Straight pieces in a quarter of a ring: its area is short of the circle's by a ten-thousandth."""


def root_ring(case: CheckCase) -> Iterator[Finding]:
    """Rings round kept trees of which the built rooms together cover more than the share allowed.

    Whatever is built counts, a pool as well as paving. Ground of the ring outside the yard counts as ring.
    """
    built = [placed for placed in case.placed if placed.rules.built_as]
    share = root_rings(case.site).paved_share
    for tree in case.site.trees:
        ring = _ring(case, tree)
        taken = float(union_all([placed.shape for placed in built]).intersection(ring).area)
        if taken > share * ring.area + TOLERANCE_SQFT:
            names = tuple(placed.name for placed in built if placed.shape.intersection(ring).area > TOLERANCE_SQFT)
            found = f"{' and '.join(names)} cover {taken / ring.area:.1%} of the outer ring of {tree.name}"
            words = f"{found}, at most {share:.1%} is allowed"
            yield Finding("root_ring", (*names, tree.name), taken - share * float(ring.area), "sq ft", words)


def _ring(case: CheckCase, tree: Tree) -> BaseGeometry:
    rings, trunk, at = root_rings(case.site), tree.trunk_diameter_ft, Point(tree.at)
    inner = at.buffer(rings.inner_trunks * trunk, quad_segs=_QUARTER_STEPS)
    return at.buffer(rings.outer_trunks * trunk, quad_segs=_QUARTER_STEPS).difference(inner)


def paved_share(case: CheckCase) -> Iterator[Finding]:
    """Paved rooms and paths over more of the open yard than its limit, where it has one."""
    limit = case.site.paved_share_limit
    if limit is None:
        return
    yard = case.shapes.open_yard
    paved = float(_paved(case).intersection(yard).area)
    if paved > limit * yard.area + TOLERANCE_SQFT:
        words = f"paving covers {paved / yard.area:.1%} of the open yard, at most {limit:.1%} is allowed"
        yield Finding("paved_share", (), paved - limit * float(yard.area), "sq ft", words)


def _paved(case: CheckCase) -> BaseGeometry:
    return union_all([case.derived.paths, *(placed.shape for placed in case.placed.paved)])
