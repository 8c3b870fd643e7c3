"""What a concept must be careful about: what is left to others, and where the scenario is looser than usual."""

from collections.abc import Iterator, Sequence
from typing import Final

from optimizer.appraisal import Cost, Outlook
from optimizer.catalogue import (
    SizedRoom,
    asked_by,
    clearance_ft,
    held,
    holds,
    is_carried,
    most_held,
    party_is_held,
    root_rings,
    table_is_held,
    usual_distance,
    usual_rings,
)
from optimizer.circulation import Leg
from optimizer.concepts.cook_cautions import cook_cautions
from optimizer.concepts.future_cautions import future_cautions, way_in_cautions
from optimizer.concepts.money_cautions import money_cautions
from optimizer.concepts.pool_cautions import pool_cautions
from optimizer.concepts.roof_cautions import roof_cautions
from optimizer.concepts.terrace_cautions import terrace_cautions
from optimizer.concepts.waiting import waiting_cautions
from optimizer.concepts.words import capital, listed
from optimizer.fields.existing_paving import slab_under
from optimizer.fields.smoke import smoke_reach_ft
from optimizer.layout import Placed
from optimizer.scenario import Scenario

CONCEPT: Final = "Concept stage only: sizes and prices are estimates. Confirm them on site and with the builder."
SUPPLIES: Final = "Gas and electricity: licensed trades run and connect them under local codes."
BY_KIND: Final = {
    "fire": "Fire: distances are model-code defaults. The local fire code and the maker's listing decide.",
    "kitchen": SUPPLIES,
    "reserve": "Water: barriers, bonding and setbacks of a later pool or tub follow local codes.",
}
GROUND: Final = "Drainage, retaining walls and structures: a licensed professional designs them for the real ground."
TREES: Final = "Trees: ask an arborist before working near a kept tree's roots."
_ROUNDING_FT: Final = 1e-6


def cautions_for(
    scenario: Scenario,
    placed: Placed,
    legs: Sequence[Leg] = (),
    cost: Cost | None = None,
    futures: Sequence[Outlook] = (),
) -> tuple[str, ...]:
    """What this concept, with ways on these legs and at this cost, must be careful about; every distance kept shorter
    than usual is among it.
    """
    kinds = {room.kind for room in placed}
    found = [CONCEPT, *(words for kind, words in BY_KIND.items() if kind in kinds)]
    if scenario.site.trees:
        found.append(TREES)
    return (
        *found,
        *money_cautions(scenario, cost),
        *gas_cautions(scenario, placed),
        *_prepared(placed),
        *(waiting_cautions(scenario, placed.layout, cost) if cost else ()),
        *_on_slabs(scenario, placed),
        *pool_cautions(scenario, placed, legs),
        *future_cautions(scenario, futures),
        *way_in_cautions(scenario, cost, futures),
        *cook_cautions(scenario, placed),
        *_looser_distances(scenario),
        *_looser_lines(scenario),
        *_looser_rings(scenario),
        *roof_cautions(scenario.site, placed),
        *terrace_cautions(scenario, placed),
        *_no_table(scenario, placed),
        *_too_few(scenario, placed.wished),
        GROUND,
    )


def gas_cautions(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """How far a gas fire's smoke and heat are counted, and its supplies where no kitchen speaks of them.

    Of heat beyond the seats no published figure holds for all fires: it is in each one's listing.
    """
    if any(room.room.fuel == "gas" for room in placed):
        reach = f"{_figure(smoke_reach_ft('gas') / scenario.unit_ft)} {scenario.units}"
        told = (
            f"its fumes are counted at doors, windows and where people sit, within {reach} (common practice, no source)"
        )
        away = f"{_figure(clearance_ft('seat_to_gas_flame') / scenario.unit_ft)} {scenario.units}"
        heat = f"against its heat chairs are drawn {away} from its edge (a usual figure, no standard)"
        yield f"Gas fire: {told}; {heat}. The maker's listing says what else must keep off its heat, and how far."
        if not placed.of_kind("kitchen"):
            yield SUPPLIES


def _prepared(placed: Placed) -> Iterator[str]:
    """What to see to where only the pad and the stubs of a room are built."""
    if rooms := [room.name for room, choice in placed.chosen if choice.is_pad]:
        yield (
            f"{capital(listed(rooms))}, later: licensed trades lay, cap and test the stubs. Have the base of the pad "
            "made for the counter that it will carry, and keep a drawing of where the stubs end."
        )


def _on_slabs(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """What is to be seen to where a slab that is there carries a room."""
    rooms = [room for room in placed if is_carried(room.rules)]
    slabs = {room.name: slab.name for room in rooms if (slab := slab_under(scenario.site, room.shape))}
    for name in dict.fromkeys(slabs.values()):
        carried = listed([room for room, slab in slabs.items() if slab == name])
        yield (
            f"{capital(name)}: before the {carried} is laid on it, have it looked at for cracks and "
            "for its fall; where it meets the house, keep 6 in below siding, 4 in below brick weeps, or a gravel strip."
        )


def _looser_distances(scenario: Scenario) -> Iterator[str]:
    for name, kept_ft in scenario.site.distances:
        usual = usual_distance(name)
        if kept_ft < usual.feet - _ROUNDING_FT:
            yield _looser(scenario, usual.meaning, kept_ft, usual.feet, usual.source)


def _looser_lines(scenario: Scenario) -> Iterator[str]:
    usual = usual_distance("utility_line")
    for line in scenario.site.utility_lines:
        if line.clear_ft is not None and line.clear_ft < usual.feet - _ROUNDING_FT:
            yield _looser(scenario, line.name, line.clear_ft, usual.feet, usual.source)


def _looser(scenario: Scenario, what: str, kept_ft: float, usual_ft: float, source: str) -> str:
    kept, usual = (f"{_figure(ft / scenario.unit_ft)} {scenario.units}" for ft in (kept_ft, usual_ft))
    told = f"the scenario keeps {kept} where {usual} is usual ({source}); confirm with the local code."
    return f"{capital(what)}: {told}"


def _looser_rings(scenario: Scenario) -> Iterator[str]:
    kept, usual = root_rings(scenario.site), usual_rings()
    if not scenario.site.trees:
        return
    if kept.inner_trunks < usual.inner_trunks:
        told = f"build from {kept.inner_trunks:g} trunk diameters on where {usual.inner_trunks:g} is usual"
        yield f"Roots: the scenario lets rooms {told}; confirm with an arborist."
    if kept.outer_trunks < usual.outer_trunks:
        told = f"ends the outer ring at {kept.outer_trunks:g} trunk diameters where {usual.outer_trunks:g} is usual"
        yield f"Roots: the scenario {told}; confirm with an arborist."
    if kept.paved_share > usual.paved_share:
        told = f"cover {kept.paved_share:.0%} of the outer ring where {usual.paved_share:.0%} is usual"
        yield f"Roots: the scenario lets rooms {told}; confirm with an arborist."


def _no_table(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """Everyday guests who do not sit at one table, where no rule asks that they do."""
    guests = scenario.brief.guests
    seated = held(holds(there.room, choice) for there, choice in placed.chosen).table
    if seated < guests.everyday and not table_is_held(placed.wished, guests):
        yield f"Table: the largest of this concept seats {seated} of the {guests.everyday} everyday guests."


def _too_few(scenario: Scenario, rooms: Sequence[SizedRoom]) -> Iterator[str]:
    """Guests whom no choices of the wish list can hold: no concept can, so it is said of each."""
    guests = scenario.brief.guests
    asked, most = asked_by(guests), most_held(rooms, guests)
    if most.seats < asked.seats:
        yield f"Party: the wish list seats {most.seats} of the {asked.seats} that a party of {asked.people} asks for."
    elif not party_is_held(rooms, guests):
        need = asked.standing_sqft(most.seats)
        yield (
            f"Party: {asked.people - most.seats} of {asked.people} have no seat, and the wish list has "
            f"{most.standing_sqft:.0f} of the {need:.0f} sq ft that they need to stand on."
        )


def _figure(length: float) -> str:
    return f"{length:.2f}".rstrip("0").rstrip(".")
