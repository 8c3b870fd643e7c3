"""Ground on which a clear way may run, in cells: the quick form of what the judge measures exactly."""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from shapely import Point, Polygon
from shapely.ops import substring

from optimizer.circulation import CLEAR_WIDTH_FT
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.crossed import crossed
from optimizer.engine.grid.lattice import Cells, any_in_window
from optimizer.engine.grid.raster import covered, within
from optimizer.fields.site_walls import walls_for_feet

STANDING_FT = 2.0
ENTRANCE_PLAY_FT = 0.25
"""How far beyond half its width a way may pass beside the standing point: the judge lets its middle be 2.5 ft off in
any direction, which is 1.75 ft along both axes."""
TRUNK_FT = 1.0
STRAIGHT_FT = 1e-6


@dataclass(frozen=True)
class ReachGrid:
    """`ways` are the lower left cells of the squares, `width` cells wide, that bear a way where no room stands.

    Stops are the cell ranges (first row, last row, first column, last column) in which a way's lower left cell reaches
    a door or entrance.
    """

    ways: Cells
    width: int
    stops: tuple[tuple[int, int, int, int], ...]


def reach_grid(context: Context) -> ReachGrid:
    """Cells of the yard that bear a way, and the doors and entrances that trips name."""
    lattice = context.lattice
    width = lattice.need(CLEAR_WIDTH_FT)
    ways = ~any_in_window(~_free(context), width=width, depth=width) & ~_through_walls(context, width)
    return ReachGrid(ways, width, tuple(_stop(context, at, play, width) for at, play in _stops(context)))


def _free(context: Context) -> Cells:
    outside = ~covered(context.lattice, context.boundary)
    taken = [covered(context.lattice, building) for building in context.buildings]
    taken += [within(context.lattice, Point(tree.at), TRUNK_FT) for tree in context.site.trees]
    taken += [
        covered(context.lattice, Polygon(area.outline)) for area in context.site.keep_outs if "path" not in area.allow
    ]
    return np.asarray(~np.logical_or.reduce([outside, *taken]))


def _through_walls(context: Context, width: int) -> Cells:
    """Lower left cells of squares through which a wall along an axis runs that nobody walks through.

    Walls end a step early, so that an opening off the grid bears a way here that it bears in the yard.
    """
    lattice = context.lattice
    through = np.zeros((lattice.rows, lattice.columns), dtype=bool)
    for part in walls_for_feet(context.site):
        short = substring(part, lattice.step_ft, max(lattice.step_ft, part.length - lattice.step_ft))
        for start, end in pairwise(short.coords):
            if min(abs(end[0] - start[0]), abs(end[1] - start[1])) < STRAIGHT_FT:
                through |= crossed(lattice, start, end, width=width, depth=width)
    return through


def _stops(context: Context) -> list[tuple[tuple[float, float], float]]:
    named = {end for trip in context.scenario.brief.trips for end in (trip.start, trip.end)}
    doors = [
        ((d.at[0] + STANDING_FT * d.outward[0], d.at[1] + STANDING_FT * d.outward[1]), 0.0)
        for d in context.site.doors
        if d.name in named
    ]
    entrances = [
        ((e.at[0] + STANDING_FT * e.inward[0], e.at[1] + STANDING_FT * e.inward[1]), ENTRANCE_PLAY_FT)
        for e in context.site.entrances
        if e.name in named
    ]
    return doors + entrances


def _stop(context: Context, at: tuple[float, float], play_ft: float, width: int) -> tuple[int, int, int, int]:
    lattice = context.lattice
    row, column = (at[1] - lattice.y0_ft) / lattice.step_ft, (at[0] - lattice.x0_ft) / lattice.step_ft
    play = play_ft / lattice.step_ft
    rows = int(np.ceil(row - play)) - width, int(np.floor(row + play))
    columns = int(np.ceil(column - play)) - width, int(np.floor(column + play))
    return max(0, rows[0]), max(0, rows[1]), max(0, columns[0]), max(0, columns[1])
