"""Which idea a layout follows, by facts of its geometry, levels, structures and axes: no opinion, no search.

Where the table lies tells first: at water, under a roof, beside the house, out in the garden. For a table at the house
it is what ties the rest to it: one line, steps down, a room out in the garden, or nothing but being close. Under a
roof, beside the house and out in the garden both tell: every good plan may have its table under the roof at the door.
"""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
from shapely import Polygon

from optimizer.appraisal import Appraisal, main_table
from optimizer.brief import RoomKind
from optimizer.catalogue import AIM_KINDS, AWAY_KINDS, IDEAS, TIES, IdeaName, Tie, idea_rules
from optimizer.fields import beside_house, main_openings, on_axis, site_shapes
from optimizer.fields.roofs import least_covered_sqft
from optimizer.fields.terraces import garden_doors
from optimizer.layout import Placed, PlacedRoom
from optimizer.scenario import Scenario
from optimizer.site import Door, Point, Structure, Window

COOKING_KINDS: Final[tuple[RoomKind, ...]] = ("kitchen",)


@dataclass(frozen=True)
class Plan:
    """A layout as ideas are asked of it: what stands where, and its exact figures. Distances in feet, to hundredths."""

    scenario: Scenario
    placed: Placed
    appraisal: Appraisal

    @cached_property
    def table(self) -> PlacedRoom | None:
        """The room of the everyday table."""
        return main_table(self.placed)

    @cached_property
    def others(self) -> tuple[PlacedRoom, ...]:
        """Further rooms that people cook or sit in."""
        return tuple(room for room in self.placed.of_kind(*COOKING_KINDS, *AWAY_KINDS))

    def off_house_ft(self, room: PlacedRoom) -> float | None:
        """Distance from the nearest house; None where there is none."""
        shapes = site_shapes(self.scenario.site).houses
        return min((_apart_ft(room.shape, shape) for shape in shapes), default=None)

    def is_at_house(self, room: PlacedRoom) -> bool:
        """Whether only a landing with its steps has place between a room and the house."""
        off_ft = self.off_house_ft(room)
        return off_ft is not None and off_ft <= idea_rules().at_house_ft

    def is_in_garden(self, room: PlacedRoom) -> bool:
        """Whether a room lies clearly away from the house; where there is no house nothing does."""
        off_ft = self.off_house_ft(room)
        return off_ft is not None and off_ft >= idea_rules().in_garden_ft

    def from_table_ft(self, room: PlacedRoom) -> float:
        """Distance of a room from the table's."""
        assert self.table is not None
        return _apart_ft(room.shape, self.table.shape)

    @cached_property
    def roofed(self) -> tuple[tuple[PlacedRoom, Structure], ...]:
        """Table and kitchens under an existing structure, with it."""
        site = self.scenario.site
        roofs = list(zip(site.structures, site_shapes(site).structures, strict=True))
        cooked = (room for room in self.others if room.kind in COOKING_KINDS)
        rooms = [room for room in (self.table, *cooked) if room is not None]
        return tuple(
            (room, structure)
            for room in rooms
            for structure, roof in roofs
            if round(roof.intersection(room.shape).area - least_covered_sqft(structure, room.shape.area), 2) >= 0
        )

    @cached_property
    def by_water(self) -> tuple[PlacedRoom, tuple[PlacedRoom, ...]] | None:
        """A pool, of those that are built now, with the table and further rooms near its water's edge."""
        for pool in self.placed.of_kind("pool"):
            rooms = [room for room in (self.table, *self.others) if room is not None]
            near = [room for room in rooms if _apart_ft(room.shape, pool.water) <= idea_rules().court_ft]
            if pool.phase == 1 and self.table in near and len(near) > 1:
                return pool, tuple(near)
        return None

    @cached_property
    def garden_door(self) -> Door | None:
        """The door that most trips lead through."""
        return next(iter(garden_doors(self.scenario.site, self.scenario.brief)), None)

    @cached_property
    def axis(self) -> tuple[Door | Window, str] | None:
        """The main door or window whose centre line meets the table, and what else in the garden it meets."""
        if self.table is None:
            return None
        aims = [(room.name, room.heart) for room in self.placed.of_kind(*AIM_KINDS)]
        aims += [(tree.name, tree.at) for tree in self.scenario.site.trees]
        for opening in main_openings(self.scenario.site):
            met = next((name for name, at in aims if _meets(opening, at)), None)
            if met is not None and _meets(opening, self.table.centre):
                return opening, met
        return None

    @cached_property
    def terraces(self) -> tuple[PlacedRoom, ...]:
        """The table's room and those below it, each a clear step lower than the one before; empty on unknown ground."""
        ground = self.appraisal.site.ground
        levels = dict(ground.levels) if ground else {}
        if self.table is None or self.table.name not in levels:
            return ()
        down = [self.table]
        known = (room for room in self.others if room.name in levels)
        for room in sorted(known, key=lambda room: -levels[room.name]):
            if round(levels[down[-1].name] - levels[room.name], 2) >= idea_rules().step_down_ft:
                down.append(room)
        return tuple(down)

    @cached_property
    def away(self) -> tuple[PlacedRoom, ...]:
        """Rooms to sit in beside the table."""
        return tuple(room for room in self.others if room.kind in AWAY_KINDS)

    @cached_property
    def garden_rooms(self) -> tuple[PlacedRoom, ...]:
        """Rooms to sit in that lie out in the garden, apart from the table."""
        away = (room for room in self.away if self.is_in_garden(room))
        return tuple(room for room in away if self.from_table_ft(room) >= idea_rules().apart_ft)


def idea_name(plan: Plan) -> IdeaName | None:
    """The most telling idea that a layout follows; None for none.

    None has one whose everyday table is far from the kitchen door, or many steps from it (layout rule 30).
    """
    if plan.table is None or not _is_handy(plan.appraisal):
        return None
    return next((name for name in IDEAS if TESTS[name](plan)), None)


def tie_of(plan: Plan, idea: IdeaName) -> Tie | None:
    """What ties the rest to the table where the table's place is the idea; None where nothing does."""
    return next((tie for tie in TIES if TIE_TESTS[tie](plan)), None) if idea in TIED else None


def _is_handy(appraisal: Appraisal) -> bool:
    """Whether the everyday table is near to the kitchen door, as far as that is known."""
    way, rules = appraisal.table, idea_rules()
    if way is None:
        return True
    near = way.on_foot_ft is None or way.on_foot_ft <= rules.table_walk_ft
    return near and (way.risers is None or way.risers <= rules.table_risers)


def _is_round_water(plan: Plan) -> bool:
    return plan.by_water is not None


def _is_under_roof(plan: Plan) -> bool:
    return bool(plan.roofed)


def _is_beside_house(plan: Plan) -> bool:
    assert plan.table is not None
    if plan.garden_door is None or not plan.is_at_house(plan.table):
        return False
    x, y = plan.table.centre
    return bool(beside_house(plan.scenario.site, plan.garden_door, np.array(x), np.array(y)))


def _is_in_garden(plan: Plan) -> bool:
    assert plan.table is not None
    return plan.is_in_garden(plan.table)


def _is_on_axis(plan: Plan) -> bool:
    return _is_at_house(plan) and plan.axis is not None


def _steps_down(plan: Plan) -> bool:
    return len(plan.terraces) >= idea_rules().levels


def _has_garden_room(plan: Plan) -> bool:
    return bool(plan.garden_rooms)


def _is_one_court(plan: Plan) -> bool:
    near = [plan.from_table_ft(room) <= idea_rules().court_ft for room in plan.others]
    return bool(near) and all(near)


def _at_house(tied: Callable[[Plan], bool]) -> Callable[[Plan], bool]:
    return lambda plan: _is_at_house(plan) and tied(plan)


def _is_in_a_row(plan: Plan) -> bool:
    return _is_at_house(plan) and bool(plan.others) and all(map(plan.is_at_house, plan.others))


def _is_at_house(plan: Plan) -> bool:
    assert plan.table is not None
    return plan.is_at_house(plan.table)


def _apart_ft(one: Polygon, other: Polygon) -> float:
    return round(float(one.distance(other)), 2)


def _meets(opening: Door | Window, at: Point) -> bool:
    return bool(on_axis(opening, np.array(at[0]), np.array(at[1])))


TESTS: Final[dict[IdeaName, Callable[[Plan], bool]]] = {
    "round the water": _is_round_water,
    "under the old roof": _is_under_roof,
    "beside the house": _is_beside_house,
    "out in the garden": _is_in_garden,
    "along one axis": _is_on_axis,
    "stepping down": _at_house(_steps_down),
    "a court and a garden room": _at_house(_has_garden_room),
    "one court at the house": _at_house(_is_one_court),
    "in a row along the house": _is_in_a_row,
}
"""Of a layout with a table: what makes each idea."""
TIED: Final[frozenset[IdeaName]] = frozenset({"under the old roof", "beside the house", "out in the garden"})
TIE_TESTS: Final[dict[Tie, Callable[[Plan], bool]]] = {
    "stepping down": _steps_down,
    "with a garden room": _has_garden_room,
    "in one court": lambda plan: bool(plan.away) and _is_one_court(plan),
}
