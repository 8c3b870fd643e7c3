"""The plan with the ground as it is: contours, spot levels, and the level of every room."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiLineString
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.backdrop import Caption, plan_sheet, room_texts
from optimizer.drawing.free_space import first_free, union_of
from optimizer.drawing.heights import room_levels
from optimizer.drawing.marks import Drawing, Line, Mark, Text
from optimizer.drawing.paving_marks import PAVING_WORDS
from optimizer.drawing.sheet_size import text_scale
from optimizer.drawing.wall_marks import WALL_WORDS
from optimizer.drawing.words import FT_IN_M, Units, level_text
from optimizer.fields import ground_of, open_yard
from optimizer.layout import Layout
from optimizer.scenario import Scenario
from optimizer.site import Site

CELL_FT: Final = 2.0
INTERVALS: Final[dict[Units, tuple[float, ...]]] = {"ft": (0.25, 0.5, 1, 2, 5), "m": (0.1, 0.25, 0.5, 1, 2)}
"""Steps between contours, in the file's own unit; the finest with no more lines than the most is taken."""
MOST_LINES: Final = 14
STRONG_EVERY: Final = 4
EVEN: Final = 1e-6
LABEL_FT: Final = 1.05
WORDS: Final[dict[str, str]] = {
    "contour": "ground as it is",
    "contour_strong": "every fourth contour",
    "room_outline": "room with its level",
    "roof": "roof over",
    "crown": "kept tree, crown",
    **WALL_WORDS,
    **PAVING_WORDS,
}

Points = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Contour:
    """All lines at one height above the file's datum [ft]."""

    z_ft: float
    lines: BaseGeometry


def interval_ft(least_z_ft: float, most_z_ft: float, units: Units) -> float:
    """Step between contours [ft]: the finest with at most 14 lines, so that a yard has 6 and more if it slopes."""
    unit_ft = 1.0 if units == "ft" else 1 / FT_IN_M
    steps = [step * unit_ft for step in INTERVALS[units]]
    return next((step for step in steps if len(_heights(least_z_ft, most_z_ft, step)) <= MOST_LINES), steps[-1])


def _heights(least_z_ft: float, most_z_ft: float, step_ft: float) -> list[float]:
    """Multiples of the step strictly between the two heights."""
    return [k * step_ft for k in range(floor(least_z_ft / step_ft + EVEN) + 1, ceil(most_z_ft / step_ft - EVEN))]


def triangles_of(xs: Points, ys: Points, z: Points) -> Points:
    """Two triangles for each cell of a grid with heights z (rows along y): shape (n, 3 corners, x y z)."""
    grid = np.dstack([*np.meshgrid(xs, ys), z])
    a, b, c, d = grid[:-1, :-1], grid[:-1, 1:], grid[1:, 1:], grid[1:, :-1]
    return np.concatenate([np.stack(corners, axis=2).reshape(-1, 3, 3) for corners in ((a, b, c), (a, c, d))])


def cut(triangles: Points, z_ft: float) -> BaseGeometry:
    """Line at one height over triangles, exact on them; a corner at that very height counts as above."""
    above = triangles[:, :, 2] >= z_ft
    mixed = above.any(axis=1) & ~above.all(axis=1)
    corners, is_above = triangles[mixed], above[mixed]
    nexts, next_above = np.roll(corners, -1, axis=1), np.roll(is_above, -1, axis=1)
    crosses = is_above != next_above  # exactly two edges of each triangle
    start, end = corners[crosses], nexts[crosses]
    share = (z_ft - start[:, 2]) / (end[:, 2] - start[:, 2])
    ends = (start[:, :2] + share[:, None] * (end[:, :2] - start[:, :2])).reshape(-1, 2, 2)
    ends = ends[np.hypot(*(ends[:, 0] - ends[:, 1]).T) > 1e-9]
    merged: BaseGeometry = shapely.line_merge(MultiLineString(list(np.round(ends, 6))))
    return merged


def contours_of(site: Site, units: Units) -> tuple[float, tuple[Contour, ...]]:
    """Step [ft] and contours of the open yard, lowest first; none where the ground is level."""
    yard = open_yard(site)
    x1, y1, x2, y2 = yard.bounds
    xs, ys = (np.arange(low, high + CELL_FT, CELL_FT) for low, high in ((x1, x2), (y1, y2)))
    points = np.stack([grid.ravel() for grid in np.meshgrid(xs, ys)], axis=1)
    z = ground_of(site).z_ft(points)
    inside = shapely.intersects_xy(shapely.buffer(yard, 0.01), points)
    step = interval_ft(float(z[inside].min()), float(z[inside].max()), units)
    triangles = triangles_of(xs, ys, z.reshape(len(ys), len(xs)))
    heights = _heights(float(z[inside].min()), float(z[inside].max()), step)
    found = (Contour(height, shapely.intersection(cut(triangles, height), yard)) for height in heights)
    return step, tuple(contour for contour in found if not contour.lines.is_empty)


def draw_ground(scenario: Scenario, layout: Layout, levels: Mapping[str, float], *, title: str) -> Drawing:
    """Draw the plan in outline with contours, spot levels and the rooms' levels [ft above the datum].

    A room that `levels` lacks lies at the mean ground under it.
    """
    site, units, scale = scenario.site, scenario.units, text_scale(scenario.site)
    step, contours = contours_of(site, units)
    known = room_levels(site, layout, levels)
    names = room_texts(layout, lambda placement: level_text(known[placement.room], units), scale)
    spots = _spot_texts(site, units, scale)
    marks = (*_contour_marks(contours, step), *_spot_marks(site, scale))
    said = "; ".join(f"{room} {level_text(z, units)} {units}" for room, z in known.items())
    return plan_sheet(
        scenario,
        layout,
        marks,
        (*names, *spots, *_labels(contours, (*names, *spots), units, scale)),
        Caption(
            title=title,
            description=f"Ground of {scenario.name}. Levels of the rooms: {said or 'none'}.",
            words=WORDS,
            notes=(_note(site, step, units),),
        ),
    )


def _note(site: Site, step_ft: float, units: Units) -> str:
    if not site.levels:
        return "The file gives no levels: the ground is taken as level."
    step = step_ft * (FT_IN_M if units == "m" else 1.0)
    return f"Contours every {step:g} {units}, between the levels that were given; heights above the file's datum."


def _contour_marks(contours: Sequence[Contour], step_ft: float) -> tuple[Mark, ...]:
    return tuple(
        Line("contour" if round(contour.z_ft / step_ft) % STRONG_EVERY else "contour_strong", tuple(part.coords))
        for contour in contours
        for part in shapely.get_parts(contour.lines)
        if part.geom_type == "LineString"
    )


def _spot_marks(site: Site, scale: float) -> tuple[Mark, ...]:
    half = 0.5 * scale
    return tuple(
        Line("spot_level", ends)
        for x, y in (spot.at for spot in site.levels)
        for ends in (((x - half, y - half), (x + half, y + half)), ((x - half, y + half), (x + half, y - half)))
    )


def _spot_texts(site: Site, units: Units, scale: float) -> tuple[Text, ...]:
    size = LABEL_FT * scale
    return tuple(
        Text("spot_level", (spot.at[0], spot.at[1] + 1.3 * size), level_text(spot.z_ft, units), size)
        for spot in site.levels
    )


def _labels(contours: Sequence[Contour], texts: Sequence[Text], units: Units, scale: float) -> tuple[Text, ...]:
    """Give each height one figure, on its longest line, clear of every other text."""
    found: tuple[Text, ...] = ()
    for contour in contours:
        line = max(shapely.get_parts(contour.lines), key=lambda part: part.length)
        text = Text("contour_level", (0.0, 0.0), _height_text(contour.z_ft, units), LABEL_FT * scale)
        places = [line.interpolate(share, normalized=True) for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)]
        taken = union_of(*(other.box for other in (*texts, *found)))
        height, width = text.size_ft * 1.3, text.width_ft + 0.4
        at = first_free([(place.x, place.y) for place in places], taken, width_ft=width, height_ft=height)
        if at is not None:
            found += (Text(text.role, at, text.text, text.size_ft),)
    return found


def _height_text(z_ft: float, units: Units) -> str:
    """Write a contour's height to the finest step between contours."""
    value = round(z_ft * (FT_IN_M if units == "m" else 1.0), 2)
    return f"{'−' if value < 0 else ''}{abs(value):g}"
