"""Hours of direct sun at points of the plan, on level ground at the foot of the buildings.

The sun's place comes from pvlib's implementation of the NREL solar position algorithm (Reda and Andreas, 2004,
doi:10.1016/j.solener.2003.12.003), refraction included. Shadows are cast by buildings, surroundings, fences, kept
structures and tree crowns; the slope of the ground is not counted yet.
"""

import itertools
import math
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Geometry, Point, Polygon

from optimizer.brief import SunWish
from optimizer.site import Place, Site

STEP_MIN = 30
YEAR = 2026
DAY_OF_MONTH = 21
LOWEST_ALTITUDE_DEG = 2.0
LEAFY_CROWN = 0.8
"""Share of the sun that a crown in leaf holds back; common practice, no source."""
CROWN_BASE = 0.3
"""Height of a crown's foot as a share of the tree's height; common practice, no source."""
DEFAULT_HEIGHT_FT = {"building": 20.0, "structure": 9.0, "tree": 25.0, "fence": 6.0}


@dataclass(frozen=True, slots=True)
class Caster:
    """Something that throws a shadow: its outline from `low_ft` to `high_ft`, holding back a share of the sun."""

    outline: Geometry
    low_ft: float
    high_ft: float
    share: float


def sun_hours(site: Site, points: NDArray[np.float64], wish: SunWish) -> NDArray[np.float64]:
    """Mean hours of direct sun a day in the wish's window, over the 21st of its months.

    Parameters
    ----------
    points
        Plan coordinates [ft], shape (n, 2).

    Returns
    -------
    Hours [h], shape (n,), from 0 to the window's length.
    """
    hours = np.zeros(len(points))
    for step_h, shades in _skies(site, wish):
        hours += step_h * lit_share(shades, points)
    return hours / len(wish.months)


Shade = tuple[Geometry, float]
"""A shadow on the ground, and the share of the sun that it holds back."""


@lru_cache(maxsize=32)
def _skies(site: Site, wish: SunWish) -> tuple[tuple[float, tuple[Shade, ...]], ...]:
    """Every moment with the sun up: the hours it stands for, and the shadows of everything at it."""
    casters = casters_of(site)
    return tuple(
        (step_h, shades_of(casters, altitude_deg=altitude_deg, plan_deg=plan_deg))
        for altitude_deg, plan_deg, step_h in sun_directions(site.place, wish)
        if altitude_deg > LOWEST_ALTITUDE_DEG
    )


def sun_directions(place: Place, wish: SunWish) -> tuple[tuple[float, float, float], ...]:
    """(altitude [deg], bearing from the plan's +y clockwise [deg], hours that it stands for) at each moment."""
    import pandas as pd  # noqa: PLC0415 - with pvlib it takes a second to import, which `check` need not pay
    from pvlib import solarposition  # noqa: PLC0415

    moments = _moments(place, wish)
    index = pd.DatetimeIndex([moment for moment, _ in moments])
    sun = solarposition.spa_python(index, place.latitude, place.longitude)
    bearings = sun["azimuth"].to_numpy() - place.plan_up_bearing_deg
    altitudes = 90.0 - sun["apparent_zenith"].to_numpy()
    return tuple((float(a), float(b), step_h) for a, b, (_, step_h) in zip(altitudes, bearings, moments, strict=True))


def casters_of(site: Site) -> tuple[Caster, ...]:
    """Everything on and around the site that throws a shadow."""
    solid = [Caster(Polygon(b.outline), 0.0, b.height_ft or DEFAULT_HEIGHT_FT["building"], 1.0) for b in site.buildings]
    for structure in site.structures:
        roof_ft = structure.height_ft or DEFAULT_HEIGHT_FT["structure"]
        solid.append(Caster(Polygon(structure.outline), roof_ft, roof_ft, structure.shade))
    for tree in site.trees:
        height_ft = tree.height_ft or DEFAULT_HEIGHT_FT["tree"]
        crown = Point(tree.at).buffer(tree.canopy_radius_ft, quad_segs=4)
        solid.append(Caster(crown, CROWN_BASE * height_ft, height_ft, LEAFY_CROWN))
    for thing in site.surroundings:
        if thing.outline is not None:
            solid.append(Caster(Polygon(thing.outline), 0.0, thing.height_ft or DEFAULT_HEIGHT_FT["building"], 1.0))
        elif thing.line is not None:
            fence = shapely.LineString(thing.line)
            solid.append(Caster(fence, 0.0, thing.height_ft or DEFAULT_HEIGHT_FT["fence"], 1.0))
    return tuple(solid)


def shades_of(casters: tuple[Caster, ...], *, altitude_deg: float, plan_deg: float) -> tuple[Shade, ...]:
    """Shadows of all casters under a sun at this altitude and this bearing from the plan's +y."""
    reach = 1.0 / math.tan(math.radians(altitude_deg))
    away = (-math.sin(math.radians(plan_deg)) * reach, -math.cos(math.radians(plan_deg)) * reach)
    shades = tuple((shadow(caster, away), caster.share) for caster in casters)
    for shade, _ in shades:
        shapely.prepare(shade)
    return shades


def lit_share(shades: tuple[Shade, ...], points: NDArray[np.float64]) -> NDArray[np.float64]:
    """Share of the direct sun that reaches each point, 0 to 1, shape (n,)."""
    lit = np.ones(len(points))
    for shade, share in shades:
        lit *= np.where(shapely.contains_xy(shade, points[:, 0], points[:, 1]), 1.0 - share, 1.0)
    return lit


def shadow(caster: Caster, away: tuple[float, float]) -> Geometry:
    """Shadow on level ground; `away` is the shift of a shadow for each foot of height [ft/ft]."""
    low = shapely.transform(caster.outline, lambda xy: xy + np.array(away) * caster.low_ft)
    rise_ft = caster.high_ft - caster.low_ft
    if rise_ft == 0:
        return low
    step = np.array(away) * rise_ft
    lines = shapely.get_coordinates(low.exterior if isinstance(low, Polygon) else low)
    swept = [Polygon([start, end, end + step, start + step]).buffer(0) for start, end in itertools.pairwise(lines)]
    ends = [low, shapely.transform(low, lambda xy: xy + step)] if isinstance(low, Polygon) else []
    return shapely.union_all([*swept, *ends])


def _moments(place: Place, wish: SunWish) -> list[tuple[datetime, float]]:
    """Middles of equal steps through the window, on the 21st of each month, in local clock time."""
    zone = ZoneInfo(place.time_zone)
    span_h = wish.to_h - wish.from_h
    count = max(1, round(span_h * 60 / STEP_MIN))
    step_h = span_h / count
    return [
        (datetime(YEAR, month, DAY_OF_MONTH, tzinfo=zone) + timedelta(hours=wish.from_h + (k + 0.5) * step_h), step_h)
        for month in wish.months
        for k in range(count)
    ]


def room_sun_hours(site: Site, wish: SunWish, *, low: tuple[float, float], high: tuple[float, float]) -> float:
    """Mean hours of direct sun over a rectangle of the plan, sampled about every foot [h]."""
    counts = [max(1, round(high[axis] - low[axis])) for axis in (0, 1)]
    axes = [low[a] + (high[a] - low[a]) * (np.arange(counts[a]) + 0.5) / counts[a] for a in (0, 1)]
    points = np.stack([grid.ravel() for grid in np.meshgrid(*axes)], axis=1)
    return float(sun_hours(site, points, wish).mean())
