"""What a place alone does to the order of a plan: under a structure, on an axis of the house, along the contour."""

from collections.abc import Iterator
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.fields.ground import ground_of
from optimizer.site import Door, Site, Window

Numbers = NDArray[np.float64]
ON_AXIS_FT: Final = 1.0
"""How far from a thing's centre the line may pass; common practice, no source."""
FREE_PART: Final = 5
"""One foot in so many of all room edges may lie on no shared line; layout rule 5, common practice, no source."""
STEEP: Final = 0.04
"""Slope above which a room's long side should lie along the contour; common practice, no source."""
_OVERLAP_FT: Final = 0.01  # what is closer than this lies on the line, whatever rounding says


def main_openings(site: Site) -> Iterator[Door | Window]:
    """Give the widest door and the widest window, the first of those as wide."""
    if site.doors:
        yield max(site.doors, key=lambda door: door.width_ft)
    if site.windows:
        yield max(site.windows, key=lambda window: window.width_ft)


def off_structure_ft(
    site: Site, room: str, x_ft: Numbers, y_ft: Numbers, *, width_ft: float, depth_ft: float
) -> Numbers:
    """How far a room under a structure that may hold it is from lying well there [ft], at lower left corners.

    Along each axis the smaller of the two lies within the other, and there is centred or flush on one side: what it
    sticks out counts, and how far it is from the nearest of these. 0 where the room is not under the structure.
    """
    result = np.zeros(np.shape(x_ft))
    for structure in site.structures:
        if room in structure.may_hold:
            xs, ys = zip(*structure.outline, strict=True)
            across = _off_ft(x_ft, width_ft, min(xs), max(xs))
            along = _off_ft(y_ft, depth_ft, min(ys), max(ys))
            under = _overlap(x_ft, width_ft, min(xs), max(xs)) & _overlap(y_ft, depth_ft, min(ys), max(ys))
            result += np.where(under, across + along, 0.0)
    return result


def off_axis(site: Site, x_ft: Numbers, y_ft: Numbers, *, width_ft: float, depth_ft: float) -> NDArray[np.bool_]:
    """Whether no line straight out of a main opening meets the middle of a room, at lower left corners.

    False everywhere where such a line meets a kept tree or structure anyway, or where there is no opening.
    """
    openings = tuple(main_openings(site))
    fixed = [tree.at for tree in site.trees] + [_middle(structure.outline) for structure in site.structures]
    if not openings or any(on_axis(o, np.array(x), np.array(y)) for o in openings for x, y in fixed):
        return np.zeros(np.shape(x_ft), dtype=np.bool_)
    hits = [on_axis(opening, x_ft + width_ft / 2, y_ft + depth_ft / 2) for opening in openings]
    return np.asarray(~np.logical_or.reduce(hits))


def on_axis(opening: Door | Window, x_ft: Numbers, y_ft: Numbers) -> NDArray[np.bool_]:
    """Whether points lie ahead of an opening, within 1 ft of its centre line."""
    away_x, away_y = x_ft - opening.at[0], y_ft - opening.at[1]
    out_x, out_y = opening.outward
    ahead = away_x * out_x + away_y * out_y > _OVERLAP_FT
    return np.asarray((np.abs(away_x * out_y - away_y * out_x) <= ON_AXIS_FT + _OVERLAP_FT) & ahead)


def across_contour_ft(site: Site, x_ft: Numbers, y_ft: Numbers, *, width_ft: float, depth_ft: float) -> Numbers:
    """How much more the ground rises along a room's long side than along its short one [ft], at lower left corners.

    0 where the ground is no steeper than 4 %, and for a square room.
    """
    ground = ground_of(site)
    if not ground.is_known or width_ft == depth_ft:
        return np.zeros(np.shape(x_ft))
    x, y = x_ft + width_ft / 2, y_ft + depth_ft / 2
    rise_x = _z(site, x + width_ft / 2, y) - _z(site, x - width_ft / 2, y)
    rise_y = _z(site, x, y + depth_ft / 2) - _z(site, x, y - depth_ft / 2)
    slope = np.hypot(rise_x / width_ft, rise_y / depth_ft)
    more = np.abs(rise_x) - np.abs(rise_y) if width_ft > depth_ft else np.abs(rise_y) - np.abs(rise_x)
    return np.asarray(np.where(slope > STEEP, np.maximum(0.0, more), 0.0))


def _off_ft(start: Numbers, size: float, low: float, high: float) -> Numbers:
    """Along one axis: what the smaller sticks out of the larger, and how far it is from centred or flush."""
    below, above = start - low, high - (start + size)
    if size > high - low:
        below, above = -below, -above
    out = np.maximum(0.0, -below) + np.maximum(0.0, -above)
    return out + np.minimum(np.minimum(np.abs(below), np.abs(above)), np.abs(below - above) / 2)


def _overlap(start: Numbers, size: float, low: float, high: float) -> NDArray[np.bool_]:
    return np.asarray((start < high - _OVERLAP_FT) & (start + size > low + _OVERLAP_FT))


def _middle(ring: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    xs, ys = zip(*ring, strict=True)
    return ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)


def _z(site: Site, x: Numbers, y: Numbers) -> Numbers:
    points = np.stack([np.ravel(x), np.ravel(y)], axis=1)
    return ground_of(site).z_ft(points).reshape(np.shape(x))
