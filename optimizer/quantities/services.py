"""Parts of gas, electricity and water: pipe and wire by demand and length, circuits, sleeves."""

from collections.abc import Iterator
from math import sqrt
from typing import Final

from shapely import LineString

from optimizer.layout import PlacedRoom, Placement, radius_ft
from optimizer.quantities.built import equipped
from optimizer.quantities.electric import circuit_wire
from optimizer.quantities.figures import figure, value
from optimizer.quantities.gas import (
    DEMAND_SOURCE,
    SOURCE,
    cfh,
    cylinder_clear_ft,
    cylinder_gal,
    cylinder_h,
    demand_mbh,
    pipe_size,
    propane_btu_per_gal,
    tank_clear_ft,
)
from optimizer.quantities.part import Counted, Line, Part
from optimizer.site import Point, Site

_TANK_GAL: Final = 500.0  # the largest that keeps 10 ft
_TRADE: Final = "a licensed trade decides under local codes"


def run_ft(start: Point, placement: Placement) -> float:
    """Length of a run along the axes from a point to the nearest edge of a room [ft]; it is dug, not flown."""
    if placement.is_circle:
        return _to_circle_ft(start, placement)
    along = max(placement.x_ft - start[0], 0.0, start[0] - placement.right_ft)
    up = max(placement.y_ft - start[1], 0.0, start[1] - placement.top_ft)
    return along + up


def _to_circle_ft(start: Point, placement: Placement) -> float:
    """The same to a circle: straight on to its edge, or, from farther off its middle, to the point halfway round."""
    radius, (x, y) = radius_ft(placement), placement.centre
    less, more = sorted((abs(start[0] - x), abs(start[1] - y)))
    if less >= radius * sqrt(0.5):
        return max(0.0, less + more - radius * sqrt(2.0))
    return max(0.0, more - sqrt(radius**2 - less**2))


def nearest_start(site: Site, supply: str, placement: Placement) -> Point | None:
    """Where a supply starts that has the shortest run to a room; None where the site does not say."""
    starts = [start.at for start in site.utilities if start.kind == supply]
    return min(starts, key=lambda at: run_ft(at, placement), default=None)


def gas_demand_mbh(room: PlacedRoom | None) -> float:
    """What a room burns [thousand Btu/h]."""
    return demand_mbh(equipped(room)) if room else 0.0


def gas_branch_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Demand of one room; where no gas is on the site, what bottled gas would ask for."""
    mbh = gas_demand_mbh(of.placed(line))
    yield line.part("demand", mbh, "thousand Btu/h", _burners(of.placed(line)), DEMAND_SOURCE)
    if not of.amount("gas run", line.room) and not any(u.kind == "gas" for u in of.derived.site.utilities):
        heat = f"{cylinder_gal():g} gal of propane x {propane_btu_per_gal():,.0f} Btu"
        how = f"no gas on the site: {heat} / {mbh:g} thousand Btu an hour"
        yield line.part("hours of a 20 lb cylinder", min(cylinder_h(mbh), 999), "h", how, "a propane supplier's page")
        flame, opening, _ = cylinder_clear_ft()
        how = (
            f"a cylinder keeps {flame:g} ft from flames and {opening:g} ft from openings below its valve; a tank of up "
            f"to {_TANK_GAL:g} gal this far from buildings and boundary; the supplier and local codes decide"
        )
        yield line.part("clear of a tank", tank_clear_ft(_TANK_GAL), "ft", how, "NFPA 58 tables 6.3.1.1 and 6.3.4.3")


def _burners(room: PlacedRoom | None) -> str:
    burning = [(item, demand_mbh([(item, count)])) for item, count in (equipped(room) if room else ())]
    return " + ".join(f"{item} {mbh:g}" for item, mbh in burning if mbh) or "no burner with a usual figure"


def gas_run_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Pipe of one run by the longest length of all that hang on its supply, and of the piece that they may share.

    A run of a later phase counts: what is laid now feeds it then. Runs are counted, and priced, each by itself.
    """
    runs, more = _on_supply_of(line, of), 1 + value("run_fittings")
    longest, needs = max(run.quantity for run in runs) * more, [cfh(gas_demand_mbh(of.placed(run))) for run in runs]
    need = cfh(gas_demand_mbh(of.placed(line)))
    size = pipe_size(need, longest)
    told = f"{need:g} cfh over a longest length of {longest:,.0f} ft, bends counted: {_in(size)}"
    yield line.part(f"gas pipe, {_in(size)}", line.quantity * more, "ft", told, SOURCE)
    if line is runs[0] and len(runs) > 1:
        shared = pipe_size(sum(needs), longest)
        how = f"{' + '.join(f'{each:g}' for each in needs)} cfh over {longest:,.0f} ft: "
        yield line.part("demand where all runs begin as one", sum(needs), "cfh", how + _in(shared), SOURCE)


def _on_supply_of(line: Line, of: Counted) -> list[Line]:
    """Gas runs that begin at the same meter or stub as this one."""
    return [run for run in of.by_item["gas run"] if _gas_start(run, of) == _gas_start(line, of)]


def _gas_start(line: Line, of: Counted) -> Point | None:
    room = of.placed(line)
    return nearest_start(of.derived.site, "gas", room.placement) if room else None


def _in(size: str | None) -> str:
    return f"{size} in" if size else "larger than the table has"


def electric_branch_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Circuits of a room."""
    yield line.part("circuit of 20 A, ground-fault protected", line.quantity, "each", "one for each branch", _TRADE)


def electric_run_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Wire by its voltage drop, and the sleeve where the run passes under paving of ways."""
    length = line.quantity * (1 + value("run_fittings"))
    wire, drop = circuit_wire(length)
    how = (
        f"{length:,.0f} ft one way, bends counted: 2 x {value('copper_k'):g} x {value('circuit_a'):g} A x length / "
        f"circular mils is {drop:.1%} of {value('circuit_v'):g} V; {value('circuit_drop'):.0%} is advised"
    )
    yield line.part(f"cable, {wire}", length, "ft", how, "NEC chapter 9, table 8, and its note on drop; " + _TRADE)
    sleeve = _under_ways_ft(of, line)
    if sleeve:
        how = f"where the run passes under ways, {value('sleeve_beyond_ft'):g} ft more at either end"
        yield line.part("sleeve", sleeve, "ft", how, figure("sleeve_beyond_ft").source)


def water_branch_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Taps and the drain that they need."""
    room = of.placed(line)
    sinks = len(room.items("sink")) if room else 0
    yield line.part(
        "shut-off that drains in frost", line.quantity, "each", f"one a branch; sinks drawn: {sinks}", _TRADE
    )


def water_run_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Pipe with its bends."""
    length = line.quantity * (1 + value("run_fittings"))
    how = f"{line.quantity:,.1f} ft x (1 + {value('run_fittings'):.0%} bends and rises)"
    yield line.part("water pipe", length, "ft", how, figure("run_fittings").source)


def _under_ways_ft(of: Counted, line: Line) -> float:
    """Length of an electric run that lies under ways, along the axes: x first, then y."""
    room = of.placed(line)
    start = nearest_start(of.derived.site, "electric", room.placement) if room else None
    if room is None or start is None:
        return 0.0
    (x, y), there = start, room.placement
    end = (min(max(x, there.x_ft), there.right_ft), min(max(y, there.y_ft), there.top_ft))
    under = float(LineString([(x, y), (end[0], y), end]).intersection(of.derived.paths).length)
    return under + 2 * value("sleeve_beyond_ft") if under > value("sleeve_beyond_ft") / 2 else 0.0
