"""How the cook works: what lies between grill, sink and refrigerator, and between the bar and the table."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from math import acos, degrees, hypot
from typing import Final

import shapely
from shapely import LineString, Point
from shapely.geometry.base import BaseGeometry

from optimizer.appraisal.cook_outlook import past_stools_ft, watched_shares
from optimizer.appraisal.work_zone import WorkZone, work_zone
from optimizer.catalogue import front_run, rates
from optimizer.circulation import Way
from optimizer.derived import Derived
from optimizer.grading import climbed
from optimizer.layout import FRONT_VECTORS, Placed, PlacedRoom, counter_middle

TO_TABLE_FT: Final = (5.0, 12.0)
"""From the bar's edge to the table's: nearer is in the way, farther is carried; common practice, no source."""
CROSSED_AS_FT: Final = 5.0
"""A guests' way across the way of a dish counts as so many feet off; common practice, no source."""


@dataclass(frozen=True, slots=True)
class CookMeasures:
    """Of one kitchen with the nearest gathering. Lengths are straight, in feet.

    `work_ft` is the way round grill, sink and refrigerator (those there are), `dish_ft` from the grill to the table
    with `dish_risers` on it, `to_table_ft` from the bar to the table's edge, `angle_deg` how far from straight ahead
    the middle of the gathering lies, `crossed_by` the ways of other trips across the way of a dish. None where there
    is no gathering or no grill.
    """

    kitchen: str
    work_ft: float
    gathering: str | None = None
    angle_deg: float | None = None
    to_table_ft: float | None = None
    dish_ft: float | None = None
    crossed_by: tuple[tuple[str, str], ...] = ()
    zone: WorkZone = field(default_factory=WorkZone)
    dish_risers: int | None = None
    past_stools_ft: float | None = None
    """Clear from the bar's edge to what stands before it; None where nobody sits at the bar."""
    watches: tuple[tuple[str, float], ...] = ()
    """Share of each fire and play ground that the cook sees."""

    @property
    def off_ft(self) -> float:
        """Feet by which bar and table lie nearer or farther than is handy, crossings counted in."""
        if self.to_table_ft is None:
            return 0.0
        least, most = TO_TABLE_FT
        off = max(0.0, least - self.to_table_ft, self.to_table_ft - most)
        return off + CROSSED_AS_FT * len(self.crossed_by)


def cook_measures(derived: Derived) -> tuple[CookMeasures, ...]:
    """Measures of every placed kitchen in which one cooks now, on laid ways and with levels."""
    site, placed, result = derived.site, derived.placed, []
    for kitchen in (room for room in placed.of_kind("kitchen") if not room.is_later):
        plain = plain_measures(kitchen, placed, derived.laid.ways)
        risers = climbed(derived.levelled, derived.network, plain.kitchen, plain.gathering or "")
        outlook = replace(
            plain,
            dish_risers=risers if plain.gathering else None,
            past_stools_ft=past_stools_ft(site, placed, derived.grading, kitchen),
            watches=watched_shares(site, placed, kitchen),
        )
        result.append(outlook)
    return tuple(result)


def cook_loss(measures: Sequence[CookMeasures]) -> float:
    """Feet off as a loss in money, before weighing."""
    return rates().cook * sum(kitchen.off_ft for kitchen in measures)


def plain_measures(kitchen: PlacedRoom, placed: Placed, ways: Sequence[Way]) -> CookMeasures:
    """What the kitchen itself, the gatherings and the ways say, without the site."""
    zone = work_zone(kitchen.choice) if kitchen.choice else WorkZone()
    gatherings = placed.of_kind("gathering")
    if not gatherings:
        return CookMeasures(kitchen.name, zone.round_ft, zone=zone)
    bar = _bar(kitchen)
    table, hosts = min(((_table(room), room) for room in gatherings), key=lambda entry: float(bar.distance(entry[0])))
    grills = kitchen.items("grill")
    carried = shapely.shortest_line(bar.centroid, table)
    return CookMeasures(
        kitchen=kitchen.name,
        work_ft=zone.round_ft,
        gathering=hosts.name,
        angle_deg=round(_angle_deg(kitchen, hosts), 1),
        to_table_ft=round(float(bar.distance(table)), 2),
        dish_ft=round(grills[0].centroid.distance(bar) + float(bar.distance(table)), 2) if grills else None,
        crossed_by=tuple(_crossing(carried, ways, {kitchen.name, hosts.name})),
        zone=zone,
    )


def _table(room: PlacedRoom) -> BaseGeometry:
    """The dining table, or the middle of a room without one."""
    return next(iter(room.items("table")), Point(room.centre))


def _bar(kitchen: PlacedRoom) -> BaseGeometry:
    """The bar's ledge, the front counter where nobody sits, or the middle of the front where nothing is drawn."""
    place, (x, y), (out_x, out_y) = kitchen.placement, kitchen.centre, FRONT_VECTORS[kitchen.front]
    counter = kitchen.on_plan(front_run(kitchen.choice)) if kitchen.choice else ()
    front = Point(x + out_x * place.width_ft / 2, y + out_y * place.depth_ft / 2)
    return next(iter(kitchen.items("ledge")), shapely.union_all(counter) if counter else front)


def _angle_deg(kitchen: PlacedRoom, table: PlacedRoom) -> float:
    """Angle at the middle of the counter between straight ahead and the middle of the table's room."""
    x, y = counter_middle(kitchen)
    away = (table.centre[0] - x, table.centre[1] - y)
    out_x, out_y = FRONT_VECTORS[kitchen.front]
    return degrees(acos(max(-1.0, min(1.0, (away[0] * out_x + away[1] * out_y) / (hypot(*away) or 1.0)))))


def _crossing(carried: LineString, ways: Sequence[Way], own: set[str]) -> Iterator[tuple[str, str]]:
    for way in ways:
        if own.isdisjoint(way.between) and LineString(way.points).crosses(carried):
            yield way.between
