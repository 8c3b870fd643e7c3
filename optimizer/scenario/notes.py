"""What a reader of a scenario should know though nothing is wrong."""

from collections.abc import Iterator
from typing import Final

from shapely import MultiPoint, Point, Polygon

from optimizer.catalogue.heights import DEFAULT_HEIGHT_FT
from optimizer.catalogue.sizing.run import equipment_names
from optimizer.scenario.complaints import did_you_mean
from optimizer.scenario.rings import outside_ft
from optimizer.scenario.scenario import Scenario
from optimizer.site import Site, clear_width_ft, walls_at
from optimizer.units import feet_inches

_TOUCHES_FT: Final = 0.02
_REACHES_FT: Final = 1.0
_LARGEST_FT: Final = {"trunk": 6.0, "crown radius": 80.0, "tree": 300.0, "building": 150.0, "structure": 30.0}
"""Largest in any garden; common practice, no source."""
_NARROWEST_FT: Final = 1.5
"""A body is about 24 in wide, and turns to 18 in; common practice, no source."""
_AFAR_FT: Final = 5.0  # common practice, no source: meters and stubs stand at the house or just inside the boundary


def scenario_notes(scenario: Scenario) -> tuple[str, ...]:
    """Plain sentences: buildings over the boundary, heights taken, runs from afar, what no figure rests on yet."""
    return (
        *_overhangs(scenario),
        *_heights(scenario),
        *_levels(scenario.site),
        *_ground(scenario),
        *_walled_up(scenario.site),
        *_machine(scenario),
        *_equipment(scenario),
        *_unusual(scenario),
        *_not_used_yet(scenario),
    )


def _length(scenario: Scenario, length_ft: float) -> str:
    """Length in the file's unit."""
    return feet_inches(length_ft) if scenario.units == "ft" else f"{length_ft / scenario.unit_ft:.2f} m"


def _overhangs(scenario: Scenario) -> Iterator[str]:
    """Tell of buildings over the boundary by what rounding makes."""
    site = scenario.site
    for building in site.buildings:
        over_ft = outside_ft(building.outline, site.boundary)
        if over_ft > _TOUCHES_FT:
            yield (
                f"{building.name} reaches {_length(scenario, over_ft)} over the boundary; read as rounding, "
                "have it surveyed if it is not"
            )


def _heights(scenario: Scenario) -> Iterator[str]:
    """Tell of things without a height, whose shadows have a usual one, where a room's sun rests on them."""
    if all(room.sun is None for room in scenario.brief.rooms):
        return
    site = scenario.site
    nearby = [(t.name, t.height_ft, "building" if t.outline else "fence") for t in site.surroundings if not t.at]
    things = (
        *((b.name, b.height_ft, "building") for b in site.buildings),
        *((s.name, s.height_ft, "structure") for s in site.structures),
        *((t.name, t.height_ft, "tree") for t in site.trees),
        *((w.name, w.height_ft, w.kind) for w in site.walls),
        *nearby,
    )
    for name, height_ft, kind in things:
        if height_ft is None:
            yield f"{name}: no height given; for its shadow {_length(scenario, DEFAULT_HEIGHT_FT[kind])} is taken"


def _levels(site: Site) -> Iterator[str]:
    """Tell of spot levels outside the yard, and of ground that none of them speaks of."""
    yard, spots = Polygon(site.boundary), MultiPoint([level.at for level in site.levels])
    outside = sum(not yard.buffer(_TOUCHES_FT).covers(Point(level.at)) for level in site.levels)
    if outside:
        yield f"levels: {outside} of {len(site.levels)} lie outside the yard; they count for the ground between them"
    if len(site.levels) == 1:
        yield "levels: one only, so the ground is taken as flat at it; slopes, steps and drainage need more"
    elif site.levels and yard.difference(spots.convex_hull.buffer(_REACHES_FT)).area > _REACHES_FT:
        yield "levels: they do not reach all of the yard; beyond them the ground keeps the height of their nearest edge"


def _ground(scenario: Scenario) -> Iterator[str]:
    """Tell of runs that start outside the yard, and of ways that a septic field would bear."""
    site = scenario.site
    yard = Polygon(site.boundary)
    for start in site.utilities:
        off_ft = yard.distance(Point(start.at))
        if off_ft > _AFAR_FT:
            yield (
                f"{start.kind} starts {off_ft / scenario.unit_ft:.0f} {scenario.units} outside the boundary; runs are "
                "measured from there: give the meter, stub or main in the yard if they start at it"
            )
    for area in site.keep_outs:
        if area.kind == "septic field" and "path" in area.allow:
            yield f"{area.name}: a way over a septic field is kept unpaved, such as mulch or stepping stones"


def _walled_up(site: Site) -> Iterator[str]:
    """Tell of walls that run through an entrance."""
    for entrance in site.entrances:
        for wall in (wall for wall, openings in walls_at(site, entrance) if not openings):
            yield (
                f"{wall.name}: {entrance.name} lies on it and it has no opening there; people come in there, sight and "
                "sun do not: give it an opening, with a gate where there is one"
            )


def _machine(scenario: Scenario) -> Iterator[str]:
    """Tell where not even the builder's smallest machine comes in."""
    machine = scenario.site.machine
    gates = [(gate.name, clear_width_ft(scenario.site, gate)) for gate in scenario.site.machine_entrances]
    if machine and all(width_ft < machine.width_ft for _, width_ft in gates):
        wide = _length(scenario, machine.width_ft)
        names = ", ".join(f"{name} {_length(scenario, width_ft)}" for name, width_ft in gates) or "none"
        yield (
            f"machine_access: no entrance for machines is {wide} wide ({names}); "
            "heavy work is then done by hand or by crane"
        )


def _equipment(scenario: Scenario) -> Iterator[str]:
    """Tell of equipment that the catalogue does not know, which may be a slip of the pen."""
    names = equipment_names()
    for room in scenario.brief.rooms:
        for item in room.all_equipment:
            if item.name.strip().lower() not in names:
                advice = did_you_mean(item.name.lower(), names, f"it knows {', '.join(names)}")
                yield f"{room.name}: the catalogue knows no {item.name!r} and counts it as another appliance; {advice}"


def _unusual(scenario: Scenario) -> Iterator[str]:
    """Tell of sizes past what such things have, which may be of another unit."""
    site = scenario.site
    sizes = (
        *((t.name, "trunk", t.trunk_diameter_ft) for t in site.trees),
        *((t.name, "crown radius", t.canopy_radius_ft) for t in site.trees),
        *((t.name, "tree", t.height_ft) for t in site.trees),
        *((b.name, "building", b.height_ft) for b in site.buildings),
        *((s.name, "structure", s.height_ft) for s in site.structures),
    )
    doors = [(door.name, door.width_ft) for building in site.buildings for door in building.doors]
    for name, width_ft in (*((entrance.name, entrance.width_ft) for entrance in site.entrances), *doors):
        if width_ft < _NARROWEST_FT:
            yield f"{name}: {_length(scenario, width_ft)} is too narrow to walk through; check the unit"
    for name, what, size_ft in sizes:
        if size_ft is not None and size_ft > _LARGEST_FT[what]:
            size = _length(scenario, size_ft)
            yield f"{name}: {size} is more than a {what} of a garden has; check the digits and the unit"


def _not_used_yet(scenario: Scenario) -> Iterator[str]:
    """Tell of what is held for later without a design of its own."""
    if any(len(room.futures) > 1 for room in scenario.brief.rooms):
        yield "futures: the ground held takes any one of them; phase 2 is priced with the dearest of them that fits"
