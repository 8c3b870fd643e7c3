"""Figures of ground, sight, smoke and arrival in words."""

from optimizer.appraisal import GroundMeasures, SiteMeasures, SmokeShare
from tests.sample_run import sample_scenario
from ui.view_models.site_figures import site_figures
from ui.view_models.words import words_of

WORDS = words_of(sample_scenario())


def test_nothing_known_says_nothing():
    assert list(site_figures(SiteMeasures(), WORDS)) == []


def test_each_fact_has_a_figure():
    ground = GroundMeasures(risers=5, cut_bcy=3.4, fill_ccy=2.0, undrained=("nook",), flags=("handrail: 5 risers",))
    site = SiteMeasures(
        ground,
        sight=(("nook", "pond", "in_view", 0.75),),
        smoke=(SmokeShare("fire", "table", 0.2),),
        arrival_ft=86.0,
        axes=(("kitchen door", None),),
    )
    told = {figure.label: (figure.value, figure.meaning) for figure in site_figures(site, WORDS)}
    assert told["Steps"][0] == "5 risers"
    assert told["Earth"][0] == "3 cu yd dug, 2 cu yd filled"
    assert told["Water"][0] == "nook"
    assert told["By model code"] == ("handrail", "5 risers")
    assert told["Sight"] == ("75%", "of pond is seen from nook; meant to be")
    assert "the smoke of fire drifts to table" in told["Smoke"][1]
    assert told["Straight out of kitchen door"][0] == "nothing"
