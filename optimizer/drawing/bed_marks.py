"""Beds with their plants: round shrubs set out in rows, the same at every drawing; mulch alone round trees."""

from collections.abc import Iterator, Sequence
from math import ceil, sqrt
from typing import Final

from shapely import Polygon, contains_xy, distance, points, union_all

from optimizer.drawing.marks import Circle, Mark
from optimizer.drawing.outlines import areas_of, polygons_in
from optimizer.planting import Bed
from optimizer.site import Point

_PITCH_FT: Final = 2.2
_RADII_FT: Final = (0.95, 0.7, 0.85, 0.6, 0.8)  # in turn, so that a row does not look drilled
_LEAST_RADIUS_FT: Final = 0.5
_MEET_FT: Final = 0.005


def bed_marks(beds: Sequence[Bed]) -> Iterator[Mark]:
    """Draw beds, those that meet as one, and the plants that find room in them; nobody digs round a tree."""
    mulched = [bed for bed in beds if bed.reason == "round a tree"]
    planted = [bed for bed in beds if bed.reason != "round a tree"]
    for bed in mulched:
        yield from areas_of("mulch", bed.outline)
    for outline in polygons_in(union_all([bed.outline.buffer(_MEET_FT, join_style="mitre") for bed in planted])):
        yield from areas_of("bed", outline)
    for bed in planted:
        yield from _plants(bed.outline)


def _plants(outline: Polygon) -> Iterator[Mark]:
    spots = list(_spots(outline))
    to_edge_ft = distance(outline.boundary, points(spots))
    for number, inside in enumerate(contains_xy(outline, spots)):
        radius_ft = min(_RADII_FT[number % len(_RADII_FT)], float(to_edge_ft[number]))
        if inside and radius_ft >= _LEAST_RADIUS_FT:
            yield Circle("plant", spots[number], radius_ft)


def _spots(outline: Polygon) -> Iterator[Point]:
    """Points in staggered rows over the bounds of a bed, set out from its middle."""
    left, low, right, top = outline.bounds
    x, y = (left + right) / 2, (low + top) / 2
    rows, columns = ceil((top - low) / 2 / _PITCH_FT), ceil((right - left) / 2 / _PITCH_FT)
    for row in range(-rows, rows + 1):
        shift = _PITCH_FT / 2 if row % 2 else 0.0
        for column in range(-columns - 1, columns + 2):
            yield (x + column * _PITCH_FT + shift, y + row * _PITCH_FT * sqrt(3) / 2)
