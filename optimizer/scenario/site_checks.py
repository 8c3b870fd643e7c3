"""What must hold between the parts of a site: outlines that close, walls under doors, a place that exists."""

import datetime as dt
import math
import zoneinfo
from collections.abc import Iterator
from typing import Final, get_args

from optimizer.brief import RoomKind
from optimizer.scenario.complaints import did_you_mean
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.existing_checks import ON_LINE_FT, OVERHANG_FT, existing_complaints
from optimizer.scenario.ground_checks import ground_complaints
from optimizer.scenario.names import room_names
from optimizer.scenario.rings import beyond_ft, distance_ft, outside_ft, point_text, ring_fault
from optimizer.scenario.schema import ScenarioPart
from optimizer.scenario.site_schema import BuildingPart, DoorPart, EntrancePart, SitePart, WindowPart
from optimizer.site import Ring

_ROUNDING_FT: Final = 1e-6
_ZONE_HOURS: Final = 3.0
_WAYS: Final = ("path", "access")


def site_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about the site."""
    site = scenario.site
    yield from _place(site)
    yield from _edges(site)
    faults = tuple(_outlines(site))
    yield from faults
    # Where an outline is no outline, what lies on it or in it cannot be told.
    broken = {complaint.path for complaint in faults}
    yield from _on_the_boundary(site, broken)
    yield from _on_walls(site, broken)
    yield from _surroundings(site)
    yield from _levels(site, broken)
    yield from ground_complaints(site, broken)
    yield from existing_complaints(site, broken)
    yield from _permissions(scenario)


def _place(site: SitePart) -> Iterator[Complaint]:
    """Ask for a time zone that exists and is in use at the longitude."""
    path: Path = ("site", "time_zone")
    try:
        zone = zoneinfo.ZoneInfo(site.time_zone)
    except (zoneinfo.ZoneInfoNotFoundError, ValueError, OSError):
        advice = did_you_mean(site.time_zone, zoneinfo.available_timezones(), "write one such as America/New_York")
        yield Complaint(path, "a time zone that exists", repr(site.time_zone), advice)
        return
    hours = _standard_hours(zone)
    gap = (site.longitude / 15 - hours + 12) % 24 - 12
    if abs(gap) > _ZONE_HOURS:
        found = f"{site.time_zone} (UTC{hours:+.1f}) at longitude {site.longitude:g}"
        advice = "check the sign of the longitude (west is negative) and the time zone"
        yield Complaint(path, f"a time zone within {_ZONE_HOURS:g} h of the longitude", found, advice)


def _standard_hours(zone: zoneinfo.ZoneInfo) -> float:
    """Hours of standard time east of Greenwich."""
    moment = dt.datetime(2025, 1, 1, 12, tzinfo=zone)
    offset = (moment.utcoffset() or dt.timedelta()) - (moment.dst() or dt.timedelta())
    return offset.total_seconds() / 3600


def _edges(site: SitePart) -> Iterator[Complaint]:
    """Ask for a name for each edge where edges are named, and for setbacks of edges that exist."""
    corners, names = len(site.boundary.corners), site.boundary.edges
    if names is not None and len(names) != corners:
        path: Path = ("site", "boundary", "edges")
        yield Complaint(path, f"{corners} edge names, one a corner", f"{len(names)}", "name each edge once")
    known = names if names is not None else edge_names(site)
    for name in site.setbacks:
        if name not in (*known, "everywhere"):
            advice = did_you_mean(name, (*known, "everywhere"), f"the edges are {', '.join(known[:20])}")
            yield Complaint(
                ("site", "setbacks", name), "`everywhere` or an edge's name", repr(name), advice, at_key=True
            )


def edge_names(site: SitePart) -> tuple[str, ...]:
    """Names of the edges: as given, else numbered from 1."""
    return site.boundary.edges or tuple(f"edge {number + 1}" for number in range(len(site.boundary.corners)))


def _outlines(site: SitePart) -> Iterator[Complaint]:
    """Outlines that close without crossing themselves and hold some ground."""
    for path, ring in _rings(site):
        fault = ring_fault(ring)
        if fault:
            advice = "list the corners in order round the outline, each once"
            yield Complaint(path, "an outline that goes round some ground once", fault, advice)


def _rings(site: SitePart) -> Iterator[tuple[Path, Ring]]:
    """Every outline of the site with its path."""
    yield ("site", "boundary", "corners"), site.boundary.corners
    for key in ("buildings", "structures", "paving", "keep_outs", "surroundings"):
        for index, part in enumerate(getattr(site, key)):
            if part.outline is not None:
                yield ("site", key, index, "outline"), part.outline


def _on_the_boundary(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Ask for buildings inside the boundary and entrances on it."""
    if ("site", "boundary", "corners") in broken:
        return
    boundary = site.boundary.corners
    for index, building in enumerate(site.buildings):
        path: Path = ("site", "buildings", index, "outline")
        over_ft = 0.0 if path in broken else outside_ft(building.outline, boundary)
        if over_ft > OVERHANG_FT + _ROUNDING_FT:
            found = f"{building.name} {over_ft:.2f} ft outside"
            yield Complaint(path, "a building inside the boundary", found, "move its corners or the boundary's")
    for index, entrance in enumerate(site.entrances):
        off_ft = distance_ft(boundary, entrance.at)
        if off_ft > ON_LINE_FT + _ROUNDING_FT:
            found = f"{entrance.name} at {point_text(entrance.at)}, {off_ft:.2f} ft away from it"
            advice = "move it onto the boundary"
            yield Complaint(("site", "entrances", index, "at"), "an entrance on the boundary", found, advice)
        else:
            yield from _width(entrance, boundary, ("site", "entrances", index), "the edge of the yard")


def _on_walls(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Doors and windows on a wall of their building."""
    for index, building in enumerate(site.buildings):
        if ("site", "buildings", index, "outline") not in broken:
            yield from _on_walls_of(building, ("site", "buildings", index))


def _on_walls_of(building: BuildingPart, path: Path) -> Iterator[Complaint]:
    """Doors and windows of one building that are off its walls."""
    for key in ("doors", "windows"):
        for index, opening in enumerate(getattr(building, key)):
            off_ft = distance_ft(building.outline, opening.at)
            if off_ft > ON_LINE_FT + _ROUNDING_FT:
                found = f"{opening.name} at {point_text(opening.at)}, {off_ft:.2f} ft away from the nearest wall"
                yield Complaint(
                    (*path, key, index, "at"), f"a place on a wall of {building.name}", found, "move it there"
                )
            else:
                yield from _width(opening, building.outline, (*path, key, index), f"the wall of {building.name}")


def _width(opening: DoorPart | WindowPart | EntrancePart, ring: Ring, path: Path, edge: str) -> Iterator[Complaint]:
    """Openings that are wider than what they stand in, or reach round a corner of it."""
    over_ft = beyond_ft(ring, opening.at, opening.width)
    if over_ft > OVERHANG_FT + _ROUNDING_FT:
        found = f"{opening.name}, {opening.width:.6g} ft wide, reaches {over_ft:.2f} ft past it"
        yield Complaint((*path, "width"), f"an opening within {edge}", found, "make it narrower, or move it")


def _surroundings(site: SitePart) -> Iterator[Complaint]:
    """One of outline, line and at."""
    for index, part in enumerate(site.surroundings):
        given = [key for key in ("outline", "line", "at") if getattr(part, key) is not None]
        if len(given) != 1:
            found = " and ".join(given) or "none of them"
            yield Complaint(("site", "surroundings", index), "one of outline, line and at", found, "keep one")


def _permissions(scenario: ScenarioPart) -> Iterator[Complaint]:
    """Rooms that structures may hold, and kinds that keep-outs allow, that exist."""
    rooms, kinds = room_names(scenario), (*get_args(RoomKind), *_WAYS)
    for index, structure in enumerate(scenario.site.structures):
        for place, name in enumerate(structure.may_hold):
            if name not in rooms:
                path: Path = ("site", "structures", index, "may_hold", place)
                advice = did_you_mean(name, rooms, f"the rooms are {', '.join(sorted(rooms))}")
                yield Complaint(path, "the name of a room", repr(name), advice)
    for index, keep_out in enumerate(scenario.site.keep_outs):
        for place, name in enumerate(keep_out.allow):
            if name not in kinds:
                advice = did_you_mean(name, kinds, "write one of these")
                yield Complaint(("site", "keep_outs", index, "allow", place), ", ".join(kinds), repr(name), advice)


def _levels(site: SitePart, broken: set[Path]) -> Iterator[Complaint]:
    """Levels that are no farther from the yard than it is long: farther ones are of another yard or another unit."""
    if ("site", "boundary", "corners") in broken:
        return
    corners = site.boundary.corners
    xs, ys = zip(*corners, strict=True)
    far_ft = math.hypot(max(xs) - min(xs), max(ys) - min(ys))
    for index, level in enumerate(site.levels):
        off_ft = distance_ft(corners, level.at)
        if off_ft > far_ft:
            found = f"{point_text(level.at)}, {off_ft:.0f} ft outside"
            advice = "check its coordinates and their unit"
            yield Complaint(("site", "levels", index, "at"), "a level in the yard or beside it", found, advice)
