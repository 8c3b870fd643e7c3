"""Shadows as areas on the ground, for pictures of one moment."""

import math
from collections.abc import Callable
from datetime import datetime
from typing import Final
from zoneinfo import ZoneInfo

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry

from optimizer.fields.ground import ground_of
from optimizer.fields.sun.balls import rim
from optimizer.fields.sun.casters import Ball, Caster, casters_of
from optimizer.fields.sun.convex import convex_pieces
from optimizer.fields.sun.position import LOWEST_ALTITUDE_DEG, sun_at
from optimizer.fields.sun.rays import turn_of
from optimizer.site import Site

Shade = tuple[Geometry, float]
"""A shadow on the ground, and the share of the sun that it holds back."""
Numbers = NDArray[np.float64]
Heights = Callable[[Numbers], Numbers]
"""Heights of the ground (n,) at points (n, 2) [ft]."""
_HALVINGS: Final = 30  # a run of 10,000 ft is known to 1e-5 ft
_DOUBLINGS: Final = 12  # from there on the ground falls away as fast as the sun's ray


def level(points: Numbers) -> Numbers:
    """Level ground at the file's datum."""
    return np.zeros(len(points))


def shadows_at(site: Site, when: datetime, *, extra: tuple[Caster, ...] = ()) -> tuple[Shade, ...]:
    """Shadows on the site's ground; none while the sun is down. All that is solid makes one shadow, and comes first.

    A `when` without a time zone is read on the yard's own clock.
    """
    altitude_deg, plan_deg = sun_at(site.place, when)
    if altitude_deg <= LOWEST_ALTITUDE_DEG:
        return ()
    local = when.astimezone(ZoneInfo(site.place.time_zone)) if when.tzinfo else when
    casters = (*casters_of(site, local.month), *extra)
    ground = ground_of(site).z_ft if site.levels else level
    shades = shades_of(casters, altitude_deg=altitude_deg, plan_deg=plan_deg, ground=ground)
    solid = [shade for shade, share in shades if share >= 1]
    thin = tuple((shade, share) for shade, share in shades if share < 1)
    return ((shapely.union_all(solid), 1.0), *thin) if solid else thin


def shades_of(
    casters: tuple[Caster | Ball, ...], *, altitude_deg: float, plan_deg: float, ground: Heights = level
) -> tuple[Shade, ...]:
    """Shadow of each caster under a sun at this altitude and this bearing from the plan's +y."""
    rise, turn = math.tan(math.radians(altitude_deg)), turn_of(plan_deg)
    return tuple((_shadow(caster, turn, rise, ground), caster.share) for caster in casters)


def _shadow(caster: Caster | Ball, turn: Numbers, rise: float, ground: Heights) -> Geometry:
    """Each convex piece throws the hull of where the rays by its corners land; exact where the ground is a plane."""
    edges = [rim(caster, turn, rise)] if isinstance(caster, Ball) else _corners(caster)
    landed = (_landed(corners, z_ft, turn[:, 1], rise, ground) for corners, z_ft in edges)
    return shapely.union_all([shapely.convex_hull(shapely.multipoints(corners)) for corners in landed])


def _corners(caster: Caster) -> list[tuple[Numbers, Numbers]]:
    """Foot's and top's corners of each convex piece, (k, 2), and their heights (k,) [ft]."""
    pieces = convex_pieces(caster.outline)
    ends = np.array([caster.low_ft, caster.high_ft])
    return [(np.concatenate([piece, piece]), np.repeat(ends, len(piece))) for piece in pieces]


def _landed(corners: Numbers, z_ft: Numbers, towards: Numbers, rise: float, ground: Heights) -> Numbers:
    """Where the rays by corners (k, 2) at heights (k,) come to the ground, (k, 2)."""
    if ground is level:
        return corners - np.maximum(0.0, z_ft / rise)[:, None] * towards

    def above(run: Numbers) -> Numbers:
        return z_ft - rise * run - ground(corners - run[:, None] * towards)

    low = np.zeros(len(corners))
    high = np.maximum(above(low), 0.0) / rise
    for _ in range(_DOUBLINGS):
        high = np.where(above(high) > 0, 2 * high, high)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        flies = above(middle) > 0
        low, high = np.where(flies, middle, low), np.where(flies, high, middle)
    return corners - high[:, None] * towards
