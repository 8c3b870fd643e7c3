"""The registry of checks, one for each hard rule, and the check of a whole layout."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Final

from optimizer.brief import Relation, RuleId
from optimizer.check.case import Check, CheckCase
from optimizer.check.cook import cook_looks_at_table
from optimizer.check.drains import drains
from optimizer.check.finding import Finding
from optimizer.check.fire import fire_clear
from optimizer.check.ground import septic, utility_lines
from optimizer.check.held import held
from optimizer.check.inside import (
    inside_setbacks,
    keep_outs,
    kept_paving,
    off_buildings,
    off_walls,
    root_zone,
    under_structure,
)
from optimizer.check.neighbours import no_overlap, no_slivers
from optimizer.check.openings import clear_of_openings, door_zones
from optimizer.check.party import everyday_table, party_seats
from optimizer.check.phases import phases
from optimizer.check.program import budget, known_choice, later_phases, proportion, required_rooms
from optimizer.check.relations import miss_of, relation_check
from optimizer.check.shares import paved_share, root_ring
from optimizer.check.steps import kitchen_level, steps_at_doors, steps_clear, steps_on_ways
from optimizer.check.sun import sun_least
from optimizer.check.walking import kitchen_walk, mown, reachable, ways_clear
from optimizer.check.water import water_clear
from optimizer.derived import Derived
from optimizer.layout import Placed
from optimizer.scenario import Scenario

CHECKS: Final[dict[RuleId, Check]] = {
    "required_rooms": required_rooms,
    "known_choice": known_choice,
    "held": held,
    "proportion": proportion,
    "inside_setbacks": inside_setbacks,
    "off_buildings": off_buildings,
    "off_walls": off_walls,
    "no_overlap": no_overlap,
    "no_slivers": no_slivers,
    "door_zone": door_zones,
    "clear_of_openings": clear_of_openings,
    "root_zone": root_zone,
    "root_ring": root_ring,
    "under_structure": under_structure,
    "keep_outs": keep_outs,
    "kept_paving": kept_paving,
    "utility_lines": utility_lines,
    "septic": septic,
    "water_clear": water_clear,
    "paved_share": paved_share,
    "fire_clear": fire_clear,
    "sun_least": sun_least,
    "kitchen_walk": kitchen_walk,
    "reachable": reachable,
    "ways_clear": ways_clear,
    "mown": mown,
    "touching": relation_check("touching"),
    "near": relation_check("near"),
    "apart": relation_check("apart"),
    "in_view": relation_check("in_view"),
    "out_of_view": relation_check("out_of_view"),
    "faces": relation_check("faces"),
    "cook_looks_at_table": cook_looks_at_table,
    "accessible": relation_check("accessible"),
    "drains": drains,
    "steps_clear": steps_clear,
    "kitchen_level": kitchen_level,
    "everyday_table": everyday_table,
    "party_seats": party_seats,
    "budget": budget,
    "later_phases": later_phases,
    "phases": phases,
}


STAGES: Final[dict[str, tuple[Check, ...]]] = {
    "places": (
        required_rooms,
        known_choice,
        held,
        proportion,
        inside_setbacks,
        off_buildings,
        off_walls,
        no_overlap,
        no_slivers,
        door_zones,
        clear_of_openings,
        root_zone,
        root_ring,
        under_structure,
        keep_outs,
        kept_paving,
        utility_lines,
        septic,
        water_clear,
        fire_clear,
        CHECKS["touching"],
        CHECKS["faces"],
        cook_looks_at_table,
        everyday_table,
        party_seats,
    ),
    "levels": (drains, steps_at_doors),
    "on foot": (reachable, kitchen_walk, mown, CHECKS["near"], CHECKS["apart"], CHECKS["accessible"], kitchen_level),
    "sun and sight": (sun_least, CHECKS["in_view"], CHECKS["out_of_view"]),
    "ways": (ways_clear, steps_on_ways, paved_share, budget, later_phases, phases),
}
"""All checks, the cheaper stages first: what a stage asks for beyond the earlier ones costs more than these."""


OF_WAYS: Final = frozenset(rule for rule, check in CHECKS.items() if check in STAGES["ways"])
"""Rules of the last stage, which ask for the ways and take most of the time."""


def check_layout(
    scenario: Scenario,
    placed: Placed,
    *,
    phase_1_cost: Decimal | None = None,
    later_costs: Mapping[int, Decimal] | None = None,
) -> tuple[Finding, ...]:
    """All hard rules that a layout breaks, in the order of the rules; those of money only where a cost is given."""
    costs = {**({} if phase_1_cost is None else {1: phase_1_cost}), **(later_costs or {})}
    price = (lambda phase: costs.get(phase, Decimal(0))) if costs else None
    return all_findings(CheckCase(Derived(scenario, placed), price))


def all_findings(case: CheckCase) -> tuple[Finding, ...]:
    """All hard rules that a layout breaks, in the order of the rules."""
    return tuple(finding for check in CHECKS.values() for finding in check(case))


def first_findings(case: CheckCase) -> tuple[Finding, ...]:
    """All that the first stage finds that finds anything; later stages are not worked out."""
    found = (tuple(finding for check in checks for finding in check(case)) for checks in STAGES.values())
    return next(filter(None, found), ())


def fits(case: CheckCase) -> bool:
    """Whether a layout keeps the rules of its places: those of the first stage, which are asked quickly."""
    return not any(finding for check in STAGES["places"] for finding in check(case))


def wishes_missed(case: CheckCase) -> tuple[Relation, ...]:
    """Relations with the weight of a wish that a layout does not keep; one with an end left out is passed over."""
    wishes = (relation for relation in case.scenario.brief.relations if not relation.is_hard)
    return tuple(relation for relation in wishes if miss_of(case, relation) is not None)
