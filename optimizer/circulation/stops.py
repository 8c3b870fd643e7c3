"""The places that ways join: rooms with their gates, doors and entrances with the spot where one stands."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot
from typing import Final

import shapely
from shapely import LineString, Polygon, ops
from shapely.geometry.base import BaseGeometry

from optimizer.circulation.ground import Ground, walkable_ground
from optimizer.layout import FRONT_VECTORS, TOLERANCE_FT, Front, Placed, PlacedRoom, Placement, side_ends
from optimizer.layout.shapes import middle
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


def access_of(site: Site, placed: Placed, furniture: Sequence[Polygon] = ()) -> Access:
    """Ground and stops of a layout; a placed room that the brief does not know is an obstacle and no stop.

    Rooms that people walk through count as empty but for the furniture given.
    """
    ground = walkable_ground(site, placed, furniture=furniture)
    shapely.prepare(ground)
    stops = (
        *(_standing_stop(door.name, door.at, door.outward, ground) for door in site.doors),
        *(_standing_stop(entrance.name, entrance.at, entrance.inward, ground) for entrance in site.entrances),
        *(_room_stop(room, ground) for room in placed),
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


def _room_stop(room: PlacedRoom, ground: Ground) -> Stop:
    if room.rules.walkable:
        area = room.shape.intersection(ground)
        centre = _nearest(shapely.Point(room.centre), area)
        return Stop(room.name, room.centre, () if centre is None else (centre,), 0.0, area)
    found = (_gate(room.placement, side, ground) for side in room.open_sides)
    return Stop(room.name, room.anchor, tuple(gate for gate in found if gate is not None), GATE_FT)


def _gate(placement: Placement, side: Front, ground: Ground) -> Point | None:
    """Midpoint of the longest piece of ground along the stretch in front of one side."""
    (x0, y0), (x1, y1) = side_ends(placement, side)
    mid_x, mid_y = middle(((x0, y0), (x1, y1)))
    length = hypot(x1 - x0, y1 - y0)
    # A circle is met in the middle of a side: beside it the edge falls away.
    half = TOLERANCE_FT / length if placement.is_circle else max(TOLERANCE_FT, length - 2 * GATE_FT) / 2 / length
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
