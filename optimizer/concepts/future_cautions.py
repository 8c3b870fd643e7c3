"""What to be careful about so that what is held for later stays possible: what misses and by how little, what bars."""

from collections.abc import Iterator, Sequence
from typing import Final

from optimizer.appraisal import Cost, Outlook
from optimizer.catalogue import future_kind, rounded
from optimizer.concepts.future_words import DIG_CAUTION
from optimizer.concepts.words import length_words, listed
from optimizer.derived import Access, Barred, Miss
from optimizer.scenario import Scenario

_WHY: Final = {
    "setback": " for the setback of water",
    "ahead of a door": ", where it would lie ahead of it",
    "roots": ", among whose roots nobody digs",
    "over-dig": ", beside which room is needed to dig",
}
"""Why a distance from something is kept, where that does not go without saying."""

_COUNTED: Final = "The concept's score counts a share of the crane's price for it."


def future_cautions(scenario: Scenario, futures: Sequence[Outlook]) -> Iterator[str]:
    """Of each future what it misses and what bars its way, one sentence on the ways that must stay free, and what comes
    before any digging.
    """
    for outlook in futures:
        yield from _missed(scenario, outlook)
        yield from _barred(scenario, outlook)
    yield from _kept_free(scenario, futures)
    if futures:
        yield DIG_CAUTION


def _missed(scenario: Scenario, outlook: Outlook) -> Iterator[str]:
    rules = {miss.rule for miss in outlook.fit.misses}
    short = [_short(scenario, miss) for miss in outlook.fit.misses if miss.rule not in {"equipment pad", "held ground"}]
    if short:
        yield f"Later {outlook.future}: in the {outlook.room} its water comes {'; and '.join(short)}."
    if "held ground" in rules:
        lacks = next(length_words(scenario, miss.short_ft) for miss in outlook.fit.misses if miss.rule == "held ground")
        yield f"Later {outlook.future}: the {outlook.room} is {lacks} too small for it with its deck and service space."
    if "equipment pad" in rules:
        yield f"Later {outlook.future}: no free place for the pad of its equipment was found at a wall or the boundary."


def _short(scenario: Scenario, miss: Miss) -> str:
    return f"{length_words(scenario, miss.short_ft)} too near to the {miss.name}{_WHY.get(miss.rule, '')}"


def _barred(scenario: Scenario, outlook: Outlook) -> Iterator[str]:
    access = outlook.access
    for barred in access.barred:
        yield f"Later {outlook.future}: no way in for the {_vehicle(scenario, barred)}: {_because(scenario, barred)}."
    if access.barred:
        counted = f" {_COUNTED}" if outlook.is_shut_off else ""
        yield f"Later {outlook.future}: the other way in is {_other_way(scenario, access)}.{counted}"


def _other_way(scenario: Scenario, access: Access) -> str:
    if access.is_found:
        wide = length_words(scenario, access.width_ft)
        return f"a {access.vehicle}, {wide} wide, from the {access.gate}; it takes longer and costs more"
    return "over the house or the fence by crane, from a street that bears it; ask what it reaches"


def _vehicle(scenario: Scenario, barred: Barred) -> str:
    return f"{barred.vehicle}, {length_words(scenario, barred.width_ft)} wide"


def _because(scenario: Scenario, barred: Barred) -> str:
    by, free = listed(barred.by), "" if barred.found_ft is None else length_words(scenario, barred.found_ft)
    if barred.because == "gate":
        return f"the {by} is {free} wide at the most" if by else "no entrance lets machines in"
    if barred.because == "slope":
        return "the ground on it is too steep"
    if barred.because == "width":
        where = f"beside the {by}" if by else "on the way"
        return f"{where} no more than {free} are free"
    return f"it cannot turn beside the {by}" if by else "its turns are too tight"


def _kept_free(scenario: Scenario, futures: Sequence[Outlook]) -> Iterator[str]:
    """The widest way of each reserve, and what it costs the ground."""
    for room in dict.fromkeys(outlook.room for outlook in futures):
        found = [one for one in futures if one.room == room and one.access.is_found]
        if found:
            access = max((one.access for one in found), key=lambda access: access.width_ft)
            wide, long = length_words(scenario, access.width_ft), length_words(scenario, round(access.length_ft))
            names = _either([one.future for one in found])
            yield (
                f"Way in for a later {names}: a band {wide} wide and {long} long, "
                f"from the {access.gate} to the {room}, stays free of walls, steps, trees and whatever else lasts; "
                "check it on site with whoever drives."
            )


def way_in_cautions(scenario: Scenario, cost: Cost | None, futures: Sequence[Outlook]) -> Iterator[str]:
    """What a later phase's total has in it of what may come later, and what it leaves out: the way in."""
    yield from counted_words(cost, futures) if cost else ()
    for phase, one in counted_futures(cost, futures) if cost else ():
        if one.money.way_in:
            yield (
                f"Phase {phase} counts the later {one.future} as if built on open ground. Its way in, about "
                f"{rounded(one.money.way_in_cost):,.0f} {scenario.currency} at today's prices, is not in it: "
                f"{listed(one.money.way_in)}."
            )


def counted_words(cost: Cost, futures: Sequence[Outlook]) -> Iterator[str]:
    """Sentences on reserves of which something does not fit: what the sum has in it of what may come later there."""
    counted = {one.room: one for _, one in counted_futures(cost, futures)}
    for room in dict.fromkeys(outlook.room for outlook in futures):
        unfit = [one.future for one in futures if one.room == room and not one.fit.is_kept]
        there = counted.get(room)
        if unfit and there is None:
            yield f"Later on the {room}: nothing of water is in the sum, since no {_either(unfit)} fits as it lies."
        elif there is not None and unfit:
            are = "is not, since it does" if len(unfit) == 1 else "are not, since they do"
            named = " and a ".join(unfit)
            yield f"Later on the {room}: a {there.future} is in the sum; a {named} {are} not fit as it lies."


def counted_futures(cost: Cost, futures: Sequence[Outlook]) -> Iterator[tuple[int, Outlook]]:
    """The futures that the sums of later phases have in them, each with its phase: of each reserve the dearest that
    fits.
    """
    for line in cost.lines:
        for one in futures:
            if (one.room, future_kind(one.future).item) == (line.room, line.item):
                yield line.phase, one


def _either(names: Sequence[str]) -> str:
    return " or ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)
