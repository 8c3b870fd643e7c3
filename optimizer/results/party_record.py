"""Measures of the party as a plain record, and back."""

from dataclasses import asdict
from typing import Any, get_args

from optimizer.appraisal import PartyMeasures, PartyPhase, PartyRoom
from optimizer.appraisal.party import Grade, Pinch, Remedy
from optimizer.results.untrusted import Record


def party_record(party: PartyMeasures) -> dict[str, Any]:
    """Record of the measures; money as text with two decimals."""
    remedy, worst = party.remedy, party.worst
    return {
        **asdict(party),
        "rooms": [{**room._asdict(), "standing_each_sqft": room.standing_each_sqft} for room in party.rooms],
        "phases": [{"name": phase.name, "people": dict(phase.people)} for phase in party.phases],
        "worst": worst and {**worst._asdict(), "between": list(worst.between)},
        "remedy": remedy
        and {"words": remedy.words, "amount": None if remedy.amount is None else f"{remedy.amount:.2f}"},
    }


def party_from(measures: Record) -> PartyMeasures:
    """Measures of a record; those of a result that was made before they were measured are empty."""
    party = measures.record_or_none("party")
    if party is None:
        return PartyMeasures()
    return PartyMeasures(
        people=party.whole("people"),
        seats=party.whole("seats"),
        table=party.whole("table"),
        standing_sqft=party.number("standing_sqft"),
        without=party.whole("without"),
        rooms=tuple(
            PartyRoom(room.text("room"), room.whole("seats"), room.number("standing_sqft"), room.whole("most_people"))
            for room in party.records("rooms")
        ),
        phases=tuple(_phase(phase) for phase in party.records("phases")),
        worst=_pinch(party.record_or_none("worst")),
        remedy=_remedy(party.record_or_none("remedy")),
    )


def _phase(phase: Record) -> PartyPhase:
    people = phase.record("people")
    return PartyPhase(phase.text("name"), tuple((place, people.whole(place)) for place in people.values))


def _pinch(worst: Record | None) -> Pinch | None:
    if worst is None:
        return None
    return Pinch(
        between=worst.pair("between"),
        at=worst.one_of("at", ("way", "edge")),
        width_ft=worst.number("width_ft"),
        phase=worst.text("phase"),
        flow=worst.number("flow"),
        grade=worst.one_of("grade", get_args(Grade)),
    )


def _remedy(remedy: Record | None) -> Remedy | None:
    if remedy is None:
        return None
    return Remedy(remedy.text("words"), None if remedy.values.get("amount") is None else remedy.money("amount"))
