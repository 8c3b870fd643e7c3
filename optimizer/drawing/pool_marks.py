"""The marks of what a pool needs beside its own ground: its barrier, and the pad of its equipment."""

from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.derived import pool_sites
from optimizer.drawing.marks import Line, Mark
from optimizer.drawing.outlines import areas_of
from optimizer.layout import Placed
from optimizer.site import Site


def pool_marks(site: Site, placed: Placed, paths: BaseGeometry) -> Iterator[Mark]:
    """Barriers as lines, pads as outlines."""
    for pool in pool_sites(site, placed, paths):
        for line in shapely.get_parts(pool.barrier):
            if points := tuple((float(x), float(y)) for x, y in shapely.get_coordinates(line)):
                yield Line("pool_barrier", points)
        yield from areas_of("pool_pad", pool.pad)
