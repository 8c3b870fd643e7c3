"""How the cook works: what lies between grill, sink and refrigerator, and between the bar and the table."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import acos, degrees, hypot
from typing import Final

import shapely
from shapely import LineString, Point
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import SizedRoom, rates
from optimizer.circulation import Way
from optimizer.circulation.furniture import item_on_plan
from optimizer.layout import Layout, Placement
from optimizer.layout.placement import FRONT_VECTORS

TO_TABLE_FT: Final = (5.0, 12.0)
"""From the bar's edge to the table's: nearer is in the way, farther is carried; common practice, no source."""
CROSSED_AS_FT: Final = 5.0
"""A guests' way across the way of a dish counts as so many feet off; common practice, no source."""
_WORK: Final = ("grill", "sink", "refrigerator")


@dataclass(frozen=True, slots=True)
class CookMeasures:
    """Of one kitchen with the nearest gathering. Lengths are straight, in feet.

    `work_ft` is the way round grill, sink and refrigerator (those there are), `dish_ft` from the grill to the table,
    `to_table_ft` from the bar to the table's edge, `angle_deg` how far from straight ahead the table's middle lies,
    `crossed_by` the ways of other trips across the way of a dish. None where there is no gathering or no grill.
    """

    kitchen: str
    work_ft: float
    gathering: str | None = None
    angle_deg: float | None = None
    to_table_ft: float | None = None
    dish_ft: float | None = None
    crossed_by: tuple[tuple[str, str], ...] = ()

    @property
    def off_ft(self) -> float:
        """Feet by which bar and table lie nearer or farther than is handy, crossings counted in."""
        if self.to_table_ft is None:
            return 0.0
        least, most = TO_TABLE_FT
        off = max(0.0, least - self.to_table_ft, self.to_table_ft - most)
        return off + CROSSED_AS_FT * len(self.crossed_by)


def cook_measures(rooms: Sequence[SizedRoom], layout: Layout, ways: Sequence[Way]) -> tuple[CookMeasures, ...]:
    """Measures of every placed kitchen."""
    by_name = {room.name: room for room in rooms}
    placed = [(by_name[p.room], p) for p in layout.placements if p.room in by_name]
    kitchens = [(room, place) for room, place in placed if room.rules.kind == "kitchen"]
    gatherings = [(room, place) for room, place in placed if room.rules.kind == "gathering"]
    return tuple(_of_kitchen(room, place, gatherings, ways) for room, place in kitchens)


def cook_loss(measures: Sequence[CookMeasures]) -> float:
    """Feet off as a loss in money, before weighing."""
    return rates().cook * sum(kitchen.off_ft for kitchen in measures)


def _of_kitchen(
    room: SizedRoom, place: Placement, gatherings: Sequence[tuple[SizedRoom, Placement]], ways: Sequence[Way]
) -> CookMeasures:
    work_ft = _round_ft([shape.centroid for role in _WORK for shape in _items(room, place, (role,))])
    if not gatherings:
        return CookMeasures(room.name, work_ft)
    bar = next(_items(room, place, ("ledge",)), _front(place))
    table, (hosts, at) = min(
        ((_table(*gathering), gathering) for gathering in gatherings), key=lambda entry: float(bar.distance(entry[0]))
    )
    grills = list(_items(room, place, ("grill",)))
    carried = shapely.shortest_line(bar.centroid, table)
    return CookMeasures(
        kitchen=room.name,
        work_ft=work_ft,
        gathering=hosts.name,
        angle_deg=round(_angle_deg(place, at), 1),
        to_table_ft=round(float(bar.distance(table)), 2),
        dish_ft=round(grills[0].centroid.distance(bar) + float(bar.distance(table)), 2) if grills else None,
        crossed_by=tuple(_crossing(carried, ways, {room.name, hosts.name})),
    )


def _items(room: SizedRoom, place: Placement, roles: tuple[str, ...]) -> Iterator[BaseGeometry]:
    choice = room.choice(place.choice)
    for item in choice.furniture if choice else ():
        if item.role in roles:
            yield item_on_plan(place, choice, item)  # type: ignore[arg-type]


def _table(room: SizedRoom, place: Placement) -> BaseGeometry:
    """The dining table, or the middle of a room without one."""
    return next(_items(room, place, ("table",)), Point(place.centre))


def _front(place: Placement) -> BaseGeometry:
    """Middle of a kitchen's front, where it has no bar."""
    (x, y), (out_x, out_y) = place.centre, FRONT_VECTORS[place.front]
    return Point(x + out_x * place.width_ft / 2, y + out_y * place.depth_ft / 2)


def _angle_deg(place: Placement, table: Placement) -> float:
    """Angle between straight ahead and the middle of the table's room."""
    away = (table.centre[0] - place.centre[0], table.centre[1] - place.centre[1])
    out_x, out_y = FRONT_VECTORS[place.front]
    return degrees(acos(max(-1.0, min(1.0, (away[0] * out_x + away[1] * out_y) / (hypot(*away) or 1.0)))))


def _round_ft(points: Sequence[Point]) -> float:
    """Way round up to three points and back [ft]."""
    sides = [one.distance(other) for one, other in combinations(points[:3], 2)]
    return round(float(sum(sides)) * (1 if len(sides) > 1 else 2), 2)


def _crossing(carried: LineString, ways: Sequence[Way], own: set[str]) -> Iterator[tuple[str, str]]:
    for way in ways:
        if own.isdisjoint(way.between) and LineString(way.points).crosses(carried):
            yield way.between
