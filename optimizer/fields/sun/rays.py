"""Which points a ray of sun reaches, each at its own height, past everything that stands before the sun."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from optimizer.fields.sun.balls import BallSeen, ball_seen
from optimizer.fields.sun.casters import Ball, Caster
from optimizer.fields.sun.convex import convex_pieces
from optimizer.fields.sun.prisms import PrismSeen, Reach, prism_seen

Numbers = NDArray[np.float64]
Seen = PrismSeen | BallSeen


@dataclass(frozen=True, slots=True, eq=False)
class Sky:
    """The sun at one moment and what stands before it: pieces of each caster, and its share held back."""

    altitude_deg: float
    plan_deg: float
    blocks: tuple[tuple[tuple[Seen, ...], float], ...]


def sky_of(casters: tuple[Caster | Ball, ...], *, altitude_deg: float, plan_deg: float) -> Sky:
    """The casters as a sun above the horizon sees them; `plan_deg` is its bearing clockwise from the plan's +y."""
    reach, turn = 1.0 / math.tan(math.radians(altitude_deg)), turn_of(plan_deg)
    return Sky(altitude_deg, plan_deg, tuple((_seen(caster, turn, reach), caster.share) for caster in casters))


def lit_share(sky: Sky, points: Numbers, z_ft: Numbers) -> Numbers:
    """Share of the direct sun, 0 to 1, (n,), that reaches points (n, 2) [ft] at heights (n,) [ft]."""
    (lit,) = lit_shares((sky,), points, z_ft)
    return np.asarray(lit)


def lit_shares(skies: Sequence[Sky], points: Numbers, z_ft: Numbers) -> Numbers:
    """The same at each of some moments, (m, n)."""
    lit = np.ones((len(skies), len(points)))
    if not lit.size:
        return lit
    u, v = np.ascontiguousarray(np.moveaxis(points @ np.array([turn_of(sky.plan_deg) for sky in skies]), 2, 0))
    foot = v - z_ft / np.array([[math.tan(math.radians(sky.altitude_deg))] for sky in skies])
    reaches = map(
        Reach, u.min(axis=1).tolist(), u.max(axis=1).tolist(), v.min(axis=1).tolist(), foot.max(axis=1).tolist()
    )
    for moment, (sky, reach) in enumerate(zip(skies, reaches, strict=True)):
        _hold_back(sky, reach, (u[moment], v[moment], foot[moment]), lit[moment])
    return lit


def _hold_back(sky: Sky, reach: Reach, rays: tuple[Numbers, Numbers, Numbers], lit: Numbers) -> None:
    """Take off what each caster of a sky holds back of the rays from points (u, v) and their feet."""
    for pieces, share in sky.blocks:
        held = [piece.held(*rays) for piece in pieces if piece.may_hold(reach)]
        if not held:
            continue
        # A point behind two pieces of one caster is held back once: numpy multiplies a repeated index once.
        lit[np.concatenate(held)] *= 1.0 - share


def turn_of(plan_deg: float) -> Numbers:
    """Matrix that takes rows (x, y) to (u, v): u across the sun's bearing, v towards the sun."""
    cos, sin = math.cos(math.radians(plan_deg)), math.sin(math.radians(plan_deg))
    return np.array([(cos, sin), (-sin, cos)])


def _seen(caster: Caster | Ball, turn: Numbers, reach: float) -> tuple[Seen, ...]:
    if isinstance(caster, Ball):
        return (ball_seen(caster, turn, reach),)
    low_run, high_run = caster.low_ft * reach, caster.high_ft * reach
    pieces = convex_pieces(caster.outline)
    return tuple(prism_seen(corners @ turn, low_run=low_run, high_run=high_run) for corners in pieces)
