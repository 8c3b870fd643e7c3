"""What stands round the pools of a figure: their barriers, and their equipment on its pad."""

from collections.abc import Iterator
from typing import Final

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import barrier_height_ft
from optimizer.derived import pool_sites
from optimizer.figures.held_ground import is_held_ground
from optimizer.figures.solids import Heights, Mesh, fence, joined, prism
from optimizer.layout import Placed
from optimizer.site import Site

EQUIPMENT_FT: Final = 3.0
"""Height of pump, filter and heater as drawn; common practice, no source."""


def round_pools(site: Site, placed: Placed, paths: BaseGeometry, ground: Heights) -> Iterator[tuple[str, Mesh]]:
    """Name and surface of each barrier and each pad's equipment, on the ground; `paths` are the paved ways."""
    held = {room.name for room in placed if is_held_ground(room)}
    for pool in pool_sites(site, placed.once, paths):
        if pool.room in held:
            continue
        lines = [shapely.get_coordinates(line) for line in shapely.get_parts(pool.barrier)]
        if fences := [fence(line, barrier_height_ft(), ground) for line in lines if len(line)]:
            yield f"{pool.room}, barrier", joined(fences)
        if pool.pad is not None:
            foot = float(ground(np.array(pool.pad.centroid.coords)).min())
            yield f"{pool.room}, equipment", prism(pool.pad, foot, foot + EQUIPMENT_FT)
