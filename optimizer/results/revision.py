"""A revision note between two concepts of one yard: what moved, grew, shrank, came and went, and what it does."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import atan2, degrees, hypot
from typing import Final

from optimizer.concepts import Option
from optimizer.concepts.walked import only_words, walked_by_both
from optimizer.layout import Placement
from optimizer.results.decisions import DecisionRow, decision_lines
from optimizer.scenario import Scenario

_MOVED_FT: Final = 0.5
_GREW_SQFT: Final = 0.5
_POINTS: Final = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")


@dataclass(frozen=True, slots=True)
class FigureChange:
    """One figure in both concepts, and the difference, in words."""

    name: str
    before: str
    after: str
    more: str


def room_changes(scenario: Scenario, before: Option, after: Option) -> tuple[str, ...]:
    """A sentence for each room that is not as it was, in the order of the wish list."""
    ours, theirs = ({place.room: place for place in option.layout.placements} for option in (before, after))
    names = dict.fromkeys((*(wish.name for wish in scenario.brief.rooms), *ours, *theirs))
    changes = (_change(scenario, name, ours.get(name), theirs.get(name)) for name in names)
    return tuple(change for change in changes if change)


def _change(scenario: Scenario, name: str, one: Placement | None, other: Placement | None) -> str:
    if one is None or other is None:
        there = one or other
        how = "is new" if one is None else "is left out"
        return "" if there is None else f"{name} ({_size(scenario, there)}) {how}"
    parts = (_moved(scenario, one, other), _grown(scenario, one, other), _turned(one, other))
    said = ", ".join(part for part in parts if part)
    return f"{name} {said}" if said else ""


def _moved(scenario: Scenario, one: Placement, other: Placement) -> str:
    """How far and where to the middle moved; compass points by the plan's own bearing."""
    along, up = (there - here for here, there in zip(one.centre, other.centre, strict=True))
    far_ft = hypot(along, up)
    if far_ft < _MOVED_FT:
        return ""
    bearing = (degrees(atan2(along, up)) + scenario.site.place.plan_up_bearing_deg) % 360
    point = _POINTS[round(bearing / 45) % 8]
    return f"moved {far_ft / scenario.unit_ft:.1f} {scenario.units} to the {point}"


def _grown(scenario: Scenario, one: Placement, other: Placement) -> str:
    more = other.area_sqft - one.area_sqft
    label = f", now {other.choice} instead of {one.choice}" if one.choice != other.choice else ""
    if one.shape != other.shape:
        was, now = (f"a {place.shape} {_size(scenario, place)}" for place in (one, other))
        return f"changed from {was} to {now}{label}"
    if abs(more) < _GREW_SQFT:
        return label and f"is now {other.choice} instead of {one.choice}"
    return f"{'grew' if more > 0 else 'shrank'} from {_size(scenario, one)} to {_size(scenario, other)}{label}"


def _turned(one: Placement, other: Placement) -> str:
    return "opens to another side" if one.front != other.front else ""


def _size(scenario: Scenario, place: Placement) -> str:
    wide, deep = (f"{side / scenario.unit_ft:.3g}" for side in (place.width_ft, place.depth_ft))
    return f"{wide} {scenario.units} across" if place.is_circle else f"{wide} x {deep} {scenario.units}"


def revision_note(scenario: Scenario, before: Option, after: Option, decisions: Sequence[DecisionRow] = ()) -> str:
    """The note as text: rooms, figures in the scenario's currency, and what was decided with its reasons."""
    rooms = room_changes(scenario, before, after) or ("All rooms stand as they stood.",)
    figures = [
        f"{one.name}: {one.before}, then {one.after} ({one.more})" for one in figure_changes(scenario, before, after)
    ]
    figures += only_words(walked_by_both(scenario.brief, before, after), before.title, after.title)
    decided = [*decision_lines(decisions)]
    parts = [
        f"{scenario.name}: {after.title} against {before.title} before it",
        _block("Rooms", rooms),
        *([_block(f"Figures, money in {scenario.currency}", figures)] if figures else []),
        *([_block("Decided", decided)] if decided else []),
        "Concept stage, not for construction: local codes and licensed practice decide.",
    ]
    return "\n\n".join(parts) + "\n"


def _block(title: str, lines: Sequence[str]) -> str:
    return "\n".join((title, *(f"  {line}" for line in lines)))


def figure_changes(scenario: Scenario, before: Option, after: Option) -> tuple[FigureChange, ...]:
    """Cost by phase, walking, worth, seats and hours of sun, where the two differ."""
    rows = (*_money(before, after), *_measured(scenario, before, after), *_sun(before, after))
    return tuple(row for row in rows if row.before != row.after)


def _money(before: Option, after: Option) -> Iterator[FigureChange]:
    ours, theirs = before.appraisal.cost, after.appraisal.cost
    for phase in dict.fromkeys((*dict(ours.phases), *dict(theirs.phases))):
        yield _sum(f"cost of phase {phase}", ours.phase(phase), theirs.phase(phase))
    yield _sum("cost of all phases", ours.total, theirs.total)


def _sum(name: str, one: Decimal, other: Decimal) -> FigureChange:
    return FigureChange(name, f"{one:,.0f}", f"{other:,.0f}", f"{other - one:+,.0f}")


def _measured(scenario: Scenario, before: Option, after: Option) -> Iterator[FigureChange]:
    one, other = before.appraisal, after.appraisal
    yield _walked(scenario, before, after)
    yield _figure("worth", one.worth, other.worth, 1)
    yield _figure("seats", one.seats, other.seats, 0)
    yield _figure("paved share, %", 100 * one.paved_share, 100 * other.paved_share, 0)


def _walked(scenario: Scenario, before: Option, after: Option) -> FigureChange:
    """Walking at one gathering; where one has a trip more, on the trips that both have: no trip is no saving."""
    walked = walked_by_both(scenario.brief, before, after)
    if walked.is_all:
        name, lengths = "walking", (before.appraisal.walking_ft, after.appraisal.walking_ft)
    else:
        name, lengths = "walking on trips that both have,", (walked.first_ft, walked.second_ft)
    one, other = (length / scenario.unit_ft for length in lengths)
    return _figure(f"{name} {scenario.units}", one, other, 0)


def _sun(before: Option, after: Option) -> Iterator[FigureChange]:
    """Hours of direct sun of rooms that both have."""
    theirs = {room: hours for room, hours, _ in after.appraisal.sun_h}
    for room, hours, _ in before.appraisal.sun_h:
        if room in theirs:
            yield _figure(f"sun on {room}, h", hours, theirs[room], 1)


def _figure(name: str, one: float, other: float, digits: int) -> FigureChange:
    return FigureChange(name, f"{one:,.{digits}f}", f"{other:,.{digits}f}", f"{other - one:+,.{digits}f}")
