"""For every rule a layout that breaks it and only it, made by one change to a layout that keeps them all."""

from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import get_args

import pytest

from optimizer.brief import Hold, Relation, RuleId, SunWish
from optimizer.catalogue import SizedRoom
from optimizer.check import CHECKS, CheckCase, check_layout, first_findings
from optimizer.derived import Derived
from optimizer.layout import Layout, placed_of
from optimizer.site import KeepOut, Paving, RootRings, SpotLevel, Utility, UtilityLine, Wall
from tests.yards import (
    FOUR_AT_TABLE,
    KEPT_RELATIONS,
    PLAIN_SITE,
    TWELVE_ON_SOFAS,
    bathing,
    cornered,
    holding,
    laid_table,
    on_site,
    plain_layout,
    plain_rooms,
    plain_yard,
    seating,
    sized,
    stand,
)


@dataclass(frozen=True)
class Broken:
    """A layout with what it needs to break one rule, for which these are to blame."""

    between: tuple[str, ...]
    layout: Layout = field(default_factory=plain_layout)
    rooms: tuple[SizedRoom, ...] = field(default_factory=plain_rooms)
    relations: tuple[Relation, ...] = ()
    holds: tuple[Hold, ...] = ()
    cost: str = "1000"
    later: str = "500"
    site: dict[str, object] = field(default_factory=dict)


def relation(broken: Relation) -> Broken:
    return Broken(broken.between, relations=(broken,))


def levels(*spots: tuple[float, float, float]) -> tuple[SpotLevel, ...]:
    return tuple(SpotLevel((x, y), z) for x, y, z in spots)


NOOK_LATER = tuple(replace(room, phase=2) if room.name == "nook" else room for room in plain_rooms())
NOOK_WAITS = tuple(
    replace(room, choices=(replace(room.choices[0], prepares="whole", phase=2),)) if room.name == "nook" else room
    for room in plain_rooms()
)
FIELD = KeepOut("field", ((28, 39), (36, 39), (36, 40), (28, 40)), ("nook",), "septic field")

BROKEN: dict[RuleId, Broken] = {
    "required_rooms": Broken(("table",), plain_layout(without=("table",))),
    "known_choice": Broken(("nook",), plain_layout(stand("nook", 28, 31, 9.5, 7))),
    "held": Broken(("nook",), holds=(Hold("nook", at_ft=(28, 32)),)),
    "proportion": Broken(
        ("nook",), plain_layout(stand("nook", 28, 31, 11, 7)), plain_rooms(sized("nook", "nook", 11, 7))
    ),
    "inside_setbacks": Broken(("nook", "rear"), plain_layout(stand("nook", 28, 32, 8, 7))),
    "off_buildings": Broken(("nook", "house"), plain_layout(stand("nook", 44, 7, 8, 7))),
    "off_walls": Broken(
        ("nook", "garden wall"), site={"walls": (Wall("garden wall", ((30, 31), (30, 40)), "wall", height_ft=2),)}
    ),
    "no_overlap": Broken(("table", "nook"), plain_layout(stand("nook", 26, 27, 8, 7))),
    "no_slivers": Broken(("table", "nook"), plain_layout(stand("nook", 28, 30, 8, 7))),
    "door_zone": Broken(("table", "kitchen door"), plain_layout(stand("table", 20, 16, 14, 12), without=("fire",))),
    "clear_of_openings": Broken(("cooker", "bath window"), plain_layout(stand("cooker", 38, 16, 6, 8, "-x"))),
    "root_zone": Broken(("nook", "oak"), plain_layout(stand("nook", 8, 31, 8, 7), without=("fire",))),
    "root_ring": Broken(("fire", "oak"), site={"root_rings": RootRings(paved_share=0.08)}),
    "under_structure": Broken(("nook", "old roof"), plain_layout(stand("nook", 45, 30, 8, 7))),
    "keep_outs": Broken(("nook", "drain strip"), plain_layout(stand("nook", 50, 20, 8, 7))),
    "kept_paving": Broken(
        ("nook", "old walk"),
        site={"paving": (Paving("old walk", ((28, 36), (36, 36), (36, 40), (28, 40)), "brick", "keep"),)},
    ),
    "utility_lines": Broken(
        ("nook", "gas main"), site={"utility_lines": (UtilityLine("gas main", "gas", ((0, 39), (44, 39))),)}
    ),
    "septic": Broken(("nook", "field"), site={"keep_outs": (*PLAIN_SITE.keep_outs, FIELD)}),
    "water_clear": Broken(
        ("pool", "oak"),
        Layout((stand("pool", 12, 22, 18, 16, "+x"),)),
        plain_rooms(sized("table", "gathering", 14, 12), bathing("pool")),
        site={"root_rings": RootRings(paved_share=1.0)},
    ),
    "paved_share": Broken((), site={"paved_share_limit": 0.2}),
    "fire_clear": Broken(("fire", "house"), rooms=plain_rooms(sized("fire", "fire", 8, 8, fuel="wood"))),
    "sun_least": Broken(
        ("nook",), rooms=plain_rooms(sized("nook", "nook", 8, 7, sun=SunWish("shade", 12, 14, (6,), least_hours=1)))
    ),
    "kitchen_walk": Broken(("cooker", "kitchen door"), plain_layout(stand("cooker", 46, 17, 6, 8, "-x"))),
    "reachable": Broken(
        ("cooker", "nook"), plain_layout(stand("cooker", 45, 18, 6, 8, "-x"), stand("nook", 38, 18, 7, 8))
    ),
    # A table from the house to a wall, across the only way from the kitchen door to the cooker.
    "ways_clear": Broken(
        ("kitchen door", "cooker", "table"),
        plain_layout(stand("table", 23, 12, 15, 14), without=("nook",)),
        plain_rooms(laid_table("table", 15, 14)),
        site={"keep_outs": (*PLAIN_SITE.keep_outs, KeepOut("wall", ((23, 26), (38, 26), (38, 40), (23, 40))))},
    ),
    # The same with a foot more to the wall: room for people past the table, none for a mower to the lawn beyond it.
    "mown": Broken(
        ("grass", "table"),
        plain_layout(stand("table", 23, 12, 15, 14), stand("grass", 41, 18, 9, 12), without=("nook", "cooker")),
        plain_rooms(laid_table("table", 15, 14), sized("grass", "lawn", 9, 12)),
        site={"keep_outs": (*PLAIN_SITE.keep_outs, KeepOut("wall", ((23, 27), (38, 27), (38, 40), (23, 40))))},
    ),
    "touching": relation(Relation(("nook", "table"), "touching")),
    "near": relation(Relation(("nook", "fire"), "near", within_ft=10)),
    "apart": relation(Relation(("nook", "table"), "apart", at_least_ft=3.5)),
    "in_view": relation(Relation(("nook", "street eye"), "in_view")),
    "out_of_view": relation(Relation(("nook", "rear eye"), "out_of_view")),
    "faces": relation(Relation(("cooker", "nook"), "faces")),
    # One floor, a foot above the lawn at the house and five at the rear: steps on the way.
    "cook_looks_at_table": Broken(
        ("cooker", "table"), plain_layout(stand("table", 23, 16, 14, 12), stand("cooker", 37, 18, 8, 6, "-y"))
    ),
    "accessible": Broken(
        ("kitchen door", "nook", "table"),
        relations=(Relation(("kitchen door", "nook"), "accessible"),),
        site={
            "levels": levels((0, 12, 0.9), (60, 12, 0.9), (0, 40, -3), (60, 40, -3)),
            "utilities": (Utility("drain", (40, 40)),),
        },
    ),
    # A bowl: the ground rises to the rear all round the nook.
    "drains": Broken(
        ("nook",),
        plain_layout(without=("table", "fire", "cooker")),
        plain_rooms(sized("table", "gathering", 14, 12)),
        site={"levels": levels((0, 0, 5), (60, 0, 5), (60, 40, 5), (0, 40, 5), (32, 34.5, 0))},
    ),
    # A chair 2 1/2 ft beside the steps from the door to the ground.
    "steps_clear": Broken(("table", "kitchen door"), rooms=plain_rooms(cornered("table", "gathering", 14, 12))),
    "kitchen_level": Broken(
        ("cooker", "kitchen door", "table"),
        site={
            "levels": levels((0, 12, 0.9), (60, 12, 0.9), (0, 40, -5), (60, 40, -5)),
            "utilities": (Utility("drain", (40, 40)),),
        },
    ),
    "everyday_table": Broken((), rooms=plain_rooms(seating("table", "gathering", 14, 12, *FOUR_AT_TABLE))),
    "party_seats": Broken((), rooms=plain_rooms(seating("table", "gathering", 14, 12, *TWELVE_ON_SOFAS))),
    "budget": Broken((), cost="1000.01"),
    "later_phases": Broken(("nook",), rooms=NOOK_LATER, later="500.01"),
    "phases": Broken(("nook",), rooms=NOOK_WAITS),
}


def test_one_check_for_each_rule():
    """The registry has every rule of the brief, and no other."""
    assert set(CHECKS) == set(get_args(RuleId)) == set(BROKEN)


def test_a_layout_that_keeps_every_rule():
    """The layout that all others are made from has no finding, with a relation of each kind that it keeps."""
    assert (
        check_layout(plain_yard(*KEPT_RELATIONS), placed_of(plain_rooms(), plain_layout()), phase_1_cost=Decimal(1000))
        == ()
    )


@pytest.mark.parametrize("rule", BROKEN)
def test_a_layout_that_breaks_only_one_rule(rule: RuleId):
    """The changed layout breaks its rule, between the ends that were changed, and no other rule, by stages too."""
    broken = BROKEN[rule]
    scenario = holding(on_site(plain_yard(*broken.relations), **broken.site), *broken.holds)
    budget = replace(scenario.brief.budget, phases=((2, Decimal(500)),))
    scenario = replace(scenario, brief=replace(scenario.brief, budget=budget))
    costs = {1: Decimal(broken.cost), 2: Decimal(broken.later)}
    placed = placed_of(broken.rooms, broken.layout)
    findings = check_layout(scenario, placed, phase_1_cost=costs[1], later_costs={2: costs[2]})
    assert findings == first_findings(CheckCase(Derived(scenario, placed), costs.get))
    assert {finding.rule for finding in findings} == {rule}
    assert findings[0].rooms == broken.between
    assert findings[0].amount > 0
    assert findings[0].words
    assert findings[0].unit
