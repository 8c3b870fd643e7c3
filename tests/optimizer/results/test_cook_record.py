"""Measures of kitchens, written and read back."""

import json

from optimizer.appraisal import CookMeasures, Landing, WorkZone
from optimizer.results.cook_record import cook_records, cooks_from
from optimizer.results.untrusted import Record

FULL = CookMeasures(
    "cooker", 15.02, "table", 14.0, 8.5, 12.0, (("gate", "nook"),),
    WorkZone((("grill", "sink", 5.0),), (Landing("sink", (18, 24), (0, 60)),), 1.75), 0, 3.67, (("fire", 0.89),),
)  # fmt: skip


def read_back(*kitchens: CookMeasures) -> tuple[CookMeasures, ...]:
    return cooks_from(Record({"cook": json.loads(json.dumps(cook_records(kitchens)))}, "measures"))


def test_all_measures_come_back():
    assert read_back(FULL, CookMeasures("grill house", 0.0)) == (FULL, CookMeasures("grill house", 0.0))


def test_a_result_from_before_it_was_measured():
    """No kitchens at all, or none of the later measures."""
    assert cooks_from(Record({"walking_ft": 12.0}, "measures")) == ()
    later = ("zone", "dish_risers", "past_stools_ft", "watches")
    (early,) = [{key: value for key, value in record.items() if key not in later} for record in cook_records((FULL,))]
    (found,) = cooks_from(Record({"cook": [early]}, "measures"))
    assert (found.crossed_by, found.zone, found.watches) == (FULL.crossed_by, WorkZone(), ())
