"""The places that ways join: rooms with their gates, doors and entrances with the spot where one stands."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import hypot
from typing import Final, get_args

import shapely
from shapely import LineString, ops
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import LocalSide, SizedRoom
from optimizer.circulation.ground import Ground, walkable_ground
from optimizer.circulation.shapes import SIDES, middle, rectangle, side_ends, side_on_plan
from optimizer.layout import Front, Layout, Placement
from optimizer.layout.arrangement import TOLERANCE_FT
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.site import Point, Site

GATE_FT: Final = 1.5
"""How far outside a room's edge its gate lies: half the clear width."""
_STANDING_FT: Final = 2.0  # from a door or entrance to where one stands
_SHIFT_FT: Final = 2.5  # how far the standing point may be moved to reach the ground
_BESIDE_FT: Final = 2.52  # the ground keeps this much at most from whatever stands on the site


@dataclass(frozen=True, slots=True)
class Stop:
    """A place that people walk to.

    `anchor` is where its ways begin or end, `gates` the points of the ground where one steps in (none: cut off),
    `edge_ft` the step from a gate to the edge. `area` is the ground of the stop's own, for a room that is walked on.
    """

    name: str
    anchor: Point
    gates: tuple[Point, ...]
    edge_ft: float
    area: BaseGeometry | None = None


@dataclass(frozen=True, slots=True)
class Access:
    """Walkable ground of a layout, and the stops of every door, entrance and placed room, in that order."""

    ground: Ground
    stops: tuple[Stop, ...]

    def stop(self, name: str) -> Stop | None:
        """Stop of that name, or None."""
        return next((stop for stop in self.stops if stop.name == name), None)


def access_of(site: Site, rooms: Sequence[SizedRoom], layout: Layout) -> Access:
    """Ground and stops of a layout; a placed room that is not among `rooms` is an obstacle and no stop."""
    ground = walkable_ground(site, rooms, layout)
    shapely.prepare(ground)
    by_name = {room.name: room for room in rooms}
    stops = (
        *(_standing_stop(door.name, door.at, door.outward, ground) for door in site.doors),
        *(_standing_stop(entrance.name, entrance.at, entrance.inward, ground) for entrance in site.entrances),
        *(_room_stop(by_name[p.room], p, ground) for p in layout.placements if p.room in by_name),
    )
    return Access(ground, stops)


def stop_beside(name: str, shape: BaseGeometry, ground: Ground) -> Stop:
    """Stop at anything else on the site, such as a building or a tree: the ground just round it."""
    centre = shape.centroid
    area = shape.buffer(_BESIDE_FT, join_style="mitre").intersection(ground)
    return Stop(name, (centre.x, centre.y), (), GATE_FT, area)


def _standing_stop(name: str, at: Point, away: Point, ground: Ground) -> Stop:
    spot = shapely.Point(at[0] + _STANDING_FT * away[0], at[1] + _STANDING_FT * away[1])
    moved = _nearest(spot, ground)
    gates = () if moved is None or hypot(moved[0] - spot.x, moved[1] - spot.y) > _SHIFT_FT else (moved,)
    return Stop(name, at, gates, _distance(at, gates[0]) if gates else _STANDING_FT)


def _room_stop(room: SizedRoom, placement: Placement, ground: Ground) -> Stop:
    if room.rules.walkable:
        area = rectangle(placement).intersection(ground)
        centre = _nearest(shapely.Point(placement.centre), area)
        return Stop(room.name, placement.centre, () if centre is None else (centre,), 0.0, area)
    anchor = middle(side_ends(placement, placement.front)) if room.rules.has_front else placement.centre
    found = (_gate(placement, side, ground) for side in open_sides(room, placement))
    return Stop(room.name, anchor, tuple(gate for gate in found if gate is not None), GATE_FT)


def open_sides(room: SizedRoom, placement: Placement) -> Iterable[Front]:
    """Sides of the plan over which one steps into a placed room."""
    if room.rules.has_front:
        return (placement.front,)
    return SIDES if room.choice(placement.choice) is None else sides_in_use(room, placement, "open")


def sides_in_use(room: SizedRoom, placement: Placement, use: str) -> tuple[Front, ...]:
    """Sides of the plan on which a placed room has a use, such as `open`; where its choice says nothing it is open."""
    choice = room.choice(placement.choice)
    uses = dict(choice.sides) if choice else {}
    return tuple(side_on_plan(side, placement.front) for side in get_args(LocalSide) if uses.get(side, "open") == use)


def _gate(placement: Placement, side: Front, ground: Ground) -> Point | None:
    """Midpoint of the longest piece of ground along the stretch in front of one side."""
    (x0, y0), (x1, y1) = side_ends(placement, side)
    mid_x, mid_y = middle(((x0, y0), (x1, y1)))
    length = hypot(x1 - x0, y1 - y0)
    half = max(TOLERANCE_FT, length - 2 * GATE_FT) / 2 / length
    out_x, out_y = (GATE_FT * step for step in FRONT_VECTORS[side])
    ends = [(mid_x + out_x + t * (x1 - x0), mid_y + out_y + t * (y1 - y0)) for t in (-half, half)]
    pieces = list(_pieces(LineString(ends).intersection(ground)))
    if not pieces:
        return None
    gate = shapely.line_interpolate_point(max(pieces, key=shapely.length), 0.5, normalized=True)
    return (gate.x, gate.y)


def _pieces(shape: BaseGeometry) -> Iterator[LineString]:
    for part in shapely.get_parts(shape):
        if not part.is_empty:
            yield part if part.geom_type == "LineString" else LineString([part, part])


def _nearest(spot: shapely.Point, ground: Ground) -> Point | None:
    if ground.is_empty:
        return None
    point = spot if ground.covers(spot) else ops.nearest_points(ground, spot)[0]
    return (point.x, point.y)


def _distance(one: Point, other: Point) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])
