"""Hours of direct sun under a clear sky at points of the plan, each at the height of its own ground.

Buildings, surroundings, fences, kept structures and trees throw shadows; the ground itself throws none.
"""

import math
from collections.abc import Iterator
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from optimizer.brief import RoomShape, SunWish
from optimizer.fields.ground import ground_of
from optimizer.fields.sun.casters import Caster, casters_of
from optimizer.fields.sun.position import LOWEST_ALTITUDE_DEG, sun_directions
from optimizer.fields.sun.rays import Sky, lit_shares, sky_of
from optimizer.site import Site

Numbers = NDArray[np.float64]


def sun_hours(site: Site, points: Numbers, wish: SunWish, *, extra: tuple[Caster, ...] = ()) -> Numbers:
    """Mean hours of direct sun a day in the wish's window, over the 21st of its months.

    Parameters
    ----------
    points
        Plan coordinates [ft], shape (n, 2).
    extra
        What throws a shadow beside the site's own things, such as a new roof.

    Returns
    -------
    Hours [h], shape (n,), from 0 to the window's length.
    """
    z_ft = ground_of(site).z_ft(points)
    moments = skies(site, wish)
    lit = lit_shares([sky for _, sky in moments], points, z_ft)
    if extra:
        roofed = [sky_of(extra, altitude_deg=sky.altitude_deg, plan_deg=sky.plan_deg) for _, sky in moments]
        lit *= lit_shares(roofed, points, z_ft)
    hours = np.zeros(len(points))
    for (step_h, _), reaching in zip(moments, lit, strict=True):
        hours += step_h * reaching
    return hours / len(wish.months)


def room_sun_hours(
    site: Site,
    wish: SunWish,
    *,
    low: tuple[float, float],
    high: tuple[float, float],
    shape: RoomShape = "rectangle",
    extra: tuple[Caster, ...] = (),
) -> float:
    """Mean hours of direct sun over a rectangle of the plan, or a square's circle, sampled about every foot [h]."""
    counts = [max(1, round(high[axis] - low[axis])) for axis in (0, 1)]
    axes = [low[a] + (high[a] - low[a]) * (np.arange(counts[a]) + 0.5) / counts[a] for a in (0, 1)]
    points = _crossed(*axes)
    if shape == "circle":
        away = points - (np.array(low) + np.array(high)) / 2
        points = points[np.hypot(away[:, 0], away[:, 1]) <= (high[0] - low[0]) / 2]
    return float(sun_hours(site, points, wish, extra=extra).mean())


def sun_grid(
    site: Site, wish: SunWish, step_ft: float, *, extra: tuple[Caster, ...] = ()
) -> tuple[Numbers, Numbers, Numbers]:
    """Hours of direct sun in the middles of square cells over the boundary's box.

    Returns
    -------
    x of the columns (n,) and y of the rows (m,) [ft], and mean hours a day (m, n), as `sun_hours` gives them.
    """
    corners = np.array(site.boundary)
    low, high = corners.min(axis=0), corners.max(axis=0)
    counts = [math.ceil((high[axis] - low[axis]) / step_ft - 1e-9) for axis in (0, 1)]
    xs, ys = (low[axis] + step_ft * (np.arange(counts[axis]) + 0.5) for axis in (0, 1))
    hours = sun_hours(site, _crossed(xs, ys), wish, extra=extra)
    return xs, ys, hours.reshape(len(ys), len(xs))


def _crossed(xs: Numbers, ys: Numbers) -> Numbers:
    """All points of a lattice, (n, 2), row by row."""
    return np.stack([axis.ravel() for axis in np.meshgrid(xs, ys)], axis=1)


@lru_cache(maxsize=32)
def skies(site: Site, wish: SunWish) -> tuple[tuple[float, Sky], ...]:
    """Every moment with the sun up: the hours it stands for, and what the site's things hold back of it."""
    return tuple(_each_sky(site, wish))


def _each_sky(site: Site, wish: SunWish) -> Iterator[tuple[float, Sky]]:
    directions = sun_directions(site.place, wish)
    a_day = len(directions) // len(wish.months)
    for k, (altitude_deg, plan_deg, step_h) in enumerate(directions):
        if altitude_deg > LOWEST_ALTITUDE_DEG:
            casters = casters_of(site, wish.months[k // a_day])
            yield step_h, sky_of(casters, altitude_deg=altitude_deg, plan_deg=plan_deg)
