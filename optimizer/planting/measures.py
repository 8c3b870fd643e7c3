"""What a planting plan amounts to."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import Final, get_args

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.catalogue import SizedRoom
from optimizer.circulation import rectangle
from optimizer.fields import open_yard
from optimizer.layout import Layout
from optimizer.planting.plan import BedReason, Planting
from optimizer.site import Site

_CELL_FT: Final = 1.0
_MOST_CELLS: Final = 4_000  # a larger lawn is measured on a coarser grid


@dataclass(frozen=True, slots=True)
class PlantingMeasures:
    """Beds by reason [sq ft]; lawn with its largest rectangle, wished lawns included; and ground left over: without a
    use or too narrow for lawn [sq ft], and each as a share of the open yard.
    """

    beds_sqft: tuple[tuple[str, float], ...] = ()
    lawn_sqft: float = 0.0
    lawn_rectangle_ft: tuple[float, float] = (0.0, 0.0)
    leftover_sqft: float = 0.0
    unused_share: float = 0.0
    narrow_share: float = 0.0


def planting_measures(site: Site, rooms: Sequence[SizedRoom], layout: Layout, planting: Planting) -> PlantingMeasures:
    """Measures of a layout's planting."""
    yard_sqft = open_yard(site).area
    kinds = {room.name: room.rules.kind for room in rooms}
    wished = [rectangle(p) for p in layout.placements if kinds.get(p.room) == "lawn"]
    areas = {reason: sum(b.outline.area for b in planting.beds if b.reason == reason) for reason in get_args(BedReason)}
    rectangles = [largest_rectangle(lawn) for lawn in (*planting.lawns, *wished)]
    return PlantingMeasures(
        beds_sqft=tuple((reason, round(area, 2)) for reason, area in areas.items() if area > 0),
        lawn_sqft=round(sum(lawn.area for lawn in (*planting.lawns, *wished)), 2),
        lawn_rectangle_ft=max(rectangles, key=lambda size: size[0] * size[1], default=(0.0, 0.0)),
        leftover_sqft=round(float(planting.unused.area) + areas["narrow ground"], 2),
        unused_share=round(float(planting.unused.area / yard_sqft), 6),
        narrow_share=round(areas["narrow ground"] / yard_sqft, 6),
    )


def largest_rectangle(ground: shapely.Polygon) -> tuple[float, float]:
    """Long and short side of the largest rectangle along the axes inside a piece of ground, to a grid step [ft]."""
    left, low, right, top = ground.bounds
    step = _CELL_FT * max(1, ceil(((right - left) * (top - low) / _MOST_CELLS) ** 0.5))
    columns, rows = int((right - left) / step), int((top - low) / step)
    x, y = np.meshgrid(left + step * np.arange(columns), low + step * np.arange(rows))
    cells = shapely.box(x.ravel(), y.ravel(), x.ravel() + step, y.ravel() + step)
    shapely.prepare(ground)
    inside = shapely.covers(ground, cells).reshape(rows, columns) if cells.size else np.zeros((0, 0), dtype=bool)
    width, depth = _largest(inside)
    return (step * max(width, depth), step * min(width, depth))


def _largest(inside: NDArray[np.bool_]) -> tuple[int, int]:
    """Width and depth in cells of the largest block of true cells: the largest rectangle under each row's histogram."""
    best, heights = (0, 0), np.zeros(inside.shape[1], dtype=np.int64)
    for row in inside:
        heights = np.where(row, heights + 1, 0)
        found = _under(heights.tolist())
        best = max(best, found, key=lambda size: size[0] * size[1])
    return best


def _under(heights: list[int]) -> tuple[int, int]:
    """Width and depth of the largest rectangle under a histogram, by a stack of rising bars."""
    best, rising = (0, 0), list[int]()
    for end, height in enumerate([*heights, 0]):
        while rising and heights[rising[-1]] >= height:
            depth = heights[rising.pop()]
            width = end - (rising[-1] + 1 if rising else 0)
            best = max(best, (width, depth), key=lambda size: size[0] * size[1])
        rising.append(end)
    return best
