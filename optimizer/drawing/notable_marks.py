"""Small marks of two findings: where most ways meet, and where the party's walk is narrowest."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist
from typing import Final

from shapely import LineString

from optimizer.appraisal.party import Pinch
from optimizer.circulation import Leg
from optimizer.drawing.marks import Area, Mark
from optimizer.drawing.outlines import moved
from optimizer.layout import Layout, shared_edge_ft
from optimizer.site import Door, Point

FOCAL_ROLE: Final = "focal_point"
PINCH_ROLE: Final = "pinch"
RADIUS_FT: Final = 0.8
_WAIST: Final = 0.3  # of the star's reach, between its points
_LEAST_FT: Final = 0.1
_CLEAR_FT: Final = 0.4  # between the star and the line of a door


@dataclass(frozen=True, slots=True)
class Notable:
    """What a plan points out beside its rooms; None is not drawn."""

    focal_point: Point | None = None
    pinch: Pinch | None = None


def notable_marks(
    notable: Notable, layout: Layout, legs: Sequence[Leg], doors: Sequence[Door], scale: float
) -> Iterator[Area]:
    """A star at the focal point, before a door that it would lie on; two wedges tip to tip, square to the walk, at the
    pinch.
    """
    if notable.focal_point is not None:
        yield star(_before_doors(notable.focal_point, doors, RADIUS_FT * scale), RADIUS_FT * scale)
    found = notable.pinch and _pinch_at(notable.pinch, layout, legs)
    if found:
        yield wedges(*found, RADIUS_FT * scale)


def _before_doors(at: Point, doors: Sequence[Door], radius_ft: float) -> Point:
    """The point, straight out of a door whose line a mark of that radius would touch there."""
    for door in doors:
        away = (at[0] - door.at[0], at[1] - door.at[1])
        out_ft = away[0] * door.outward[0] + away[1] * door.outward[1]
        along_ft = abs(away[0] * door.outward[1] - away[1] * door.outward[0])
        short_ft = radius_ft + _CLEAR_FT - abs(out_ft)
        if short_ft > 0 and along_ft < door.width_ft / 2 + radius_ft:
            return moved(at, door.outward, radius_ft + _CLEAR_FT - out_ft)
    return at


def swatch(role: str, at: Point, radius_ft: float) -> Mark:
    """The mark of a role as the legend shows it."""
    return star(at, radius_ft) if role == FOCAL_ROLE else wedges(at, (1.0, 0.0), radius_ft)


def star(at: Point, radius_ft: float) -> Area:
    """A star of four points."""
    x, y = at
    waist = _WAIST * radius_ft
    turns = ((1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1), (0, -1), (1, -1))
    reach = (radius_ft, waist)
    return Area(FOCAL_ROLE, (tuple((x + reach[i % 2] * a, y + reach[i % 2] * b) for i, (a, b) in enumerate(turns)),))


def wedges(at: Point, across: Point, radius_ft: float) -> Area:
    """Two wedges that press on a point from both sides; `across` is the unit vector through them."""
    (x, y), (ax, ay), half = at, across, 0.6 * radius_ft
    rings = []
    for side in (1, -1):
        far = (x + side * ax * radius_ft, y + side * ay * radius_ft)
        tip = (x + side * ax * 0.15 * radius_ft, y + side * ay * 0.15 * radius_ft)
        base = (
            (far[0] - side * ay * half, far[1] + side * ax * half),
            (far[0] + side * ay * half, far[1] - side * ax * half),
        )
        rings.append((tip, base[1], base[0]))
    return Area(PINCH_ROLE, tuple(rings))


def _pinch_at(pinch: Pinch, layout: Layout, legs: Sequence[Leg]) -> tuple[Point, Point] | None:
    """Middle of the narrowest stretch and the unit vector across it; None where the layout lacks it."""
    if pinch.at == "edge":
        return _edge_middle(pinch, layout)
    # A measure rounds the width; of legs as wide for the same trip any is as narrow, and the longest is seen best.
    narrow = [leg for leg in legs if leg.trips[0] == pinch.between and abs(leg.width_ft - pinch.width_ft) < _LEAST_FT]
    if not narrow:
        return None
    line = max((LineString(leg.points) for leg in narrow), key=lambda line: float(line.length))
    before, middle, after = (line.interpolate(share, normalized=True) for share in (0.45, 0.5, 0.55))
    length = dist((before.x, before.y), (after.x, after.y)) or 1.0
    return (middle.x, middle.y), ((before.y - after.y) / length, (after.x - before.x) / length)


def _edge_middle(pinch: Pinch, layout: Layout) -> tuple[Point, Point] | None:
    one, other = (layout.of(name) for name in pinch.between)
    if one is None or other is None or not shared_edge_ft(one, other):
        return None
    left, right = max(one.x_ft, other.x_ft), min(one.right_ft, other.right_ft)
    low, high = max(one.y_ft, other.y_ft), min(one.top_ft, other.top_ft)
    along: Point = (1.0, 0.0) if right - left > high - low else (0.0, 1.0)
    return ((left + right) / 2, (low + high) / 2), along
