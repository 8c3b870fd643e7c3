"""Two rooms seen from each other: the gaps between them at every offset of a window."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.layout.placement import FRONT_VECTORS

Steps = NDArray[np.int64]


@dataclass(frozen=True, eq=False)
class Gaps:
    """A first and a second room in some variant of each, at offsets of the first's corner from the second's.

    `right` and `up` are offsets in steps along x and y; what is asked has the shape (len(up), len(right)).
    """

    first: Variant
    second: Variant
    right: Steps
    up: Steps
    step_ft: float

    @cached_property
    def x(self) -> Steps:
        """Free steps between the rooms along x; below 0 where their x ranges overlap."""
        return np.asarray(np.maximum(-self.right - self.first.width, self.right - self.second.width))

    @cached_property
    def y(self) -> Steps:
        """Free steps between the rooms along y; below 0 where their y ranges overlap."""
        return np.asarray(np.maximum(-self.up - self.first.depth, self.up - self.second.depth))

    @property
    def inset(self) -> int:
        """Half steps between the edges of the two squares and what their distance is measured between, together: 0 for
        rectangles, else the radii, which are taken off again.
        """
        return self.first.inset + self.second.inset

    @cached_property
    def distance_ft(self) -> NDArray[np.float64]:
        """Straight distance, edge to edge [ft]."""
        half_ft = self.step_ft / 2
        x, y = (np.maximum(2 * free + self.inset, 0) * half_ft for free in (self.x, self.y))
        return np.asarray(np.maximum(np.hypot(x[None, :], y[:, None]) - self.inset * half_ft, 0.0))

    def variant(self, end: int) -> Variant:
        """Variant of the first room (0) or the second (1)."""
        return self.second if end else self.first

    def ahead(self, end: int) -> tuple[int, Steps] | None:
        """How far the other room lies beyond the open side of the room at an end: the axis it opens along, and the
        steps from that side to the other room's near side, at each offset along it; None for a room without a front.
        """
        front = self.variant(end).front
        if front is None:
            return None
        axis = 0 if front[1] == "x" else 1
        sense = FRONT_VECTORS[front][axis]
        offsets, own, other = self._along(axis, end)
        return axis, np.asarray(offsets - own if sense > 0 else -offsets - other)

    def middles_ahead(self, end: int) -> tuple[int, Steps] | None:
        """The same from middle to middle, in half steps."""
        front = self.variant(end).front
        if front is None:
            return None
        axis = 0 if front[1] == "x" else 1
        offsets, own, other = self._along(axis, end)
        return axis, np.asarray(FRONT_VECTORS[front][axis] * (2 * offsets + other - own))

    def touching(self, share: int, *, shut: tuple[int, ...] = ()) -> Cells:
        """Offsets at which the rooms share an edge of at least so many steps.

        Not where it is the open side of a room at an end that is `shut`.
        """
        overlap_x = np.minimum(self.right + self.first.width, self.second.width) - np.maximum(self.right, 0)
        overlap_y = np.minimum(self.up + self.first.depth, self.second.depth) - np.maximum(self.up, 0)
        result = np.zeros((len(self.up), len(self.right)), dtype=bool)
        for side, beside in self._sides().items():
            if not self._opens_on(side, shut):
                long_enough = (overlap_y if side[0] else overlap_x) >= share
                result |= np.outer(long_enough, beside) if side[0] else np.outer(beside, long_enough)
        return result

    def _sides(self) -> dict[tuple[int, int], Cells]:
        """Where the first room lies flush on each side of the second: offsets along the axis of that side."""
        return {
            (-1, 0): self.right == -self.first.width,
            (1, 0): self.right == self.second.width,
            (0, -1): self.up == -self.first.depth,
            (0, 1): self.up == self.second.depth,
        }

    def _opens_on(self, side: tuple[int, int], ends: tuple[int, ...]) -> bool:
        """Whether a room at one of the ends opens onto the other, the first lying on that side of the second."""
        towards = {0: (-side[0], -side[1]), 1: side}
        fronts = {end: self.variant(end).front for end in ends}
        return any(front is not None and FRONT_VECTORS[front] == towards[end] for end, front in fronts.items())

    def _along(self, axis: int, end: int) -> tuple[Steps, int, int]:
        """Offsets of the other room's corner from that of the room at an end; sizes of that room and the other."""
        offsets = -(self.right, self.up)[axis] if end == 0 else (self.right, self.up)[axis]
        sizes = [(variant.width, variant.depth)[axis] for variant in (self.first, self.second)]
        return offsets, sizes[end], sizes[1 - end]
