"""Fields, borders and accents of the paved ground, and how much of each is to be laid."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist
from typing import Final

from shapely import LineString, Polygon, box, union_all
from shapely import Point as At
from shapely.geometry.base import BaseGeometry

from optimizer.brief import FinishWish, Pattern
from optimizer.catalogue import Palette, border_width_ft, cuts_share, material_facts, palette_of
from optimizer.circulation import Leg
from optimizer.layout import Placed, PlacedRoom, areas_only
from optimizer.site import Point, Site

ACCENT_KIND: Final = "arrival"
"""Kind of room whose field is turned: routes meet there."""
TURN_DEG: Final = 45.0
"""How far a turned field is turned."""
_TOUCH_FT: Final = 0.01
_SAME_FT: Final = 0.05
_MEETING: Final = 3  # ends of legs at one point
_LONG_FT: Final = 8.0  # layout rule 26 and common practice, no source: a shorter leg is no way that meets others
_LEAST_PAVED: Final = 0.9  # common practice, no source: less of a square reads as no figure


@dataclass(frozen=True, slots=True, eq=False)
class Terrace:
    """Paved rooms that touch: one field inside one border; courses run at `turn_deg` from the plan's x."""

    rooms: tuple[str, ...]
    pattern: Pattern
    turn_deg: float
    field: BaseGeometry
    border: BaseGeometry


@dataclass(frozen=True, slots=True, eq=False)
class FinishPlan:
    """Finish of a layout [ft]. Accents are turned fields, each with a border of its own in `accent_border`."""

    palette: Palette
    terraces: tuple[Terrace, ...]
    ways: BaseGeometry
    accent: BaseGeometry
    accent_border: BaseGeometry

    @property
    def accent_pattern(self) -> Pattern:
        """What accents are laid in: the usual of their material."""
        return material_facts(self.palette.accent.material).patterns[0]


@dataclass(frozen=True, slots=True)
class FieldArea:
    """Field of one terrace: `cuts` is the share to order on top of the area laid."""

    rooms: tuple[str, ...]
    pattern: Pattern
    turn_deg: float
    area_sqft: float
    cuts: float


@dataclass(frozen=True, slots=True)
class FinishTakeOff:
    """What is to be laid. A border's length is that of the middle of its course; ways are without their meetings."""

    fields: tuple[FieldArea, ...] = ()
    ways_sqft: float = 0.0
    ways_cuts: float = 0.0
    border_ft: float = 0.0
    accent_sqft: float = 0.0
    accent_cuts: float = 0.0
    cap_ft: float = 0.0

    @property
    def field_sqft(self) -> float:
        """Field of terraces and ways [sq ft]."""
        return self.ways_sqft + sum(field.area_sqft for field in self.fields)

    @property
    def field_order_sqft(self) -> float:
        """The same with what is cut away [sq ft]."""
        return self.ways_sqft * (1 + self.ways_cuts) + sum(f.area_sqft * (1 + f.cuts) for f in self.fields)


def finish_plan(site: Site, wish: FinishWish, placed: Placed, legs: Sequence[Leg], paths: BaseGeometry) -> FinishPlan:
    """Finish of a layout whose ways pave `paths` on `legs`."""
    palette, width = palette_of(wish), border_width_ft()
    # A shed stands on a base of its own.
    paved = [room for room in placed.paved if "paving" in room.rules.built_as]
    inlays = union_all([room.shape for room in paved if room.kind == ACCENT_KIND])
    squares = meetings(legs, paths)
    # A square may meet paving in a mere line, which no area can be cut with.
    turned = areas_only(union_all([inlays, squares.intersection(paths)]))
    unlaid = union_all([turned, *(room.water for room in paved if room.rules.has_deck)])
    accent = union_all([_shrunk(inlays, width), _shrunk(squares, width).intersection(paths)])
    terraces = tuple(
        _terrace(site, palette, outline, [room for room in paved if outline.contains(At(room.centre))], unlaid)
        for outline in _outlines(paved)
    )
    ways = areas_only(paths.difference(turned))
    return FinishPlan(palette, terraces, ways, areas_only(accent), areas_only(turned.difference(accent)))


def meetings(legs: Sequence[Leg], paths: BaseGeometry) -> BaseGeometry:
    """Squares as wide as the widest leg where three and more long legs end at one point, if they lie on paving [ft]."""
    long = [leg for leg in legs if LineString(leg.points).length >= _LONG_FT - _SAME_FT]
    ends = [(point, leg.width_ft) for leg in long for point in (leg.points[0], leg.points[-1])]
    squares = (_square(at, [width for point, width in ends if dist(point, at) <= _SAME_FT]) for at, _ in ends)
    on_paving = (s for s in squares if s and s.intersection(paths).area >= _LEAST_PAVED * s.area)
    return union_all(list(on_paving))


def _square(at: Point, widths: Sequence[float]) -> Polygon | None:
    half = max(widths) / 2
    return box(at[0] - half, at[1] - half, at[0] + half, at[1] + half) if len(widths) >= _MEETING else None


def _outlines(paved: Sequence[PlacedRoom]) -> Iterator[Polygon]:
    """Outline of each terrace, closed over what rooms that touch may lie apart by rounding."""
    joined = union_all([room.shape.buffer(_TOUCH_FT, join_style="mitre") for room in paved])
    for part in getattr(joined, "geoms", [joined]):
        if isinstance(part, Polygon) and not part.is_empty:
            yield part.buffer(-_TOUCH_FT, join_style="mitre")


def _terrace(
    site: Site, palette: Palette, outline: Polygon, rooms: Sequence[PlacedRoom], unlaid: BaseGeometry
) -> Terrace:
    inner = _shrunk(outline, border_width_ft())
    by_room = dict(palette.by_room)
    largest_first = sorted(rooms, key=lambda room: -room.placement.area_sqft)
    own = [by_room[room.name] for room in largest_first if room.name in by_room]
    return Terrace(
        rooms=tuple(room.name for room in rooms),
        pattern=own[0] if own else palette.pattern,
        turn_deg=along_house_deg(site, outline),
        field=areas_only(inner.difference(unlaid)),
        border=areas_only(outline.difference(inner).difference(unlaid)),
    )


def along_house_deg(site: Site, outline: Polygon) -> float:
    """Direction of the courses [deg from the plan's x, 0 or 90]: along the nearest wall, else the long side.

    Off a corner, where two walls are as near, the longest wall of all decides. Rooms lie along the axes, and so do
    courses: a wall that runs askew counts by the axis that it is nearer to.
    """
    rings = [building.outline for building in site.buildings]
    walls = [(ring[i - 1], ring[i]) for ring in rings for i in range(len(ring))]
    if not walls:
        x1, y1, x2, y2 = outline.bounds
        return 0.0 if x2 - x1 >= y2 - y1 else 90.0
    apart = {wall: outline.distance(LineString(wall)) for wall in walls}
    near = {_axis_deg(wall) for wall in walls if apart[wall] <= min(apart.values()) + _SAME_FT}
    return near.pop() if len(near) == 1 else _axis_deg(max(walls, key=lambda wall: dist(*wall)))


def _axis_deg(wall: tuple[Point, Point]) -> float:
    (xa, ya), (xb, yb) = wall
    return 0.0 if abs(xb - xa) >= abs(yb - ya) else 90.0


def _shrunk(shape: BaseGeometry, width_ft: float) -> BaseGeometry:
    return shape.buffer(-width_ft, join_style="mitre")


def finish_take_off(plan: FinishPlan, placed: Placed) -> FinishTakeOff:
    """Measure a finish; caps lie on the seat walls that the chosen sizes have."""
    border_sqft = plan.accent_border.area + sum(terrace.border.area for terrace in plan.terraces)
    walls = (q.amount for _, choice in placed.chosen for q in choice.quantities if q.item == "seat wall")
    return FinishTakeOff(
        fields=tuple(
            FieldArea(t.rooms, t.pattern, t.turn_deg, t.field.area, cuts_share(t.pattern)) for t in plan.terraces
        ),
        ways_sqft=plan.ways.area,
        ways_cuts=cuts_share(plan.palette.pattern),
        border_ft=border_sqft / border_width_ft(),
        accent_sqft=plan.accent.area,
        accent_cuts=cuts_share(plan.accent_pattern, turned=True),
        cap_ft=sum(walls),
    )
