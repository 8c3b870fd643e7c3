"""A convex upright prism before the sun, exactly, whatever the height of the ground under each point.

Seen along the sun's bearing, with u across and v towards the sun, it lies between a near and a far chain of edges, v
over u. From a point at (u, v) and height z the ray rises by tan(altitude) a foot, so it is held back when it is above
the prism, near(u) to far(u), while it is between the prism's foot and top.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]


class Reach(NamedTuple):
    """Least and greatest u of some points, their least v, and the greatest v where a ray would leave height 0 [ft]."""

    u_low: float
    u_high: float
    v_low: float
    foot_high: float


@dataclass(frozen=True, slots=True, eq=False)
class PrismSeen:
    """Chains of (u, v), (k, 2) [ft], with the foot's and the top's height over tan(altitude) [ft]."""

    near: Numbers
    far: Numbers
    low_run: float
    high_run: float
    u_range: tuple[float, float]
    v_range: tuple[float, float]

    def may_hold(self, reach: Reach) -> bool:
        """Whether the ray of any point within reach may meet it; where not, none does."""
        is_beside = reach.u_high < self.u_range[0] or reach.u_low > self.u_range[1]
        return not (is_beside or reach.v_low > self.v_range[1] or reach.foot_high + self.high_run < self.v_range[0])

    def held(self, u: Numbers, v: Numbers, foot: Numbers) -> NDArray[np.intp]:
        """Indices of the points whose ray meets it; `foot` is the v where each ray would leave height 0."""
        maybe = np.flatnonzero((u >= self.u_range[0]) & (u <= self.u_range[1]))
        if not len(maybe):
            return maybe
        v, end = v[maybe], foot[maybe] + self.high_run
        start = np.maximum(v, foot[maybe] + self.low_run)
        beside = (end >= np.maximum(v, self.v_range[0])) & (start <= self.v_range[1])
        maybe, start, end = maybe[beside], start[beside], end[beside]
        near, far = (np.interp(u[maybe], chain[:, 0], chain[:, 1]) for chain in (self.near, self.far))
        return np.asarray(maybe[(near <= end) & (far >= start)])


def prism_seen(corners: Numbers, *, low_run: float, high_run: float) -> PrismSeen:
    """From a counter-clockwise ring of (u, v): the near chain runs from its least u to its greatest."""
    ring = np.roll(corners, -int(corners[:, 0].argmin()), axis=0)
    last = int(ring[:, 0].argmax())
    far = np.concatenate([ring[last:], ring[:1]])[::-1]
    (u0, v0), (u1, v1) = ring.min(axis=0), ring.max(axis=0)
    return PrismSeen(ring[: last + 1], far, low_run, high_run, (u0, u1), (v0, v1))
