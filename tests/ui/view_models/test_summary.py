"""What was read, and how a search ended."""

from dataclasses import replace

import pytest

from optimizer.site import Paving, Wall
from tests.sample_run import NOTHING_FITS, SEARCH, UNDECIDED, sample_scenario, sample_set
from ui.view_models import ending, scenario_summary


def test_summary_tells_now_from_later():
    """Rooms of phase 1 are wanted now, others are held; what stays is named."""
    lines = dict(scenario_summary(sample_scenario()).lines)
    assert lines["Wanted now"] == "Gathering area, outdoor kitchen, fire feature and quiet nook."
    assert lines["Kept for later"] == "Water reserve (hot tub or swim spa or plunge pool)."
    assert lines["Stays as it is"] == "House, old shade structure and red oak."
    assert "May wait for a later phase" not in lines


def test_summary_tells_which_phases_are_open():
    """A room that may wait is wanted now all the same."""
    scenario = sample_scenario()
    rooms = tuple(replace(room, may_wait=room.kind == "fire") for room in scenario.brief.rooms)
    lines = dict(scenario_summary(replace(scenario, brief=replace(scenario.brief, rooms=rooms))).lines)
    assert lines["May wait for a later phase"] == "Fire feature."
    assert "fire feature" in lines["Wanted now"]


def test_summary_tells_what_stays_of_walls_and_paving():
    """Walls and kept paving stay, what is lifted is named apart, and a slab that may carry a room is neither."""
    scenario, corners = sample_scenario(), ((0.0, 0.0), (4.0, 0.0), (4.0, 4.0))
    pieces = tuple(Paving(f"{then} slab", corners, "concrete", then) for then in ("keep", "lift", "reuse"))
    site = replace(scenario.site, walls=(Wall("side fence", ((0, 0), (9, 0)), "fence"),), paving=pieces)
    lines = dict(scenario_summary(replace(scenario, site=site)).lines)
    assert lines["Stays as it is"] == "House, old shade structure, side fence, keep slab and red oak."
    assert lines["Lifted"] == "Lift slab."
    assert "Lifted" not in dict(scenario_summary(scenario).lines)


@pytest.mark.parametrize(
    ("option_set", "said"),
    [
        (
            sample_set(1),
            "1 concept after 12 s. By the solver's own count, no layout can be better than the first by more than 20%.",
        ),
        (replace(sample_set(), search=replace(SEARCH, status="proven", option="a1")), "Proven: by the solver"),
        (replace(sample_set(), search=replace(SEARCH, status="proven", option=None)), "better than the first by more"),
        (replace(sample_set(), search=replace(SEARCH, status="proven", option="a2")), "better than the first by more"),
        (replace(sample_set(), search=replace(SEARCH, stopped=True)), "2 concepts after 12 s, stopped by you."),
        (replace(sample_set(), search=replace(SEARCH, bound=None)), "is not known"),
        (NOTHING_FITS, "Nothing fits"),
        (UNDECIDED, "nothing was ruled out"),
    ],
)
def test_ending_claims_what_is_known_and_no_more(option_set, said):
    """Each way of ending has its own words."""
    assert said in ending(option_set)
