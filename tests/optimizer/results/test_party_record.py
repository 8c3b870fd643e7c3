"""Measures of the party, written and read back."""

import json
from decimal import Decimal

from optimizer.appraisal import PartyMeasures, PartyPhase, PartyRoom
from optimizer.appraisal.party import Pinch, Remedy
from optimizer.results.party_record import party_from, party_record
from optimizer.results.untrusted import Record

FULL = PartyMeasures(
    people=12,
    seats=8,
    table=6,
    standing_sqft=120.5,
    without=1,
    rooms=(PartyRoom("table", 6, 100.5, 9), PartyRoom("nook", 2, 20.0, 2)),
    phases=(PartyPhase("arrive", (("gate", 12),)), PartyPhase("eat", (("table", 9), ("nook", 2), ("elsewhere", 1)))),
    worst=Pinch(("gate", "table"), "way", 3.0, "leave", 0.4, "A"),
    remedy=Remedy("widen the way between gate and table", Decimal("640.00")),
)


def read_back(party: PartyMeasures) -> PartyMeasures:
    return party_from(Record({"party": json.loads(json.dumps(party_record(party)))}, "measures"))


def test_all_measures_come_back():
    assert read_back(FULL) == FULL


def test_nobody_walks_anywhere():
    assert read_back(PartyMeasures()) == PartyMeasures()


def test_a_remedy_without_a_price():
    party = PartyMeasures(remedy=Remedy("stays 3 ft wide", None))
    assert read_back(party) == party


def test_a_result_from_before_it_was_measured():
    assert party_from(Record({"walking_ft": 12.0}, "measures")) == PartyMeasures()
