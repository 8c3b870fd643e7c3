"""Measures of the site's facts, written and read back."""

import json

from optimizer.appraisal import GroundMeasures, SiteMeasures, SmokeShare
from optimizer.results.site_record import site_from, site_record
from optimizer.results.untrusted import Record

FULL = SiteMeasures(
    ground=GroundMeasures(
        levels=(("table", -0.5), ("nook", 1.25)),
        risers=5,
        cut_bcy=3.5,
        fill_ccy=2.25,
        away_lcy=1.25,
        wall_face_sqft=40.0,
        tallest_wall_ft=2.5,
        guard_ft=3.0,
        undrained=("nook",),
        flags=("handrail: 5 risers from table to nook",),
    ),
    sight=(("nook", "pond", "in_view", 0.7778),),
    smoke=(SmokeShare("fire", "table", 0.2),),
    arrival_ft=86.5,
    risers_seen_share=0.4,
    axes=(("kitchen door", "fire"), ("dining window", None)),
    focal_point=((31.5, 64.0), 3),
)


def read_back(site: SiteMeasures) -> SiteMeasures:
    return site_from(Record(json.loads(json.dumps(site_record(site))), "measures"))


def test_all_measures_come_back():
    assert read_back(FULL) == FULL


def test_a_scenario_that_says_little():
    assert read_back(SiteMeasures()) == SiteMeasures()


def test_a_result_from_before_they_were_measured():
    assert site_from(Record({"walking_ft": 12.0}, "measures")) == SiteMeasures()
