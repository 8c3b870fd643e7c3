"""A crown before the sun: a ball drawn out upright, exactly.

A ray leaves (u, v), u across and v towards the sun, and rises by tan(altitude) a foot. Heights over tan(altitude) make
it rise by 1, and where it meets the ball is the root of a square.
"""

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.fields.sun.casters import Ball
from optimizer.fields.sun.prisms import Reach

Numbers = NDArray[np.float64]
_RIM: Final = 32  # points of a drawn rim; the area between them is under 1 % of the shadow's


@dataclass(frozen=True, slots=True, eq=False)
class BallSeen:
    """Middle (u, v) and radius [ft], and middle's height and half the height over tan(altitude) [ft]."""

    u: float
    v: float
    radius: float
    middle_run: float
    half_run: float

    def may_hold(self, reach: Reach) -> bool:
        """Whether the ray of any point within reach may meet it; where not, none does."""
        is_beside = reach.u_high < self.u - self.radius or reach.u_low > self.u + self.radius
        return not (is_beside or reach.v_low > self.v + self.radius)

    def held(self, u: Numbers, v: Numbers, foot: Numbers) -> NDArray[np.intp]:
        """Indices of the points whose ray meets it; `foot` is the v where each ray would leave height 0."""
        maybe = np.flatnonzero(np.abs(u - self.u) <= self.radius)
        across, along = (u[maybe] - self.u) / self.radius, (v[maybe] - self.v) / self.radius
        up = (v[maybe] - foot[maybe] - self.middle_run) / self.half_run
        square = self.radius**-2 + self.half_run**-2
        half = along / self.radius + up / self.half_run
        rest = half**2 - square * (across**2 + along**2 + up**2 - 1)
        # The ray leaves the ball ahead of the point, not behind it.
        return np.asarray(maybe[(rest >= 0) & (np.sqrt(np.maximum(rest, 0)) >= half)])


def ball_seen(ball: Ball, turn: Numbers, reach: float) -> BallSeen:
    """The ball as a sun sees it: `turn` takes (x, y) to (u, v), `reach` is 1 / tan(altitude)."""
    u, v = np.array(ball.at) @ turn
    middle_ft, half_ft = (ball.high_ft + ball.low_ft) / 2, (ball.high_ft - ball.low_ft) / 2
    return BallSeen(float(u), float(v), ball.radius_ft, middle_ft * reach, half_ft * reach)


def rim(ball: Ball, turn: Numbers, rise: float) -> tuple[Numbers, Numbers]:
    """Plan points (k, 2) and heights (k,) [ft] of the rim between a ball's lit and its dark half."""
    half_ft = (ball.high_ft - ball.low_ft) / 2
    flat, steep = np.array([1 / ball.radius_ft, rise / half_ft]) / math.hypot(1 / ball.radius_ft, rise / half_ft)
    angles = np.linspace(0, 2 * np.pi, _RIM, endpoint=False)
    seen = ball.radius_ft * np.stack([np.cos(angles), -steep * np.sin(angles)], axis=1)
    return np.array(ball.at) + seen @ turn.T, (ball.high_ft + ball.low_ft) / 2 + half_ft * flat * np.sin(angles)
