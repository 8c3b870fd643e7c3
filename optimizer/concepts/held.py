"""What a room that is held at a place breaks there by itself, wherever the others stand."""

from collections.abc import Iterator
from typing import Final, get_args

from optimizer.brief import Hold, RuleId, Side
from optimizer.check import CHECKS, CheckCase, Finding
from optimizer.concepts.case import Case
from optimizer.concepts.words import listed
from optimizer.derived import Derived
from optimizer.engine.rules import PARTS
from optimizer.layout import Layout, Placement, turns_at
from optimizer.site import Ring

BY_ITSELF: Final[tuple[RuleId, ...]] = (
    "proportion",
    *(rule for rule, part in PARTS.items() if part.kept_off or part.positions),
)
"""Rules that a room can break while no other is there."""


def held_faults(case: Case, name: str) -> tuple[Finding, ...]:
    """What a held room breaks at its place in the choice and turn in which it breaks least; none where it may stand."""
    found = (_faults(case, placement) for placement in _held_placements(case, name))
    return min(found, key=lambda faults: (len(faults), sum(fault.amount for fault in faults)), default=())


def hold_words(case: Case, hold: Hold) -> str:
    """What a hold says, in plain words and the file's unit."""
    unit_ft, unit = case.scenario.unit_ft, case.scenario.units
    parts = [
        f"at {hold.at_ft[0] / unit_ft:.6g}, {hold.at_ft[1] / unit_ft:.6g} {unit}" if hold.at_ft else "",
        f"within {_area_words(case, hold.within)}" if hold.within else "",
        f"out of {_area_words(case, hold.not_in)}" if hold.not_in else "",
        f"opening to {hold.front}" if hold.front else "",
        f"as {hold.choice}" if hold.choice else "",
    ]
    return f"{hold.room} {', '.join(filter(None, parts))}"


def _area_words(case: Case, area: Ring) -> str:
    """An area by its corners, in the file's unit."""
    unit_ft, unit = case.scenario.unit_ft, case.scenario.units
    corners = [f"({x_ft / unit_ft:.6g}, {y_ft / unit_ft:.6g})" for x_ft, y_ft in area]
    return f"the area with corners {listed(corners)} {unit}"


def why_not_held(case: Case, name: str) -> str | None:
    """Why a held room cannot stand at its place, in one sentence; None where nothing by itself stands against it."""
    hold = next((hold for hold in case.scenario.brief.holds_of(name) if hold.at_ft is not None), None)
    faults = () if hold is None else held_faults(case, name)
    if hold is None or not faults:
        return None
    return f"The {name} cannot stand where it is held: {'; '.join(fault.words for fault in faults)}."


def _held_placements(case: Case, name: str) -> Iterator[Placement]:
    """The room at its held place, in every choice and turn that the holds leave."""
    holds = case.scenario.brief.holds_of(name)
    places, labels = {hold.at_ft for hold in holds} - {None}, {hold.choice for hold in holds} - {None}
    fronts = ({hold.front for hold in holds} - {None}) or set(get_args(Side))
    room = next(room for room in case.rooms if room.name == name)
    for at_ft in filter(None, places):
        stands = turns_at(room, at_ft, sorted(front for front in fronts if front))
        yield from (stand for stand in stands if labels <= {stand.choice})


def _faults(case: Case, placement: Placement) -> tuple[Finding, ...]:
    checked = CheckCase(Derived(case.scenario, case.placed(Layout((placement,)))))
    return tuple(finding for rule in BY_ITSELF for finding in CHECKS[rule](checked))
