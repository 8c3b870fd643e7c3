"""Hours of sun on level ground by another road than the program's: shadows swept as areas, points asked one by one."""

import itertools
import math

import numpy as np
import shapely
from shapely import Geometry, LineString, Point, Polygon

from optimizer.brief import SunWish
from optimizer.fields.sun import LOWEST_ALTITUDE_DEG, Ball, Caster, casters_of, sun_directions
from optimizer.site import Building, Place, Setbacks, Site, Structure, Surrounding, Tree

HOUSE = ((20.0, 30.0), (80.0, 30.0), (80.0, 56.0), (42.0, 56.0), (42.0, 64.0), (20.0, 64.0))


def box(x: float, y: float, width: float, depth: float) -> tuple[tuple[float, float], ...]:
    """Corners of a rectangle."""
    return ((x, y), (x + width, y), (x + width, y + depth), (x, y + depth))


def crowded_site(**changes: object) -> Site:
    """A yard of 100 x 120 ft with an L-shaped house and nine other things that throw shadows."""
    parts: dict[str, object] = {
        "place": Place(39.96, -82.99, "America/New_York", 25),
        "buildings": (Building("house", HOUSE, height_ft=21), Building("shed", box(5, 105, 10, 8), height_ft=9)),
        "structures": (Structure("roof", box(46, 66, 18, 16), height_ft=9.5, shade=0.7),),
        "trees": (
            Tree("a", (12, 95), 1.3, 14, height_ft=38),
            Tree("b", (70, 100), 1, 10, height_ft=30, evergreen=True),
            Tree("c", (90, 90), 1, 8),
        ),
        "surroundings": (
            Surrounding("east house", outline=box(112, 40, 28, 40), height_ft=24),
            Surrounding("west house", outline=box(-40, 40, 28, 40), height_ft=24),
            Surrounding("rear fence", line=((100, 120), (0, 120)), height_ft=6),
            Surrounding("east fence", line=((100, 0), (100, 120)), height_ft=6),
        ),
    }
    fixed = {"boundary": box(0, 0, 100, 120), "edge_names": ("street", "east", "rear", "west")}
    return Site(setbacks=(Setbacks(),) * 4, **{**fixed, **parts, **changes})  # type: ignore[arg-type]


def swept_hours(site: Site, points: np.ndarray, wish: SunWish) -> np.ndarray:
    """Mean hours of sun a day at points on level ground."""
    directions = sun_directions(site.place, wish)
    a_day = len(directions) // len(wish.months)
    hours = np.zeros(len(points))
    for k, (altitude_deg, plan_deg, step_h) in enumerate(directions):
        if altitude_deg > LOWEST_ALTITUDE_DEG:
            lit = np.full(len(points), step_h / len(wish.months))
            for caster in casters_of(site, wish.months[k // a_day]):
                area = swept_shadow(caster, altitude_deg, plan_deg)
                shapely.prepare(area)
                lit *= np.where(shapely.contains_xy(area, points[:, 0], points[:, 1]), 1 - caster.share, 1)
            hours += lit
    return hours


def discs(ball: Ball, count: int = 60) -> list[Caster]:
    """A ball as a stack of flat discs."""
    half = (ball.high_ft - ball.low_ft) / 2
    heights = [half * math.sin(math.pi * (k / count - 0.5)) for k in range(1, count)]
    outlines = [Point(ball.at).buffer(ball.radius_ft * math.sqrt(1 - (z / half) ** 2), quad_segs=16) for z in heights]
    return [
        Caster(o, ball.low_ft + half + z, ball.low_ft + half + z, 1) for o, z in zip(outlines, heights, strict=True)
    ]


def swept_shadow(caster: Caster | Ball, altitude_deg: float, plan_deg: float) -> Geometry:
    """The area that a caster's outline sweeps between its foot's and its top's shift."""
    if isinstance(caster, Ball):
        shadows = [swept_shadow(disc, altitude_deg, plan_deg) for disc in discs(caster)]
        return shapely.union_all(shadows).convex_hull  # as a ball's is, without the slits between discs
    reach, turn = 1 / math.tan(math.radians(altitude_deg)), math.radians(plan_deg)
    away = -reach * np.array([math.sin(turn), math.cos(turn)])
    low = shapely.transform(caster.outline, lambda xy: xy + away * caster.low_ft)
    step = away * (caster.high_ft - caster.low_ft)
    if not step.any():
        return low
    lines = shapely.get_coordinates(low.exterior if isinstance(low, Polygon) else low)
    swept = [Polygon([a, b, b + step, a + step]).buffer(0) for a, b in itertools.pairwise(lines)]
    ends = [] if isinstance(low, LineString | Point) else [low, shapely.transform(low, lambda xy: xy + step)]
    return shapely.union_all([*swept, *ends])
