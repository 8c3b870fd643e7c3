"""Steps, ramps, guards and walls against published figures, the source beside each check."""

import pytest

from optimizer.catalogue.data_files import data
from optimizer.catalogue.steps import (
    landings_for,
    needs_guard,
    ramp_length_ft,
    risers_for,
    step_rules,
    tread_for,
    wall_needs_permit,
)


@pytest.mark.parametrize(("riser_in", "tread_in"), [(6, 14), (5.5, 15)])
def test_riser_and_tread(riser_in: float, tread_in: float) -> None:
    """2R + T = 26: a riser of 6 goes with a tread of 14, a tread of 15 with a riser of 5.5 (Booth & Hiss, seen)."""
    assert tread_for(riser_in) == pytest.approx(tread_in)


CHART = [
    (18, 4), (18, 4.5), (17, 4.5), (17, 5), (16, 5), (16, 5.5), (15, 5.5),
    (15, 6), (14, 6), (14, 6.5), (13, 6.5), (13, 7), (12, 7), (12, 7.5),
]  # fmt: skip


@pytest.mark.parametrize(("tread_in", "riser_in"), CHART)
def test_chart_of_a_garden_magazine(tread_in: float, riser_in: float) -> None:
    """All 14 pairs of a published chart lie within 1 in of the tread that goes with the riser (2012, seen)."""
    assert 0 <= tread_in - tread_for(riser_in) <= 1


def test_worked_long_tread_steps() -> None:
    """30 in at 4 in a riser: 8 risers of 3.75 in, and 7 treads of 34 in are 238 in (a manual on ramps, seen)."""
    risers = risers_for(30, highest_in=4)
    assert risers == 8
    assert 30 / risers == pytest.approx(3.75)
    assert (risers - 1) * 34 == 238


def test_risers_of_a_rise() -> None:
    """A sill of 1-1/2 in is no step (IRC R311.3, seen); one riser alone is never built (common practice)."""
    assert [risers_for(rise) for rise in (-3, 0, 1.5, 1.6, 7, 14, 14.1)] == [0, 0, 0, 2, 2, 2, 3]


def test_risers_stay_below_the_code() -> None:
    """However high the rise, risers keep under the 7-3/4 in and treads above the 10 in of IRC R311.7.5 (seen)."""
    for rise in range(8, 200):
        riser = rise / risers_for(rise)
        assert 4 <= riser <= 7.75
        assert tread_for(riser) >= 10


@pytest.mark.parametrize(("drop_in", "needed"), [(30.0, False), (30.1, True)])
def test_guard(drop_in: float, needed: bool) -> None:
    """More than 30 in of drop needs a guard, 30 in does not (IRC R312.1, seen)."""
    assert needs_guard(drop_in) == needed


@pytest.mark.parametrize(("above_footing_ft", "needed"), [(4.0, False), (4.01, True)])
def test_permit(above_footing_ft: float, needed: bool) -> None:
    """A wall of 4 ft, measured from the bottom of its footing, is exempt (IRC R105.2(3), seen)."""
    assert wall_needs_permit(above_footing_ft - step_rules().footing_ft) == needed


def test_handrail_and_reach() -> None:
    """Four risers need a handrail (IRC R311.7.8, memory); the drop is looked for within 36 in (R312.1, seen)."""
    assert step_rules().handrail_risers == 4
    assert step_rules().guard_reach_in == 36


def test_landings() -> None:
    """Seven risers need no landing inside, an eighth needs one (common practice, no source)."""
    assert [landings_for(risers) for risers in (0, 2, 7, 8, 14, 15)] == [0, 0, 0, 1, 1, 2]


@pytest.mark.parametrize(("rise_in", "length_ft"), [(30, 30 + 2 * 5), (31, 31 + 3 * 5), (6, 6 + 2 * 5)])
def test_ramp(rise_in: float, length_ft: float) -> None:
    """1:12, at most 30 in a run, landings of 60 in (2010 ADA Standards 405, memory); the sums are arithmetic."""
    assert ramp_length_ft(rise_in / 12) == pytest.approx(length_ft)


def test_every_figure_has_a_source() -> None:
    """Each figure of the file of steps says what it means and where it comes from."""
    assert all(entry["meaning"] and entry["source"] for entry in data("steps.yaml").values())
