"""How far one walks from a door to the front of a room that stands alone in the yard, and in the way itself."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.circulation.ground import walkable_ground
from optimizer.circulation.stops import GATE_FT
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.crossed import shares_inside
from optimizer.engine.grid.lattice import Cells, Lattice
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.walked import SLACK_FT, walked_ft
from optimizer.layout import FRONT_VECTORS, Layout, Placed
from optimizer.site import Point

Lengths = NDArray[np.float64]
_OUTWARD_FT: Final = 4.0
"""So far from a point it is asked whether the way to it comes from there."""
_GRAZING_FT: Final = 1.0
"""A way that runs along the room is hardly longer to there."""


@dataclass(frozen=True, slots=True, eq=False)
class _Room:
    """A variant at every lower left corner, seen from its middle: `ahead` over its front and `aside`, in half steps.

    Half its depth and half its width reach `kept` beyond its edge, as far as a way keeps from it.
    """

    lattice: Lattice
    middle_x: Lengths
    middle_y: Lengths
    ahead: tuple[int, int]
    half_depth: int
    half_width: int
    kept: int

    def x_y_ft(self, ahead: Lengths | float, aside: Lengths | float) -> tuple[Lengths, Lengths]:
        """Where a point lies [ft]."""
        (over_x, over_y), half_ft = self.ahead, self.lattice.step_ft / 2
        x = self.middle_x + ahead * over_x - aside * over_y
        y = self.middle_y + ahead * over_y + aside * over_x
        return self.lattice.x0_ft + half_ft * x, self.lattice.y0_ft + half_ft * y

    def seen(self, at: Point) -> tuple[Lengths, Lengths]:
        """How far a point [ft] lies ahead and aside."""
        half_ft = self.lattice.step_ft / 2
        x = (at[0] - self.lattice.x0_ft) / half_ft - self.middle_x
        y = (at[1] - self.lattice.y0_ft) / half_ft - self.middle_y
        return x * self.ahead[0] + y * self.ahead[1], y * self.ahead[0] - x * self.ahead[1]


def is_far_round(context: Context, at: Point, variant: Variant, most_ft: float) -> Cells:
    """Lower left corners from which a posed point is likely farther off on foot, while no other room is there."""
    return np.asarray(walked_round_ft(context, at, variant, within_ft=most_ft) - SLACK_FT > most_ft)


def walked_round_ft(context: Context, at: Point, variant: Variant, *, within_ft: float = np.inf) -> Lengths:
    """Length of the way from a posed point to the front of a room at every lower left corner, round the room itself.

    In feet; infinite where nobody can step in, and where the room lies farther off than `within_ft`. A guess: to the
    front, or by corners of the room, while it is alone.
    """
    lattice = context.lattice
    found = np.full((lattice.rows, lattice.columns), np.inf)
    reach, step_ft = within_ft / lattice.step_ft, lattice.step_ft
    rows = _near(lattice.rows, variant.depth, (at[1] - lattice.y0_ft) / step_ft, reach)
    columns = _near(lattice.columns, variant.width, (at[0] - lattice.x0_ft) / step_ft, reach)
    walk = _Walk(context, at, _room(lattice, variant, rows, columns))
    found[rows[:, None], columns] = _round_ft(walk)
    return found


def _near(count: int, size: int, at: float, reach: float) -> NDArray[np.int64]:
    """Corners along an axis at which a room of so many steps lies within so many of a point."""
    corners = np.arange(count)
    return corners[(corners + size >= at - reach) & (corners <= at + reach)]


def _round_ft(walk: "_Walk") -> Lengths:
    room, half_ft = walk.room, walk.context.lattice.step_ft / 2
    gate, is_open = _gate(room, walk.clear)
    ways = [walk.straight_ft(room.half_depth, gate, ((1, 0),))]
    for side in (-1, 1):
        aside = side * room.half_width
        behind = walk.straight_ft(-room.half_depth, aside, ((-1, 0), (0, side))) + 2 * room.half_depth * half_ft
        corner = np.minimum(walk.straight_ft(room.half_depth, aside, ((1, 0), (0, side))), behind)
        corner = np.where(walk.holds(room.half_depth, aside), corner, np.inf)
        ways.append(corner + np.abs(gate - aside) * half_ft)
    return np.where(is_open, np.minimum.reduce(ways) + GATE_FT, np.inf)


@dataclass(frozen=True, slots=True, eq=False)
class _Walk:
    """Ways from a posed point to points beside a room. Points are given ahead and aside of its middle."""

    context: Context
    at: Point
    room: _Room

    @property
    def clear(self) -> Cells:
        """Where the middle of a way may run while no room is there."""
        return _clear(self.context)

    def holds(self, ahead: float, aside: Lengths | float) -> Cells:
        """Whether a way may run there."""
        return _holds(self.context.lattice, self.clear, *self.room.x_y_ft(ahead, aside))

    def straight_ft(self, ahead: float, aside: Lengths | float, outward: tuple[tuple[int, int], ...]) -> Lengths:
        """Length of a way that does not lead through the room [ft], infinite where the shortest does: neither free and
        straight past the room, nor from one of the directions that lead away from it.
        """
        length_ft = self._walked_ft(ahead, aside)
        off = round(2 * _OUTWARD_FT / self.context.lattice.step_ft)
        comes = [self._walked_ft(ahead + off * x, aside + off * y) <= length_ft + _GRAZING_FT for x, y in outward]
        free = self._is_free(length_ft, ahead, aside) & ~_crosses(self.room, self.room.seen(self.at), ahead, aside)
        return np.where(self.holds(ahead, aside) & np.logical_or.reduce([free, *comes]), length_ft, np.inf)

    def _walked_ft(self, ahead: float, aside: Lengths | float) -> Lengths:
        return walked_ft(self.context, self.at, *self.room.x_y_ft(ahead, aside))

    def _is_free(self, length_ft: Lengths, ahead: float, aside: Lengths | float) -> Cells:
        """Whether nothing of the site is walked round, in steps of 45 degrees."""
        x, y = self.room.x_y_ft(ahead, aside)
        over_x, over_y = np.abs(x - self.at[0]), np.abs(y - self.at[1])
        least_ft = np.maximum(over_x, over_y) + (2**0.5 - 1) * np.minimum(over_x, over_y)
        return np.asarray(length_ft <= least_ft + SLACK_FT)


def _room(lattice: Lattice, variant: Variant, rows: NDArray[np.int64], columns: NDArray[np.int64]) -> _Room:
    assert variant.front is not None
    x, y = np.meshgrid(2.0 * columns, 2.0 * rows)
    ahead, kept = FRONT_VECTORS[variant.front], _kept(lattice)
    depth, width = (variant.width, variant.depth) if ahead[0] else (variant.depth, variant.width)
    return _Room(lattice, x + variant.width, y + variant.depth, ahead, depth + kept, width + kept, kept)


def _kept(lattice: Lattice) -> int:
    """How far a way keeps from what it passes, in half steps."""
    return max(1, round(2 * GATE_FT / lattice.step_ft))


@lru_cache(maxsize=4)
def _clear(context: Context) -> Cells:
    """Whether the middle of a way may lie at each half step, shape (2 rows + 1, 2 columns + 1)."""
    lattice, half_ft = context.lattice, context.lattice.step_ft / 2
    ground = walkable_ground(context.site, Placed((), Layout(()), ()))
    shapely.prepare(ground)
    x, y = np.meshgrid(
        lattice.x0_ft + half_ft * np.arange(2 * lattice.columns + 1),
        lattice.y0_ft + half_ft * np.arange(2 * lattice.rows + 1),
    )
    return np.asarray(shapely.intersects_xy(ground, x, y))


def _holds(lattice: Lattice, clear: Cells, x: Lengths, y: Lengths) -> Cells:
    """Whether points lie where a way may run."""
    half_ft = lattice.step_ft / 2
    column, row = (
        np.rint((ft - start) / half_ft).astype(np.int64) for ft, start in ((x, lattice.x0_ft), (y, lattice.y0_ft))
    )
    rows, columns = clear.shape
    inside = (row >= 0) & (row < rows) & (column >= 0) & (column < columns)
    return np.asarray(inside & clear[np.clip(row, 0, rows - 1), np.clip(column, 0, columns - 1)])


def _gate(room: _Room, clear: Cells) -> tuple[Lengths, Cells]:
    """Where one steps in, aside from the front's middle: in the middle of its longest clear stretch; and whether."""
    reach = max(0, room.half_width - 2 * room.kept)
    run, longest, gate = (np.zeros(room.middle_x.shape) for _ in range(3))
    for aside in range(-reach, reach + 1):
        run = np.where(_holds(room.lattice, clear, *room.x_y_ft(room.half_depth, aside)), run + 1, 0)
        gate = np.where(run > longest, aside - (run - 1) / 2, gate)
        longest = np.maximum(run, longest)
    return gate, longest > 0


def _crosses(room: _Room, start: tuple[Lengths, Lengths], ahead: Lengths | float, aside: Lengths | float) -> Cells:
    """Whether the straight line to a point leads through the room, beyond its edge."""
    enters, leaves = np.zeros(room.middle_x.shape), np.ones(room.middle_x.shape)
    deep, wide = (half - room.kept - 0.5 for half in (room.half_depth, room.half_width))
    for begin, end, half in ((start[0], ahead, deep), (start[1], aside, wide)):
        near, far = shares_inside(-half, half, begin, end)
        enters, leaves = np.maximum(enters, near), np.minimum(leaves, far)
    return np.asarray(enters < leaves)
