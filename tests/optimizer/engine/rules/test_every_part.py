"""Every rule's part of the model is needed: with it taken out, a yard yields layouts that break that rule and no other.

Each yard below tempts the search to break one rule: by trips that pull a room where it may not stand, by a relation
that nothing else brings about, by a room that is not worth its place.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from decimal import Decimal
from functools import cache
from typing import get_args

import pytest

from optimizer.appraisal import appraise
from optimizer.brief import Hold, Relation, RuleId, SunWish, Trip
from optimizer.catalogue import Quantity, SizedRoom, book_for, sized_rooms
from optimizer.check import CHECKS, CheckCase, all_findings, check_layout
from optimizer.derived import Derived
from optimizer.engine.problem import layout_of
from optimizer.layout import Layout, placed_of
from optimizer.scenario import Scenario, load_scenario
from optimizer.site import Entrance, KeepOut, Paving, RootRings, SpotLevel, Utility, UtilityLine, Wall, WallOpening
from tests.explored import explored, states
from tests.yards import (
    FOUR_AT_TABLE,
    PLAIN_SITE,
    TWELVE_ON_SOFAS,
    bathing,
    cornered,
    holding,
    laid_table,
    on_site,
    plain_rooms,
    plain_yard,
    seating,
    sized,
)

BOOK = book_for("USD")
FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")


@dataclass(frozen=True)
class Tempting:
    """A yard and rooms in which one rule alone stands between the search and a fault."""

    scenario: Scenario = field(default_factory=lambda: plain_yard(ceiling=None))
    rooms: tuple[SizedRoom, ...] = field(default_factory=plain_rooms)


def related(*relations: Relation) -> Tempting:
    return Tempting(plain_yard(*relations, ceiling=None))


def on_ground(**changes: object) -> Tempting:
    """The plain yard with parts of its site replaced."""
    return Tempting(on_site(plain_yard(ceiling=None), **changes))


def pulled_away(room: str) -> Tempting:
    """The plain yard with a gate far from the kitchen door, and a hundred trips from it to a room."""
    plain = plain_yard(ceiling=None)
    yard = on_site(plain, entrances=(*plain.site.entrances, Entrance("far gate", (60, 36), 5, (-1, 0))))
    return Tempting(replace(yard, brief=replace(yard.brief, trips=(*yard.brief.trips, Trip("far gate", room, 100)))))


def shaded_at_the_door() -> Tempting:
    """A nook that is often walked to from the kitchen door, in the house's shadow in February, and must have sun."""
    plain = plain_yard(ceiling=None)
    nook = sized("nook", "nook", 8, 7, sun=SunWish("sun", 11, 14, (2,), least_hours=2.5))
    trips = (*plain.brief.trips, Trip("kitchen door", "nook", 100))
    return Tempting(replace(plain, brief=replace(plain.brief, trips=trips)), plain_rooms(nook))


def before_the_gate() -> Tempting:
    """A nook to which a hundred trips lead from the gate: nearest of all it stands in the gate's way."""
    plain = plain_yard(ceiling=None)
    trips = (*plain.brief.trips, Trip("gate", "nook", 100))
    return Tempting(replace(plain, brief=replace(plain.brief, trips=trips)))


def table_in_the_way() -> Tempting:
    """A table that may stand in one place only, from the house to a wall, with the cooker to be had beyond it."""
    others = ("path", "access", "kitchen", "fire", "nook")
    keep_outs = (
        KeepOut("wall", ((23, 26), (38, 26), (38, 40), (23, 40))),
        KeepOut("west", ((0, 0), (23, 0), (23, 40), (0, 40)), allow=others),
        KeepOut("east", ((38, 0), (60, 0), (60, 40), (38, 40)), allow=others),
    )
    return Tempting(on_site(plain_yard(ceiling=None), keep_outs=keep_outs), plain_rooms(laid_table("table", 15, 14)))


def lawn_past_a_table() -> Tempting:
    """The same with a foot more to the wall, so that people pass the table, and a lawn to be had beyond it only."""
    others = ("path", "access", "kitchen", "fire", "nook")
    keep_outs = (
        KeepOut("wall", ((23, 27), (38, 27), (38, 40), (23, 40))),
        KeepOut("west", ((0, 0), (23, 0), (23, 40), (0, 40)), allow=others),
        KeepOut("east", ((38, 0), (60, 0), (60, 40), (38, 40)), allow=(*others, "lawn")),
    )
    rooms = plain_rooms(laid_table("table", 15, 14), sized("grass", "lawn", 9, 12, required=True))
    return Tempting(on_site(plain_yard(ceiling=None), keep_outs=keep_outs), rooms)


def beside_a_tree() -> Tempting:
    """A pool to which a hundred trips lead from the gate, past a tree in whose ring one may pave but not dig."""
    yard = on_site(plain_yard(ceiling=None), root_rings=RootRings(outer=25, paved_share=1.0))
    trips = (*yard.brief.trips, Trip("gate", "pool", 100))
    return Tempting(replace(yard, brief=replace(yard.brief, trips=trips)), plain_rooms(bathing("pool", required=True)))


def worthless(room: SizedRoom) -> SizedRoom:
    return replace(room, choices=tuple(replace(choice, worth=0.0) for choice in room.choices))


def dear_later() -> Tempting:
    """A nook of a later phase whose ceiling has money for its ways, but not for the choice that is worth most."""
    nook = sized("nook", "nook", 8, 7)
    dear = replace(nook.choices[0], label="dear", worth=20.0, quantities=(Quantity("plain paving", 5000),))
    plain = plain_yard(ceiling=None)
    budget = replace(plain.brief.budget, phases=((2, Decimal(60000)),))
    rooms = plain_rooms(replace(nook, phase=2, choices=(*nook.choices, dear)))
    return Tempting(replace(plain, brief=replace(plain.brief, budget=budget)), rooms)


def waiting() -> Tempting:
    """A nook that is worth most in a phase of its own, for which no builder comes."""
    nook = sized("nook", "nook", 8, 7)
    later = replace(nook.choices[0], label="plain, in phase 2", worth=20.0, prepares="plain", phase=2)
    paved = (Quantity("plain paving", 56, phase=2),)
    return Tempting(rooms=plain_rooms(replace(nook, choices=(replace(later, quantities=paved), *nook.choices))))


def poor(ceiling: str) -> Tempting:
    return Tempting(with_budget(ceiling=Decimal(ceiling)), sized_rooms(FERNHOLLOW.brief))


def with_budget(**changes: object) -> Scenario:
    """The demonstration yard with other money."""
    budget = replace(FERNHOLLOW.brief.budget, **changes)  # type: ignore[arg-type]
    return replace(FERNHOLLOW, brief=replace(FERNHOLLOW.brief, budget=budget))


SLOPE = tuple(SpotLevel(at, z) for at, z in (((0, 12), 0.9), ((60, 12), 0.9), ((0, 40), -3.0), ((60, 40), -3.0)))
STEEP = tuple(SpotLevel(at, z) for at, z in (((0, 12), 0.9), ((60, 12), 0.9), ((0, 40), -6.0), ((60, 40), -6.0)))
DRAINS = tuple(Utility("drain", (x, 40)) for x in (0, 20, 40, 60))
BOWL = (*(SpotLevel((x, y), 4.0) for x in (0, 60) for y in (0, 40)), SpotLevel((31, 32), 0.0))
OPEN = tuple(WallOpening((x, 27), 8) for x in range(5, 56, 9))
FIELD = KeepOut("field", ((20, 38), (30, 38), (30, 40), (20, 40)), kind="septic field")

TEMPTING: dict[RuleId, Tempting] = {
    "required_rooms": Tempting(rooms=plain_rooms(worthless(sized("table", "gathering", 14, 12, required=True)))),
    "known_choice": Tempting(),
    "held": Tempting(holding(plain_yard(ceiling=None), Hold("nook", at_ft=(28, 31)))),
    "proportion": Tempting(rooms=plain_rooms(sized("nook", "nook", 11, 7))),
    "inside_setbacks": related(Relation(("nook", "rear eye"), "near", within_ft=11)),
    "off_buildings": Tempting(),
    "off_walls": on_ground(walls=(Wall("garden wall", ((0, 27), (56, 27)), "hedge", 2, OPEN),)),
    "no_overlap": Tempting(),
    "no_slivers": Tempting(),
    "door_zone": Tempting(),
    "clear_of_openings": Tempting(),
    "root_zone": Tempting(),
    "root_ring": on_ground(root_rings=RootRings(paved_share=0.02)),
    "under_structure": Tempting(),
    "keep_outs": pulled_away("nook"),
    "kept_paving": on_ground(paving=(Paving("yard", ((22, 20), (42, 20), (42, 32), (22, 32)), "brick", "keep"),)),
    "utility_lines": on_ground(utility_lines=(UtilityLine("gas main", "gas", ((0, 30), (56, 30))),)),
    "septic": on_ground(keep_outs=(*PLAIN_SITE.keep_outs, FIELD)),
    "water_clear": beside_a_tree(),
    "paved_share": on_ground(paved_share_limit=0.22),
    "fire_clear": Tempting(),
    "sun_least": shaded_at_the_door(),
    "kitchen_walk": pulled_away("cooker"),
    "reachable": before_the_gate(),
    "ways_clear": table_in_the_way(),
    "mown": lawn_past_a_table(),
    "touching": related(Relation(("nook", "table"), "touching")),
    "near": related(Relation(("nook", "fire"), "near", within_ft=6)),
    "apart": related(Relation(("nook", "table"), "apart", at_least_ft=8)),
    "in_view": related(Relation(("nook", "street eye"), "in_view")),
    "out_of_view": related(Relation(("nook", "rear eye"), "out_of_view")),
    "faces": related(Relation(("cooker", "nook"), "faces")),
    "cook_looks_at_table": Tempting(),
    "accessible": Tempting(
        on_site(
            plain_yard(Relation(("kitchen door", "nook"), "accessible"), ceiling=None), levels=SLOPE, utilities=DRAINS
        )
    ),
    "drains": on_ground(levels=BOWL),
    "steps_clear": Tempting(rooms=plain_rooms(cornered("table", "gathering", 14, 12))),
    "kitchen_level": on_ground(levels=STEEP, utilities=DRAINS),
    "everyday_table": Tempting(rooms=plain_rooms(seating("table", "gathering", 14, 12, *FOUR_AT_TABLE))),
    "party_seats": Tempting(rooms=plain_rooms(seating("table", "gathering", 14, 12, *TWELVE_ON_SOFAS))),
    "budget": poor("80000"),
    "later_phases": dear_later(),
    "phases": waiting(),
}

# What the model states more loosely than reality, so that its bound holds: ways as the crow flies, ways without their
# cost and their paving, levels not at all: for `accessible`, `drains`,
# `steps_clear`, `kitchen_level`, `mown`, `ways_clear` and `phases`, which have no part, the test above says only that the search does meet layouts that the judge must refuse.
LOOSER: set[RuleId] = {
    "kitchen_walk",
    "budget",
    "paved_share",
    "accessible",
    "drains",
    "ways_clear",
    "mown",
    "steps_clear",
    "kitchen_level",
    "phases",
}


@cache
def kept_layouts(yard: Tempting) -> tuple[Layout, ...]:
    """What a short search with all parts passes: many rules ask for the same yard's."""
    return tuple(layouts(yard, frozenset()))


def layouts(yard: Tempting, without: frozenset[RuleId]) -> Iterator[Layout]:
    """Layouts that a short search passes, the best of each arrangement."""
    # Order draws rooms to the house's lines, to what tempts them or away from it: both are looked at.
    for order in (1.0, 0.0):
        brief = replace(yard.scenario.brief, weights=replace(yard.scenario.brief.weights, order=order))
        explorer = explored(replace(yard.scenario, brief=brief), yard.rooms, without=without)
        yield from (layout_of(explorer.board.problem, state) for state in states(explorer))


def reality(yard: Tempting, layout: Layout) -> CheckCase:
    """A layout for the check in real geometry, priced when a rule asks for money."""
    derived = Derived(yard.scenario, placed_of(yard.rooms, layout))
    cost = cache(lambda: appraise(derived, BOOK).cost)
    return CheckCase(derived, price=lambda phase: cost().phase(phase))


def breaks(case: CheckCase, rule: RuleId) -> bool:
    """Whether a layout breaks a rule."""
    return any(True for _ in CHECKS[rule](case))


def breaks_alone(case: CheckCase, rule: RuleId) -> bool:
    """Whether it breaks that rule and no other."""
    return breaks(case, rule) and {finding.rule for finding in all_findings(case)} == {rule}


def test_a_yard_for_every_rule():
    """No rule is without a yard that tempts to break it."""
    assert set(TEMPTING) == set(get_args(RuleId))


@pytest.mark.parametrize("rule", TEMPTING)
def test_without_its_part_the_rule_is_broken(rule: RuleId):
    """With the rule's part taken out, some layout breaks that rule and no other."""
    yard = TEMPTING[rule]
    assert any(breaks_alone(reality(yard, layout), rule) for layout in layouts(yard, frozenset({rule})))


@pytest.mark.parametrize("rule", [rule for rule in TEMPTING if rule not in LOOSER])
def test_with_its_part_the_rule_is_kept(rule: RuleId):
    """With all parts in, the same search finds layouts, and none of them breaks the rule."""
    yard = TEMPTING[rule]
    found = kept_layouts(yard)
    assert found
    assert not [layout for layout in found if breaks(reality(yard, layout), rule)]


def table_past_a_bank() -> Tempting:
    """A hundred trips from the kitchen door to a table that may stand 2 ft before its steps, but no nearer."""
    plain = plain_yard(ceiling=None)
    bank = KeepOut("bank", ((0, 17), (60, 17), (60, 19), (0, 19)), allow=("path", "access", "kitchen", "fire", "nook"))
    yard = on_site(plain, keep_outs=(*plain.site.keep_outs, bank))
    brief = replace(plain.brief, trips=(Trip("kitchen door", "table", 100),))
    return Tempting(replace(yard, brief=brief), (sized("table", "gathering", 14, 12, required=True),))


def beside_landings(without: frozenset[RuleId]) -> list[set[tuple[str, bool]]]:
    """Of each layout that a search past the bank gives the rules it breaks, and whether at the kitchen door."""
    yard = table_past_a_bank()
    findings = [check_layout(yard.scenario, placed_of(yard.rooms, layout)) for layout in layouts(yard, without)]
    return [{(finding.rule, "kitchen door" in finding.rooms) for finding in found} for found in findings]


def test_a_strip_before_a_landing_tempts_too():
    """Of what `no_slivers` speaks of, a landing alone brings about a fault, and no layout has it with the part in."""
    assert {("no_slivers", True)} in beside_landings(frozenset({"no_slivers"}))
    kept = beside_landings(frozenset())
    assert kept
    assert not [found for found in kept if ("no_slivers", True) in found]
