"""Why shown concepts leave rooms out, by what the run found and judged anyway: nothing more is searched for it."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from optimizer.catalogue import PREPARED
from optimizer.concepts.case import Case
from optimizer.concepts.option import NOT_ASKED, LeftOut, Option, WayOut
from optimizer.concepts.waiting import waiting_rooms, why_later
from optimizer.concepts.whys.changes import required
from optimizer.concepts.whys.trying import placeless_rooms
from optimizer.concepts.whys.words import above_ceiling, money
from optimizer.concepts.words import listed
from optimizer.engine.problem import Problem

_EVEN_SQFT: Final = 1.0
NOT_FOUND: Final = f"no plan with it was found in this run; why not was {NOT_ASKED}"
NOT_SHOWN: Final = "a plan that is not shown"


def explained(case: Case, problem: Problem, shown: Sequence[Option], judged: Sequence[Option]) -> tuple[Option, ...]:
    """The shown concepts, each room that one leaves out with its reason; `judged` are all that were found to hold."""
    not_shown = [option for option in judged if option.layout not in {other.layout for other in shown}]
    return tuple(
        replace(
            option,
            left_out=tuple(_told(case, problem, option, left.room, (shown, not_shown)) for left in option.left_out),
        )
        for option in shown
    )


def _told(
    case: Case, problem: Problem, option: Option, room: str, found: tuple[Sequence[Option], Sequence[Option]]
) -> LeftOut:
    waits = _waits(case, option, room)
    for others in found:
        having = [other for other in others if other.has(room)]
        best = min(having, key=lambda other: (len(_given_up(option, other, room)), other.score), default=None)
        if best is not None:
            return LeftOut(room, waits + _it_fits(case, option, best, room), (_asked(case, room, best),))
    return LeftOut(room, waits + (_barred(case, problem, room) or NOT_FOUND))


def _waits(case: Case, option: Option, room: str) -> str:
    """Of a room that comes later: when, and for how much."""
    if option.layout.of(room) is None:
        return ""
    cost = option.appraisal.cost
    lines = [line for line in cost.lines if line.room == room and line.phase > 1]
    later = money(case.scenario, sum((line.amount for line in lines), Decimal(0)))
    if room in waiting_rooms(option.layout):
        when = why_later(case.scenario, option.layout, cost, room)
        return f"later: {when}; it is {later} of work before contingency then. Built at once: "
    return f"later: {PREPARED}; what is built on them then is {later} of work before contingency. Built at once: "


def _it_fits(case: Case, option: Option, other: Option, room: str) -> str:
    """For how much it fits, in which concept, and what that one gives up for it."""
    named = other.title.lower() if other.id else NOT_SHOWN
    more = other.appraisal.cost.phase(1) - option.appraisal.cost.phase(1)
    against = f", {money(case.scenario, abs(more))} {'more' if more > 0 else 'less'} than this one" if more else ""
    told = f"it fits, for {money(case.scenario, other.appraisal.cost.phase(1))}{against}: {named}"
    given_up, smaller = _given_up(option, other, room), _smaller(option, other)
    changes = [f"does without the {listed(given_up)}"] if given_up else []
    changes += [f"has the {listed(smaller)}"] if smaller else []
    told += f", which {' and '.join(changes)}" if changes else ""
    worse = other.score - option.score
    if worse <= 0:
        return told
    return f"{told}; it comes out {worse:,.0f} {case.scenario.currency} worse when everything is counted"


def _smaller(option: Option, other: Option) -> list[str]:
    """Rooms of a concept that another one has smaller, with their sizes there."""
    pairs = [(p, there) for p in option.layout.base.placements if (there := other.layout.base.of(p.room)) is not None]
    return [
        f"{there.room} as {there.choice}"
        for p, there in pairs
        if there.area_sqft < p.area_sqft - _EVEN_SQFT and option.has(p.room) and other.has(p.room)
    ]


def _given_up(option: Option, other: Option, room: str) -> tuple[str, ...]:
    """Rooms of a concept that another one lacks."""
    own = (p.room for p in option.layout.placements if p.room != room and option.has(p.room))
    return tuple(name for name in own if not other.has(name))


def _asked(case: Case, room: str, found: Option) -> WayOut:
    change = required(case, room)
    cost = money(case.scenario, found.appraisal.cost.phase(1))
    return WayOut(f"{change.words}; a plan found with it costs {cost}", tuple(change.patch))


def _barred(case: Case, problem: Problem, name: str) -> str | None:
    """What rules a room out by itself, proven by prices or by the ground alone."""
    rooms = tuple(replace(room, required=room.required or room.name == name) for room in case.rooms)
    if (dearer := above_ceiling(replace(case, rooms=rooms))) is not None:
        return f"with it, {dearer}"
    if name in placeless_rooms(problem, asked=name):
        return "there is no place in this yard where it may stand, whatever the other rooms do"
    return None
