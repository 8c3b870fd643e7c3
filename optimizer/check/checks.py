"""The registry of checks, one for each hard rule, and the check of a whole layout."""

from decimal import Decimal
from typing import Final

from optimizer.brief import Relation, RuleId
from optimizer.check.case import Case, Check
from optimizer.check.cook import cook_looks_at_table
from optimizer.check.drains import drains
from optimizer.check.finding import Finding
from optimizer.check.fire import fire_clear
from optimizer.check.ground import septic, utility_lines
from optimizer.check.inside import inside_setbacks, keep_outs, off_buildings, root_zone, under_structure
from optimizer.check.neighbours import no_overlap, no_slivers
from optimizer.check.openings import clear_of_openings, door_zones
from optimizer.check.party import everyday_table, party_seats
from optimizer.check.program import budget, known_choice, proportion, required_rooms
from optimizer.check.relations import miss_of, relation_check
from optimizer.check.shares import paved_share, root_ring
from optimizer.check.steps import kitchen_level, steps_clear
from optimizer.check.sun import sun_least
from optimizer.check.walking import kitchen_walk, mown, reachable, ways_clear
from optimizer.circulation import Ways
from optimizer.layout import Placed
from optimizer.scenario import Scenario

CHECKS: Final[dict[RuleId, Check]] = {
    "required_rooms": required_rooms,
    "known_choice": known_choice,
    "proportion": proportion,
    "inside_setbacks": inside_setbacks,
    "off_buildings": off_buildings,
    "no_overlap": no_overlap,
    "no_slivers": no_slivers,
    "door_zone": door_zones,
    "clear_of_openings": clear_of_openings,
    "root_zone": root_zone,
    "root_ring": root_ring,
    "under_structure": under_structure,
    "keep_outs": keep_outs,
    "utility_lines": utility_lines,
    "septic": septic,
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
}


def check_layout(
    scenario: Scenario, placed: Placed, *, phase_1_cost: Decimal | None = None, laid: Ways | None = None
) -> tuple[Finding, ...]:
    """All hard rules that a layout breaks, in the order of the rules; the budget only where a cost is given.

    `laid` are the layout's ways, where the caller has them already.
    """
    case = Case(scenario, placed, phase_1_cost, laid)
    return tuple(finding for check in CHECKS.values() for finding in check(case))


def wishes_missed(scenario: Scenario, placed: Placed, *, laid: Ways | None = None) -> tuple[Relation, ...]:
    """Relations with the weight of a wish that a layout does not keep; one with an end left out is passed over."""
    case = Case(scenario, placed, given_ways=laid)
    wishes = (relation for relation in scenario.brief.relations if not relation.is_hard)
    return tuple(relation for relation in wishes if miss_of(case, relation) is not None)
