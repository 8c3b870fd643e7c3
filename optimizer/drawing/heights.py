"""Heights that the pictures share: rooms at their levels, and what stands on sloping ground from foot to top."""

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import LinearRing

from optimizer.circulation import Way
from optimizer.drawing.outlines import box_of
from optimizer.fields import ground_of
from optimizer.fields.sun import DEFAULT_HEIGHT_FT
from optimizer.grading import grade
from optimizer.layout import Layout, Placed, Placement
from optimizer.site import Ring, Site

_SAMPLE_FT: Final = 5.0
_COUNT: Final = 9


def graded_levels(site: Site, placed: Placed, ways: Sequence[Way]) -> Mapping[str, float]:
    """Levels that grading gives the paved rooms [ft above the datum]."""
    return dict(grade(site, placed, ways).levels_ft)


def room_levels(site: Site, layout: Layout, levels: Mapping[str, float]) -> dict[str, float]:
    """Level of every placed room [ft above the datum]: as given, else the mean ground under it."""
    return {p.room: levels[p.room] if p.room in levels else _mean_ground(site, p) for p in layout.placements}


def _mean_ground(site: Site, placement: Placement) -> float:
    x1, y1, x2, y2 = box_of(placement)
    xs, ys = np.meshgrid(np.linspace(x1, x2, _COUNT), np.linspace(y1, y2, _COUNT))
    return float(np.mean(ground_of(site).z_ft(np.stack([xs.ravel(), ys.ravel()], axis=1))))


def foot_and_top(site: Site, outline: Ring, height_ft: float | None, kind: str) -> tuple[float, float]:
    """Lowest ground along an outline, and its height, given or usual, above the mean of it, as in the sun's shadows."""
    z = ground_along(site, outline)
    return float(z.min()), float(z.mean()) + (DEFAULT_HEIGHT_FT[kind] if height_ft is None else height_ft)


def ground_along(site: Site, outline: Ring) -> NDArray[np.float64]:
    """Ground every 5 ft and less along an outline [ft]."""
    return ground_of(site).z_ft(shapely.get_coordinates(shapely.segmentize(LinearRing(outline), _SAMPLE_FT))[:-1])
