"""Lights by way, step and room, in switched zones, with transformer and cable."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from typing import Final

from shapely import LineString

from optimizer.catalogue import SITE
from optimizer.derived import Derived
from optimizer.quantities.electric import TRANSFORMERS_W, light_cable, transformer_w
from optimizer.quantities.figures import figure, value
from optimizer.quantities.part import Counted, Line, Part
from optimizer.quantities.services import nearest_start, run_ft

LIGHT: Final = "light"


@dataclass(frozen=True, slots=True)
class SiteLights:
    """Lights that no room has: along the ways, and at steps."""

    way_ft: float
    along_ways: int
    at_steps: int
    risers: int


def site_lights(derived: Derived) -> SiteLights:
    """One for each started stretch of arrival and main ways, and for so many risers of each flight that is built."""
    way_ft = sum(LineString(leg.points).length for leg in derived.laid.legs if leg.use != "service")
    flights = [flight.risers for flight in derived.grading.built_flights]
    return SiteLights(
        way_ft=way_ft,
        along_ways=ceil(way_ft / value("way_light_ft") - 1e-9),
        at_steps=sum(ceil(risers / value("risers_per_light")) for risers in flights),
        risers=sum(flights),
    )


def _added(of: Counted, phase: int) -> SiteLights:
    """Those that a phase adds to what stands before it."""
    after, before = site_lights(of.stages[phase]), of.before(phase)
    there = site_lights(before) if before else SiteLights(0.0, 0, 0, 0)
    return SiteLights(
        way_ft=after.way_ft - there.way_ft,
        along_ways=after.along_ways - there.along_ways,
        at_steps=after.at_steps - there.at_steps,
        risers=after.risers - there.risers,
    )


def light_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Fixtures of a room as a zone, or those of ways and steps; under the first of all, transformer and cable."""
    if line.room == SITE:
        yield from _on_the_site(line, _added(of, line.phase))
    else:
        how = f"one zone with its switch; {line.quantity:g} x {value('room_light_w'):g} W"
        yield line.part("fixtures", line.quantity, "each", how, figure("room_light_w").source)
    if line is of.by_item[LIGHT][0]:
        yield from _supply(line, of)


def _on_the_site(line: Line, lights: SiteLights) -> Iterator[Part]:
    if lights.along_ways:
        how = f"{lights.way_ft:,.0f} ft of arrival and main ways / {value('way_light_ft'):g} ft; one zone"
        yield line.part("fixtures along ways", lights.along_ways, "each", how, figure("way_light_ft").source)
    if lights.at_steps:
        how = f"{lights.risers} risers, one for {value('risers_per_light'):g} of a flight; one zone"
        yield line.part("step lights", lights.at_steps, "each", how, figure("risers_per_light").source)


def _supply(line: Line, of: Counted) -> Iterator[Part]:
    lines, lights = of.by_item[LIGHT], site_lights(of.derived)
    in_rooms = sum(one.quantity for one in lines if one.room != SITE)
    load = (
        in_rooms * value("room_light_w")
        + lights.along_ways * value("way_light_w")
        + lights.at_steps * value("step_light_w")
    )
    rated = transformer_w(load) or TRANSFORMERS_W[-1]
    how = f"{load:,.0f} W of lights on at most {value('transformer_load'):.0%} of its rating: {rated} W"
    count = ceil(load / (rated * value("transformer_load")) - 1e-9)
    yield line.part("transformer", max(1, count), "each", how, figure("transformer_load").source)
    zones = [(one, one.quantity * value("room_light_w")) for one in lines if one.room != SITE]
    for zone, watts in zones:
        far = _run_ft(of, zone)
        cable, drop = light_cable(watts, far)
        how = (
            f"{zone.room}: {watts:,.0f} W x {far:,.0f} ft / {value(f'cable_constant_{cable[:2]}'):g} = {drop:.2f} V of "
            f"{value('lamp_v'):g} V; lights bear {value('lamp_drop_v'):g} V"
        )
        yield line.part(f"cable, {cable}", far, "ft", how, figure("cable_constant_12").source)


def _run_ft(of: Counted, zone: Line) -> float:
    """From where electricity starts to a room, and once along its longer side [ft]."""
    room = of.placed(zone)
    if room is None:
        return 0.0
    start = nearest_start(of.derived.site, "electric", room.placement)
    to_room = run_ft(start, room.placement) if start else 0.0
    return to_room + max(room.placement.width_ft, room.placement.depth_ft)
