"""The five figures that decide on a concept, each with a word and why: money, walking, sun, seats, what it leaves."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from optimizer.appraisal import Appraisal
from optimizer.brief import Brief
from optimizer.catalogue import asked_by
from optimizer.concepts import AIM, Option, beyond_aim
from optimizer.concepts.walked import Ends, trip_words, trips_missing, trips_walked
from optimizer.concepts.words import capital, listed
from optimizer.scenario import Scenario
from ui.view_models.cost_sheet import expected
from ui.view_models.words import Words, share_words

Grade = Literal["good", "fair", "poor", ""]
"""Empty where nothing was wished for that it could be held against."""
SHORT_FT, LONG_FT = 40.0, 80.0
"""A trip on foot that is short, and one that is long [ft]; common practice, no source."""
MOST_HOURS, HALF_OF_THEM = 0.9, 0.6
"""Shares of the hours of sun or shade wished for that are nearly all, and too few under; common practice, no source."""
_AS_WISHED_H: Final = 0.05


@dataclass(frozen=True, slots=True)
class Deciding:
    """A figure that decides: what it is, its value, a word for it, and why that word."""

    label: str
    value: str
    grade: Grade
    why: str


def deciding(option: Option, scenario: Scenario, words: Words) -> tuple[Deciding, ...]:
    """The five figures of a concept; without a wish for sun or shade that one is not there."""
    appraisal, brief = option.appraisal, scenario.brief
    sun = _sun(appraisal, brief)
    figures = (_money(appraisal, brief, words), _walking(option, brief, words), sun, _seats(appraisal, brief))
    return (*(figure for figure in figures if figure is not None), _wishes(option))


def _money(appraisal: Appraisal, brief: Brief, words: Words) -> Deciding:
    cost, ceiling = appraisal.cost, brief.budget.ceiling
    first, likely, known = cost.phase(1), expected(cost, words), cost.range_of(1)
    said = [f"Expect {likely} until soil, levels and lines are checked"] if likely else []
    if ceiling is None:
        return Deciding("Cost of phase 1", words.money(first), "", "; ".join(said))
    term, beyond = words.term("ceiling"), beyond_aim(cost, ceiling)
    if known is not None and first <= ceiling < known.high:
        said.append(f"the upper end passes the {term}")
    if first > ceiling:
        said.insert(0, f"{words.money(first - ceiling)} over the {term}")
    else:
        lies = f"{words.money(beyond)} above" if beyond else "within"
        said.append(f"{lies} {AIM * 100:.0f} % of the {term}, which a first concept should aim at")
    grade: Grade = "poor" if first > ceiling else "fair" if beyond else "good"
    return Deciding("Cost of phase 1", words.money(first), grade, capital("; ".join(said)))


def _walking(option: Option, brief: Brief, words: Words) -> Deciding:
    """By the trips that it has: a trip to a room that is left out is not a short one."""
    missing, walking_ft = trips_missing(brief, option), option.appraisal.walking_ft
    count = sum(trip.count for trip in brief.trips if (trip.start, trip.end) not in missing)
    value = words.length(walking_ft)
    if not count:
        return Deciding("Walking", value, "", "No trips are in the file" if not missing else _without(missing))
    each = walking_ft / count
    said = f"{words.length(each)} a trip on average; up to {words.length(SHORT_FT)} is short"
    said += f". {_without(missing)}" if missing else ""
    return Deciding("Walking at one gathering", value, _less(round(each), SHORT_FT, LONG_FT), capital(said))


def _without(missing: Sequence[Ends]) -> str:
    return f"Trips left out: {trip_words(missing)}"


def trips_said(brief: Brief, option: Option) -> str:
    """Which trips of one gathering the walking of a concept is of."""
    some, every = trips_walked(brief, option)
    return "all trips of one gathering" if some == every else f"{some} of the {every} trips of one gathering"


def _sun(appraisal: Appraisal, brief: Brief) -> Deciding | None:
    """How much of the sun and shade wished for the placed rooms have."""
    wishes = {room.name: room.sun.wished_h for room in brief.rooms if room.sun is not None}
    placed = [(room, missed, wishes[room]) for room, _, missed in appraisal.sun_h if wishes.get(room)]
    if not placed:
        return None
    kept = 1 - sum(missed for _, missed, _ in placed) / sum(wished for _, _, wished in placed)
    short = [f"the {room} misses {missed:.1f} of {wished:g} h" for room, missed, wished in placed if _lacks(missed)]
    grade: Grade = "good" if kept >= MOST_HOURS else "fair" if kept >= HALF_OF_THEM else "poor"
    why = capital(listed(short)) if short else "Every room that wished for sun or shade has it"
    return Deciding("Sun and shade as wished", share_words(kept), grade, why)


def _lacks(missed_h: float) -> bool:
    return missed_h >= _AS_WISHED_H


def _seats(appraisal: Appraisal, brief: Brief) -> Deciding:
    asked, party, label = asked_by(brief.guests), appraisal.party, "Seats at the party"
    seats = party.seats if party.people else appraisal.seats
    value = f"{seats} for {asked.people}"
    if party.without:
        return Deciding(label, value, "poor", f"{party.without} find neither a seat nor ground to stand on")
    if seats >= asked.people:
        return Deciding(label, value, "good", "Everybody can sit at once")
    usual = f"{asked.seats} seats are usual for {asked.people}, who take turns"
    if seats >= asked.seats:
        return Deciding(label, value, "good", usual)
    return Deciding(label, value, "fair" if party.people else "poor", usual)


def _wishes(option: Option) -> Deciding:
    """What is left out, and what stays possible later."""
    out, futures = option.left_out_rooms, option.futures
    opened = [outlook.future for outlook in futures if outlook.is_open]
    lost = [outlook.future for outlook in futures if not outlook.is_open]
    grade: Grade = "good" if not out and not lost else "poor" if len(out) > 1 or (lost and not opened) else "fair"
    value = f"Without {listed(out)}" if out else "Every wished room"
    said = [
        f"{listed(names)} {verb}" for names, verb in ((opened, _stays(opened)), (lost, "will not fit later")) if names
    ]
    why = "; ".join(said) or ("Ask why under Hold here" if out else "Nothing is left out")
    return Deciding("Wishes, and later", value, grade, capital(why))


def _stays(names: list[str]) -> str:
    return "stays possible" if len(names) == 1 else "stay possible"


def _less(value: float, good: float, fair: float) -> Grade:
    return "good" if value <= good else "fair" if value <= fair else "poor"
