"""Phases of a concept: what stands after each, and what a plan of phases must be careful about."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from math import dist

from optimizer.appraisal import Cost, Outlook
from optimizer.catalogue import rounded
from optimizer.concepts.money_words import about_words
from optimizer.concepts.option import Option
from optimizer.concepts.words import capital, length_words, listed
from optimizer.derived import later_rooms, legs_without
from optimizer.layout import Layout, Placed
from optimizer.quantities import POOR_ACCESS, figure
from optimizer.scenario import Scenario
from optimizer.site import clear_width_ft


def phases_of(placed: Placed) -> tuple[int, ...]:
    """Phases in which anything of a layout is built, phase 1 always."""
    return tuple(sorted({1, *(phase for room in placed for phase in room.phases)}))


def standing_after(option: Option, placed: Placed, phase: int) -> Option:
    """The concept as it stands once a phase is built: rooms of later phases are not there yet, but for ground that is
    held, nor are ways that lead to no room that is. What only had its pad is whole by then.
    """
    later, whole = later_rooms(placed, phase), _whole_by(placed, phase)
    if not (later or whole):
        return option
    there = (place for place in option.layout.placements if place.room not in later)
    layout = Layout(tuple(replace(p, choice=whole[p.room]) if p.room in whole else p for p in there))
    legs = legs_without(option.appraisal.legs, later)
    ways = tuple(way for way in option.appraisal.ways if later.isdisjoint(way.between))
    return replace(option, layout=layout, appraisal=replace(option.appraisal, legs=legs, ways=ways))


def _whole_by(placed: Placed, phase: int) -> dict[str, str]:
    """Choice of each room that is built on its pad by a phase."""
    rooms = [(room.name, room.choice, max(room.phases)) for room in placed if room.is_later]
    return {name: choice.prepares for name, choice, last in rooms if choice and last <= phase}


def phase_words(cost: Cost, phase: int, currency: str) -> str:
    """What a phase costs with its range, and what all up to it costs; that nothing is counted where nothing is."""
    if not cost.phase(phase):
        return f"Phase {phase}: nothing is counted, since nothing that may come later fits as it lies."
    so_far = sum((amount for number, amount in cost.phases if number <= phase), Decimal(0))
    own = about_words(cost, currency, phase)
    return own if phase == 1 else f"{own} With what stands before it about {rounded(so_far):,.0f} {currency}."


def machine_words(scenario: Scenario, option: Option, placed: Placed, phase: int) -> str:
    """What machines come in by for a phase: entrances with clear widths, and of held ground what brings each future."""
    site = scenario.site
    if not site.machine_entrances:
        return "No entrance for machines is given: say where they come in."
    gates = ((gate.name, clear_width_ft(site, gate)) for gate in site.machine_entrances)
    wide = (f"the {name}, {length_words(scenario, width_ft)} wide" for name, width_ft in gates)
    said = [f"Machines come in by {' or '.join(wide)}."]
    if any((line.phase, line.item) == (phase, POOR_ACCESS) for line in option.appraisal.cost.lines):
        said.append("Where none comes, earth and paving are done by hand.")
    held = {room.name for room in placed.of_kind("reserve") if room.phase == phase}
    said += [_comes(outlook) for outlook in option.futures if outlook.room in held]
    return " ".join(said)


def _comes(outlook: Outlook) -> str:
    access = outlook.access
    by = f"by {access.vehicle} from the {access.gate}" if access.is_found else "by crane alone: nothing drives in"
    return f"{capital(outlook.future)} {by}."


def phase_cautions(scenario: Scenario, placed: Placed, cost: Cost, currency: str) -> Iterator[str]:
    """Phases too small to come back for, and heavy work that has to pass what was built before it."""
    phases = phases_of(placed)
    if len(phases) > 1:
        least = figure("least_phase").value
        for phase in phases:
            if 0 < cost.phase(phase) < least:
                own = f"{cost.phase(phase):,.0f} {currency}"
                under = f"under {least:,.0f} {currency}"
                yield f"Phase {phase}: {own} is little to come for, {under}; build it with another phase."
        for phase in phases[1:]:
            yield from _passing(scenario, placed, phase)


def _passing(scenario: Scenario, placed: Placed, phase: int) -> Iterator[str]:
    """Heavy rooms of a phase that lie farther from where machines come in than paving that is there by then; to what
    waits because its phase is open the rule `phases` keeps a way.
    """
    starts = scenario.site.machine_entrances
    built = [room for room in placed.paved if room.phase < phase]
    for room in (room for room in placed if room.phase == phase and room.rules.is_heavy and not room.waits):
        if not starts:
            return
        start = min(starts, key=lambda entrance: dist(entrance.at, room.centre))
        far_ft = dist(start.at, room.centre)
        nearer = [other.name for other in built if dist(start.at, other.centre) < far_ft]
        if nearer:
            yield (
                f"Phase {phase}: the {room.name} lies farther from the {start.name} than the {listed(nearer)}, built "
                "before it; do the heavy work farthest from the street first, or keep a way for machines free past it."
            )
