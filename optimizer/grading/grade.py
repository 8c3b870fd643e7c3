"""Grading of a layout: room levels first, then steps, walls, guards, earth and falls."""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from optimizer.circulation import Way
from optimizer.grading.earthwork import Numbers, corners_of, earth_under, mean_of_cells
from optimizer.grading.edges import strips_of
from optimizer.grading.falls import falls_of
from optimizer.grading.flights import flights_of
from optimizer.grading.grading import Grading
from optimizer.grading.levels import room_levels
from optimizer.grading.paved import Paved, paved_rooms
from optimizer.grading.walls import guards_along, walls_along
from optimizer.layout import Placed
from optimizer.site import Site


def grade(site: Site, placed: Placed, ways: Sequence[Way] = ()) -> Grading:
    """Levels of the paved rooms of a layout, and the steps, walls, guards, earth and falls that they ask for.

    Earth is counted to the level itself, without the thickness of the paving.
    """
    paved = paved_rooms(site, placed)
    ground = _ground_under(paved)
    is_known = paved.ground.is_known
    balanced = [mean_of_cells(z) for z in ground]
    levels = room_levels(paved, balanced) if is_known else (0.0,) * len(balanced)
    strips = strips_of(paved, levels)
    flights = flights_of(paved, levels, ways)
    return Grading(
        is_known=is_known,
        levels_ft=tuple((room.name, level) for room, level in zip(paved.rooms, levels, strict=True)),
        flights=flights,
        walls=tuple(walls_along(paved, strips, levels, flights)),
        guards=tuple(guards_along(paved, strips, levels, flights)),
        earth=tuple(
            earth_under(room.placement, z, level) for room, z, level in zip(paved.rooms, ground, levels, strict=True)
        ),
        falls=falls_of(paved, levels, strips),
    )


def _ground_under(paved: Paved) -> list[Numbers]:
    """Ground at the corners of each room's grid, asked for all at once: one call costs as much as a thousand points."""
    corners = [corners_of(room.placement) for room in paved.rooms]
    if not corners:
        return []
    z = paved.ground.z_ft(np.concatenate([grid.reshape(-1, 2) for grid in corners]))
    first = np.cumsum([0, *(grid.shape[0] * grid.shape[1] for grid in corners)])
    return [z[a:b].reshape(grid.shape[:2]) for grid, (a, b) in zip(corners, pairwise(first), strict=True)]
