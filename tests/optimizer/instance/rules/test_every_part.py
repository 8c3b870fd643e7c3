"""Every rule's part of the model is needed: with it taken out, a yard yields layouts that break that rule and no other.

Each yard below tempts the search to break one rule: by trips that pull a room where it may not stand, by a relation
that nothing else brings about, by a room that is not worth its place.
"""

import threading
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import get_args

import pytest

from optimizer.appraisal import appraise
from optimizer.brief import Relation, RuleId, Trip
from optimizer.catalogue import SizedRoom, book_for, sized_rooms
from optimizer.check import check_layout
from optimizer.instance import build_instance
from optimizer.layout import Layout
from optimizer.scenario import Scenario, load_scenario
from optimizer.search import Pool, Tour, board_of, explore, layout_of
from optimizer.site import Entrance
from tests.yards import on_site, plain_rooms, plain_yard, sized

BOOK = book_for("USD")
FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")


@dataclass(frozen=True)
class Tempting:
    """A yard and rooms in which one rule alone stands between the search and a fault."""

    scenario: Scenario = field(default_factory=lambda: plain_yard(ceiling=None))
    rooms: tuple[SizedRoom, ...] = field(default_factory=plain_rooms)


def related(*relations: Relation) -> Tempting:
    return Tempting(plain_yard(*relations, ceiling=None))


def pulled_away(room: str) -> Tempting:
    """The plain yard with a gate far from the kitchen door, and a hundred trips from it to a room."""
    plain = plain_yard(ceiling=None)
    yard = on_site(plain, entrances=(*plain.site.entrances, Entrance("far gate", (60, 36), 5, (-1, 0))))
    return Tempting(replace(yard, brief=replace(yard.brief, trips=(*yard.brief.trips, Trip("far gate", room, 100)))))


def worthless(room: SizedRoom) -> SizedRoom:
    return replace(room, choices=tuple(replace(choice, worth=0.0) for choice in room.choices))


def poor(ceiling: str) -> Tempting:
    budget = replace(FERNHOLLOW.brief.budget, ceiling=Decimal(ceiling))
    return Tempting(replace(FERNHOLLOW, brief=replace(FERNHOLLOW.brief, budget=budget)), sized_rooms(FERNHOLLOW.brief))


TEMPTING: dict[RuleId, Tempting] = {
    "required_rooms": Tempting(rooms=plain_rooms(worthless(sized("table", "gathering", 14, 12, required=True)))),
    "known_choice": Tempting(),
    "proportion": Tempting(rooms=plain_rooms(sized("nook", "nook", 11, 7))),
    "inside_setbacks": related(Relation(("nook", "rear eye"), "near", within_ft=11)),
    "off_buildings": Tempting(),
    "no_overlap": Tempting(),
    "no_slivers": Tempting(),
    "door_zone": Tempting(),
    "clear_of_openings": Tempting(),
    "root_zone": Tempting(),
    "under_structure": Tempting(),
    "keep_outs": Tempting(),
    "fire_clear": Tempting(),
    "kitchen_walk": pulled_away("cooker"),
    "reachable": Tempting(),
    "touching": related(Relation(("nook", "table"), "touching")),
    "near": related(Relation(("nook", "fire"), "near", within_ft=6)),
    "apart": related(Relation(("nook", "table"), "apart", at_least_ft=8)),
    "in_view": related(Relation(("nook", "street eye"), "in_view")),
    "out_of_view": related(Relation(("nook", "rear eye"), "out_of_view")),
    "faces": related(Relation(("cooker", "nook"), "faces")),
    "budget": poor("80000"),
}

# What the model states more loosely than reality, so that its bound holds: ways as the crow flies, ways without their
# cost. There the check has the last word.
LOOSER: set[RuleId] = {"kitchen_walk", "budget"}


def layouts(yard: Tempting, without: frozenset[RuleId]) -> list[Layout]:
    """Layouts that a short search passes, the best of each arrangement."""
    instance = build_instance(yard.scenario, yard.rooms, BOOK, without=without)
    pool = Pool()
    explore(board_of(instance), pool, Tour(40, seed=1), stop=threading.Event())
    return [layout_of(instance, state) for _, state in pool.ranked()]


def broken(yard: Tempting, layout: Layout) -> set[RuleId]:
    """Rules that a layout breaks in reality."""
    cost = appraise(yard.scenario, yard.rooms, BOOK, layout).cost.phase(1)
    return {finding.rule for finding in check_layout(yard.scenario, yard.rooms, layout, phase_1_cost=cost)}


def test_a_yard_for_every_rule():
    """No rule is without a yard that tempts to break it."""
    assert set(TEMPTING) == set(get_args(RuleId))


@pytest.mark.parametrize("rule", TEMPTING)
def test_without_its_part_the_rule_is_broken(rule: RuleId):
    """With the rule's part taken out, some layout breaks that rule and no other."""
    yard = TEMPTING[rule]
    assert {rule} in [broken(yard, layout) for layout in layouts(yard, frozenset({rule}))]


@pytest.mark.parametrize("rule", [rule for rule in TEMPTING if rule not in LOOSER])
def test_with_its_part_the_rule_is_kept(rule: RuleId):
    """With all parts in, the same search finds layouts, and none of them breaks the rule."""
    yard = TEMPTING[rule]
    found = layouts(yard, frozenset())
    assert found
    assert not [layout for layout in found if rule in broken(yard, layout)]
