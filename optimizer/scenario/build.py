"""From a checked file to the site and the brief that the rest of the program knows."""

from collections.abc import Iterator, Mapping
from dataclasses import fields
from decimal import Decimal
from typing import Final

from optimizer.brief import (
    Allowances,
    Brief,
    Budget,
    Choice,
    Guests,
    Hold,
    Later,
    OptionsWanted,
    Relation,
    RoomWish,
    Sketch,
    SketchedRoom,
    SunWish,
    Trip,
    Weights,
)
from optimizer.scenario.existing_build import build_paving, build_wall
from optimizer.scenario.finish_build import build_finish, build_levels
from optimizer.scenario.hold_schema import HoldPart
from optimizer.scenario.machine_schema import MachinePart
from optimizer.scenario.rings import counter_clockwise, outward
from optimizer.scenario.schema import RelationPart, RoomPart, ScenarioPart
from optimizer.scenario.site_checks import edge_names
from optimizer.scenario.site_schema import BuildingPart, EntrancePart, KeepOutPart, SetbackPart, SitePart
from optimizer.scenario.sketch_schema import SketchPart
from optimizer.site import (
    Building,
    Door,
    Entrance,
    KeepOut,
    Machine,
    Place,
    Ring,
    RootRings,
    Setbacks,
    Site,
    SpotLevel,
    Structure,
    Surrounding,
    Tree,
    Utility,
    UtilityLine,
    Window,
    WindRose,
)

_SHARED_EDGE_FT: Final = 3.0
_METRIC_STEP_M: Final = 0.25
_NOTHING: Final = Decimal(0)


def build_site(part: SitePart) -> Site:
    """Site of a checked file, outlines counter-clockwise; edge names and setbacks go with their edges."""
    boundary, names = _boundary(part)
    return Site(
        place=Place(part.latitude, part.longitude, part.time_zone, part.plan_up_bearing),
        boundary=boundary,
        edge_names=names,
        setbacks=tuple(_setbacks(part.setbacks, name) for name in names),
        paved_share_limit=part.limits.paved_share,
        buildings=tuple(_building(building) for building in part.buildings),
        entrances=tuple(_entrance(entrance, boundary) for entrance in part.entrances),
        structures=_structures(part),
        paving=tuple(map(build_paving, part.paving)),
        walls=tuple(map(build_wall, part.walls)),
        trees=_trees(part),
        keep_outs=tuple(_keep_out(item) for item in part.keep_outs),
        utilities=tuple(_starts(part)),
        utility_lines=tuple(_lines(part)),
        surroundings=_surroundings(part),
        levels=tuple(SpotLevel(item.at, item.z) for item in part.levels),
        wind_from_deg=part.wind_from,
        wind_rose=WindRose(part.wind_rose) if part.wind_rose else None,
        distances=tuple(part.distances.items()),
        root_rings=RootRings(part.root_rings.inner, part.root_rings.outer, part.root_rings.paved_share),
        machine=_machine(part.machine_access),
    )


def build_brief(part: ScenarioPart) -> Brief:
    """Brief of a checked file, with what is usual where it says nothing."""
    brief = part.brief
    return Brief(
        guests=Guests(brief.guests.everyday, brief.guests.party),
        rooms=tuple(_room(room) for room in brief.rooms),
        relations=tuple(_relation(relation) for relation in brief.relations),
        trips=tuple(Trip(trip.start, trip.end, trip.count) for trip in brief.trips),
        weights=Weights(**brief.weights.model_dump()),
        budget=_budget(part),
        options=_options(part),
        finish=build_finish(part),
        finish_levels=build_levels(part),
        finish_level=brief.finish.level,
        holds=tuple(_hold(hold) for hold in brief.holds),
    )


def build_sketch(part: SketchPart) -> Sketch:
    """One layout of one's own."""
    rooms = (SketchedRoom(room.room, room.at, room.width, room.depth, room.front, room.choice) for room in part.rooms)
    return Sketch(part.name, tuple(rooms))


def _boundary(part: SitePart) -> tuple[Ring, tuple[str, ...]]:
    """Boundary counter-clockwise from its first corner, and the names of its edges in that order."""
    corners, names = part.boundary.corners, edge_names(part)
    ring = counter_clockwise(corners)
    return ring, names if ring == corners else names[::-1]


def _setbacks(given: Mapping[str, SetbackPart], edge: str) -> Setbacks:
    """Setbacks of one edge: its own values, else those of everywhere, else 0."""
    own, everywhere = given.get(edge, SetbackPart()), given.get("everywhere", SetbackPart())
    values = {
        field.name: next((value for part in (own, everywhere) if (value := getattr(part, field.name)) is not None), 0.0)
        for field in fields(Setbacks)
    }
    return Setbacks(**values)


def _building(part: BuildingPart) -> Building:
    """Build a building whose openings look away from it."""
    ring = counter_clockwise(part.outline)
    doors = tuple(Door(door.name, door.at, door.width, outward(ring, door.at), door.sliding) for door in part.doors)
    windows = tuple(
        Window(window.name, window.at, window.width, outward(ring, window.at), window.sill_z, window.opens)
        for window in part.windows
    )
    return Building(part.name, ring, part.height, part.floor_z, doors, windows)


def _entrance(part: EntrancePart, boundary: Ring) -> Entrance:
    """Entrance that looks into the yard."""
    x, y = outward(boundary, part.at)
    # Subtracting from 0 keeps a zero plain.
    return Entrance(part.name, part.at, part.width, (0.0 - x, 0.0 - y), part.used_by)


def _machine(part: MachinePart | None) -> Machine | None:
    """The builder's smallest machine."""
    return None if part is None else Machine(part.width, part.height, part.turning_radius, part.steepest)


def _keep_out(part: KeepOutPart) -> KeepOut:
    """Kept-out ground."""
    return KeepOut(part.name, counter_clockwise(part.outline), part.allow, part.kind)


def _starts(part: SitePart) -> Iterator[Utility]:
    """Points where runs start; of communications only lines are of interest."""
    for item in part.utilities:
        if item.at is not None and item.kind != "communications":
            yield Utility(item.kind, item.at)


def _lines(part: SitePart) -> Iterator[UtilityLine]:
    """Known lines in the ground."""
    for item in part.utilities:
        if item.line is not None:
            yield UtilityLine(item.name or f"{item.kind} line", item.kind, item.line, item.clear)


def _structures(part: SitePart) -> tuple[Structure, ...]:
    """Existing structures."""
    return tuple(
        Structure(item.name, counter_clockwise(item.outline), item.height, item.shade, item.may_hold)
        for item in part.structures
    )


def _trees(part: SitePart) -> tuple[Tree, ...]:
    """Kept trees."""
    return tuple(
        Tree(item.name, item.at, item.trunk_diameter, item.canopy_radius, item.height, item.evergreen)
        for item in part.trees
    )


def _surroundings(part: SitePart) -> tuple[Surrounding, ...]:
    """Build what shades the yard or looks into it."""
    return tuple(
        Surrounding(
            name=item.name,
            outline=counter_clockwise(item.outline) if item.outline else None,
            line=item.line,
            at=item.at,
            height_ft=item.height,
            eye_z_ft=item.eye_z,
        )
        for item in part.surroundings
    )


def _room(part: RoomPart) -> RoomWish:
    """One wished room."""
    sun = part.sun
    return RoomWish(
        name=part.name,
        kind=part.kind,
        required=part.required,
        phase=part.phase,
        may_wait=part.may_wait,
        choices=tuple(
            Choice(
                item.label, item.width, item.depth, item.seats, item.worth, item.equipment, item.bar_seats, item.water
            )
            for item in part.choices
        ),
        worth=part.worth,
        equipment=part.equipment,
        bar_seats=part.bar_seats,
        seats=part.seats,
        fuel=part.fuel,
        shape=part.shape or "rectangle",
        futures=part.futures,
        interim=part.interim or "lawn",
        water_ft=part.water,
        deck_ft=part.deck,
        sun=SunWish(sun.want, sun.start, sun.end, sun.months, sun.hours, sun.least) if sun else None,
        cover=part.cover,
        screen=part.screen,
        grow=part.grow,
    )


def _relation(part: RelationPart) -> Relation:
    """One relation; what must touch shares 3 ft, and what must be near is near on foot, unless the file says more."""
    shared_ft = part.shared_edge or (_SHARED_EDGE_FT if part.kind == "touching" else None)
    return Relation(
        between=part.between,
        kind=part.kind,
        within_ft=part.within,
        at_least_ft=part.at_least,
        shared_edge_ft=shared_ft,
        by=part.by or ("walking" if part.kind == "near" else "straight"),
        wish=part.wish,
        share=part.share,
        eye=part.eye,
    )


def _hold(part: HoldPart) -> Hold:
    """One hold, its areas counter-clockwise."""
    within, not_in = (None if ring is None else counter_clockwise(ring) for ring in (part.within, part.not_in))
    return Hold(part.room, part.at, within, not_in, part.front, part.choice)


def _budget(part: ScenarioPart) -> Budget:
    """Money, with what is usual where the file says nothing."""
    given = part.budget
    usual = Budget().contingency
    phases = tuple(sorted((int(phase), ceiling) for phase, ceiling in given.phases.items()))
    return Budget(
        ceiling=given.ceiling,
        contingency=usual if given.contingency is None else given.contingency,
        overhead=given.overhead or _NOTHING,
        markup=given.markup or _NOTHING,
        tax=given.tax or _NOTHING,
        later=Later(Decimal(str(given.later.years)), given.later.escalation or _NOTHING),
        allowances=Allowances(given.allowances.appliances == "in", given.allowances.furniture or _NOTHING),
        estimate_class=given.estimate_class,
        phases=phases,
    )


def _options(part: ScenarioPart) -> OptionsWanted:
    """Concepts wanted; a metric yard has a grid of a quarter metre unless the file says more."""
    given = part.options
    usual = OptionsWanted().grid_step if part.units == "ft" else _METRIC_STEP_M
    return OptionsWanted(given.count, given.grid_step or usual, given.seed)
