"""What all wishes cost together, said to an owner below the limit."""

from dataclasses import replace
from decimal import Decimal

from tests.sample_run import sample_scenario
from ui.view_models import all_wishes


def limited(ceiling):
    """The sample yard with another limit."""
    scenario = sample_scenario()
    budget = replace(scenario.brief.budget, ceiling=Decimal(ceiling))
    return replace(scenario, brief=replace(scenario.brief, budget=budget))


def test_by_how_much_all_wishes_pass_the_limit_and_what_would_wait():
    """The same least sum whatever the limit; the excess is their difference."""
    wide, is_over = all_wishes(limited(900_000))
    assert not is_over
    least = int(wide.partition("at least $")[2].partition(" ")[0].replace(",", ""))
    told, is_over = all_wishes(limited(least - 1_000))
    assert is_over
    assert any(f"${over:,} over your all-in limit" in told for over in (999, 1_000, 1_001))
    assert "without the " in told
    assert "over your ceiling" in all_wishes(limited(least - 1_000), for_designer=True)[0]
