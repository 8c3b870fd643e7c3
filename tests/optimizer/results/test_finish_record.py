"""The take-off of the finish, written and read back."""

import json

from optimizer.appraisal import FieldArea, FinishTakeOff
from optimizer.results.finish_record import finish_from, finish_record
from optimizer.results.untrusted import Record

FULL = FinishTakeOff(
    fields=(FieldArea(("table", "cooker"), "running bond", 90.0, 180.0, 0.05), FieldArea(("nook",), "stacked", 0.0, 40.0, 0.05)),
    ways_sqft=60.0,
    ways_cuts=0.05,
    border_ft=75.5,
    accent_sqft=12.0,
    accent_cuts=0.10,
    cap_ft=9.5,
)  # fmt: skip


def read_back(finish):
    return finish_from(Record(json.loads(json.dumps({"finish": finish_record(finish)})), "measures"))


def test_all_amounts_come_back():
    assert read_back(FULL) == FULL
    assert read_back(FinishTakeOff()) == FinishTakeOff()


def test_what_is_ordered_is_what_is_laid_and_what_is_cut_away():
    assert finish_record(FULL)["field_order_sqft"] == 280 * 1.05


def test_a_result_from_before_it_was_measured():
    assert finish_from(Record({"walking_ft": 12.0}, "measures")) == FinishTakeOff()
