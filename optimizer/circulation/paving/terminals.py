"""Where paved ways begin and end: the fronts of landings, entrances, and the open sides of rooms."""

from dataclasses import dataclass
from math import dist, hypot

from shapely import LinearRing, Polygon
from shapely import Point as ShapelyPoint
from shapely.ops import substring

from optimizer.fields import LANDING_FT, site_shapes
from optimizer.layout import FRONT_VECTORS, TOLERANCE_FT, Front, Placed, PlacedRoom, stepped_over
from optimizer.site import Door, Entrance, Point, Site


@dataclass(frozen=True, slots=True)
class Opening:
    """A stretch of edge over which one steps in or out [ft]; `out` is the unit vector that points away."""

    ends: tuple[Point, Point]
    out: Point

    @property
    def length_ft(self) -> float:
        """Length of the stretch [ft]."""
        return hypot(self.ends[1][0] - self.ends[0][0], self.ends[1][1] - self.ends[0][1])

    def at(self, along_ft: float) -> Point:
        """Point of the stretch so far from its first end [ft]."""
        share = along_ft / self.length_ft
        (x0, y0), (x1, y1) = self.ends
        return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))

    def along_ft(self, point: Point) -> float:
        """How far along the stretch the foot of a point lies [ft]."""
        (x0, y0), (x1, y1) = self.ends
        return ((point[0] - x0) * (x1 - x0) + (point[1] - y0) * (y1 - y0)) / self.length_ft


@dataclass(frozen=True, slots=True)
class Terminal:
    """A place that ways join; `anchor` is where a walk begins or ends.

    `spare` openings serve where the others lead far round. Where `deck` is given, people walk along this outline
    inside, since there is water in its middle.
    """

    name: str
    anchor: Point
    openings: tuple[Opening, ...]
    spare: tuple[Opening, ...] = ()
    deck: LinearRing | None = None

    def inside(self, edge: Point) -> tuple[Point, ...]:
        """Corners of the walk from the anchor to a point of the edge, which is not among them [ft]."""
        if self.deck is None:
            return (self.anchor,)
        start, end, whole = (*(self.deck.project(ShapelyPoint(at)) for at in (self.anchor, edge)), self.deck.length)
        if abs(end - start) <= whole / 2:
            return (self.anchor, *substring(self.deck, start, end).coords[1:-1])
        turn = 0.0 if start > end else whole
        first, second = substring(self.deck, start, whole - turn), substring(self.deck, turn, end)
        return (self.anchor, *first.coords[1:], *second.coords[1:-1])


def terminals_of(site: Site, placed: Placed) -> tuple[Terminal, ...]:
    """Terminals of a layout: doors with the landings in front of them, entrances, then placed rooms."""
    return (
        *(_of_door(door, zone) for door, zone in site_shapes(site).door_zones),
        *(Terminal(entrance.name, entrance.at, (_of_entrance(entrance),)) for entrance in site.entrances),
        *map(_of_room, placed),
    )


def _of_door(door: Door, zone: Polygon) -> Terminal:
    """A door with its landing: one leaves it over the front; a landing without steps over its sides as well."""
    # The zone runs from its first corner along the wall to the second, then out.
    near_left, near_right, far_right, far_left = list(zone.exterior.coords)[:4]
    along_x, along_y = near_right[0] - near_left[0], near_right[1] - near_left[1]
    length = hypot(along_x, along_y)
    front = Opening((far_left, far_right), door.outward)
    left = Opening((near_left, far_left), (-along_x / length, -along_y / length))
    right = Opening((near_right, far_right), (along_x / length, along_y / length))
    if dist(near_right, far_right) > LANDING_FT + TOLERANCE_FT:
        return Terminal(door.name, door.at, (front,), (left, right))
    return Terminal(door.name, door.at, (front, left, right))


def _of_entrance(entrance: Entrance) -> Opening:
    (x, y), (in_x, in_y), half = entrance.at, entrance.inward, entrance.width_ft / 2
    return Opening(((x - half * in_y, y + half * in_x), (x + half * in_y, y - half * in_x)), entrance.inward)


def _of_room(room: PlacedRoom) -> Terminal:
    # Guests come to the front of a kitchen, the cook goes in where its sides are open.
    sides = dict.fromkeys((*room.open_sides, *room.sides_in_use("open")))
    openings = (Opening(stepped_over(room.placement, side), _out(side)) for side in sides)
    deck = room.shape.exterior if room.rules.has_deck else None
    return Terminal(room.name, room.anchor, tuple(openings), deck=deck)


def _out(side: Front) -> Point:
    x, y = FRONT_VECTORS[side]
    return (float(x), float(y))
