"""Flights of steps: between touching rooms, on ways, and at doors."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import dist
from typing import Final

from optimizer.catalogue.steps import landings_for, needs_guard, risers_for, step_rules, tread_for
from optimizer.circulation import CLEAR_WIDTH_FT, Way
from optimizer.fields import LANDING_FT
from optimizer.fields.site_walls import open_edges
from optimizer.grading.clear import Foot, too_near
from optimizer.grading.paved import Paved, Sill, sills
from optimizer.grading.profile import Leg, legs_of
from optimizer.layout import FRONT_VECTORS, TOLERANCE_FT, Placement, side_ends
from optimizer.layout.shapes import SIDES
from optimizer.site import Point

GROUND: Final = "ground"
"""The other end of a door's flight that ends on open ground."""
_EVEN: Final = 1e-6  # what rounding leaves of a level difference
_SHIFTS: Final = (0.0, -1.0, 1.0, -0.5, 0.5)  # of the spare length either side of the middle of a shared edge
_ALONG: Final = 0.9  # of two directions: less than 26 degrees apart, and ways run in steps of 45
_SAME_FT: Final = 3.0  # common practice, no source: steps on two ways nearer than a way's width are one flight


@dataclass(frozen=True, slots=True)
class Flight:
    """Steps from the first end up or down to the other.

    `at` is the middle of the top riser's edge and `going` the unit vector in which one climbs. `landings` are those
    inside the flight.
    """

    between: tuple[str, str]
    risers: int
    riser_in: float
    tread_in: float
    width_ft: float
    at: Point
    going: Point
    landings: int
    needs_handrail: bool
    needs_guard: bool

    @property
    def rise_ft(self) -> float:
        """Level difference that it takes [ft]."""
        return self.risers * self.riser_in / 12

    @property
    def run_ft(self) -> float:
        """Length of its treads [ft], landings left out."""
        return (self.risers - 1) * self.tread_in / 12

    @property
    def foot(self) -> Foot:
        """Its bottom riser; landings inside the flight are left out of its length."""
        (x, y), (up_x, up_y), run_ft = self.at, self.going, self.run_ft
        return Foot((x - run_ft * up_x, y - run_ft * up_y), self.going, self.width_ft, run_ft)


def room_flights(paved: Paved, levels_ft: Sequence[float]) -> tuple[Flight, ...]:
    """Flights at doors and between touching rooms."""
    return (*_at_doors(paved, levels_ft), *_between_rooms(paved, levels_ft))


def door_foot_ft(paved: Paved, levels_ft: Sequence[float], sill: Sill) -> tuple[str, float]:
    """What the landing of a door leads to and its level [ft]: the highest room that meets it, else the ground."""
    meeting = [
        (level_ft, room.name)
        for level_ft, room in zip(levels_ft, paved.rooms, strict=True)
        if sill.zone.distance(room.shape) <= TOLERANCE_FT
    ]
    if meeting:
        level, name = max(meeting)
        return name, level
    return GROUND, float(paved.ground.z_ft([sill.door.at])[0])


def _at_doors(paved: Paved, levels_ft: Sequence[float]) -> Iterator[Flight]:
    for sill in sills(paved.site):
        name, foot = door_foot_ft(paved, levels_ft, sill)
        risers = risers_for(12 * (sill.floor_ft - foot))
        if risers:
            (x, y), (out_x, out_y) = sill.door.at, sill.door.outward
            at = (x + LANDING_FT * out_x, y + LANDING_FT * out_y)
            width = sill.door.width_ft
            yield _flight((name, sill.door.name), sill.floor_ft - foot, risers, width, at, (0.0 - out_x, 0.0 - out_y))


def _between_rooms(paved: Paved, levels_ft: Sequence[float]) -> Iterator[Flight]:
    for low, high in (sorted(pair, key=lambda room: levels_ft[room]) for pair in paved.touching):
        rise = levels_ft[high] - levels_ft[low]
        risers = risers_for(12 * rise)
        if not risers:
            continue
        lower, upper = (paved.rooms[room].placement for room in (low, high))
        # Of an edge with walls on it the longest part that is open.
        open_part = max(open_edges(paved.site, lower, upper), key=lambda part: part.length)
        edge = open_part.length
        if edge >= CLEAR_WIDTH_FT - TOLERANCE_FT:
            (middle,) = open_part.interpolate(0.5, normalized=True).coords
            going = _going(middle, lower)
            ends = (lower.room, upper.room)
            places = _along_edge(edge, middle, going)
            yield _clearest(paved, [_flight(ends, rise, risers, width, at, going) for at, width in places])


def _clearest(paved: Paved, flights: Sequence[Flight]) -> Flight:
    """The first flight whose foot is clear of seats and flames, else the one from which least lacks."""
    lacks: dict[float, Flight] = {}
    for flight in flights:
        near = too_near(paved.placed, flight.foot)
        if near is None:
            return flight
        lacks.setdefault(near.short_ft, flight)
    return lacks[min(lacks)]


def _along_edge(edge_ft: float, middle: Point, going: Point) -> Iterator[tuple[Point, float]]:
    """Places and widths [ft] for a flight on a shared edge: at its full width before narrow, in the middle first."""
    full = min(edge_ft, step_rules().flight_width_ft)
    (x, y), (up_x, up_y) = middle, going
    for width in dict.fromkeys((full, min(full, CLEAR_WIDTH_FT))):
        spare = max(0.0, edge_ft - width) / 2
        for shift in dict.fromkeys(share * spare for share in _SHIFTS):
            yield (x + shift * abs(up_y), y + shift * abs(up_x)), width


def _going(at: Point, lower: Placement) -> Point:
    """The way out of the lower of two rooms at a point of the edge that they share."""
    side = min(SIDES, key=lambda side: dist(at, _nearest(at, *side_ends(lower, side))))
    x, y = FRONT_VECTORS[side]
    return (float(x), float(y))


def _nearest(at: Point, one: Point, other: Point) -> Point:
    """Point of an edge along an axis that is nearest to another point."""
    (x0, x1), (y0, y1) = sorted((one[0], other[0])), sorted((one[1], other[1]))
    return (min(max(at[0], x0), x1), min(max(at[1], y0), y1))


def way_flights(paved: Paved, levels_ft: Sequence[float], ways: Sequence[Way]) -> tuple[Flight, ...]:
    """Flights on ways that are steeper than a walk may be."""
    found: list[Flight] = []
    feet = {sill.door.name: door_foot_ft(paved, levels_ft, sill)[1] for sill in sills(paved.site)}
    for way in ways:
        start, end = (feet.get(name) for name in way.between)
        for leg in legs_of(paved, levels_ft, way, start, end):
            if leg.length_ft > 0 and _is_stepped(leg) and not _has_flight(leg, found):
                found.append(_clearest(paved, [_on_leg(way, leg, *top) for top in leg.tops]))
    return tuple(found)


def _has_flight(leg: Leg, found: Sequence[Flight]) -> bool:
    """Whether a flight of another way along the same line stands where this stretch could have its own."""
    return any(
        dist(at, flight.at) <= _SAME_FT and abs(_dot(heading, flight.going)) >= _ALONG
        for at, heading in leg.tops
        for flight in found
    )


def _dot(one: Point, other: Point) -> float:
    return one[0] * other[0] + one[1] * other[1]


def risers_along(paved: Paved, levels_ft: Sequence[float], way: Way) -> int:
    """Risers that one climbs on a way, up or down, with the steps of a door at its end."""
    at_doors = {sill.door.name: (sill, door_foot_ft(paved, levels_ft, sill)[1]) for sill in sills(paved.site)}
    ends = [at_doors.get(name) for name in way.between]
    start, end = (None if found is None else found[1] for found in ends)
    legs = legs_of(paved, levels_ft, way, start, end)
    own = sum(risers_for(12 * (sill.floor_ft - foot)) for sill, foot in filter(None, ends))
    return own + sum(_risers_of(leg) for leg in legs)


def _risers_of(leg: Leg) -> int:
    """Risers of a stretch, or of the edge between two rooms."""
    if leg.length_ft == 0:
        return risers_for(12 * leg.rise_ft)
    return max(risers_for(12 * leg.rise_ft), int(step_rules().least_risers)) if _is_stepped(leg) else 0


def _is_stepped(leg: Leg) -> bool:
    """Whether a stretch is steeper than a walk, and too high or too steep to be a short ramped path."""
    rules = step_rules()
    two_risers_ft = rules.least_risers * rules.least_riser_in / 12
    steepest = 1 / rules.ramp_run_to_rise if leg.rise_ft < two_risers_ft else rules.path_slope
    return leg.rise_ft > steepest * leg.length_ft + _EVEN


def _on_leg(way: Way, leg: Leg, at: Point, heading: Point) -> Flight:
    climbs = 1.0 if leg.to_ft > leg.from_ft else -1.0
    going = (climbs * heading[0], climbs * heading[1])
    return _flight(way.between, leg.rise_ft, _risers_of(leg), way.width_ft, at, going)


def _flight(between: tuple[str, str], rise_ft: float, risers: int, width_ft: float, at: Point, going: Point) -> Flight:
    riser_in = 12 * rise_ft / risers
    return Flight(
        between=between,
        risers=risers,
        riser_in=riser_in,
        tread_in=tread_for(riser_in),
        width_ft=width_ft,
        at=at,
        going=going,
        landings=landings_for(risers),
        needs_handrail=risers >= step_rules().handrail_risers,
        needs_guard=needs_guard(12 * rise_ft),
    )
