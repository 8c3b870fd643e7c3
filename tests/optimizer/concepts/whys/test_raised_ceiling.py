"""How high a ceiling is raised, once a plan was found under a higher one."""

import math
import threading
from decimal import Decimal
from types import SimpleNamespace

import pytest

from optimizer.concepts.whys import ways_out
from optimizer.concepts.whys.answers import above_the_ceiling
from optimizer.concepts.whys.changes import with_ceiling
from tests.optimizer.concepts.whys.tiny_yard import tiny


@pytest.mark.parametrize(("tried", "least"), [(20_000, 10_200), (10_100, 10_100)])
def test_a_ceiling_leaves_a_little_above_the_cheapest_plan_and_is_never_above_what_was_tried(monkeypatch, tried, least):
    """2 % above 10,000, of two plans that were found; no more than the ceiling that they were found under."""
    case = tiny()
    cheap, dear = (SimpleNamespace(cost=Decimal(cost)) for cost in (10_000, 10_050))
    trial = SimpleNamespace(best=dear, holding=(dear, cheap))
    monkeypatch.setattr(ways_out.WaysOut, "_if_held", lambda _, change, __: change)
    monkeypatch.setattr(ways_out, "solved_by", lambda _, change, found, before: (change, found))
    asked = ways_out.WaysOut(case, until=math.inf, stop=threading.Event())
    change, found = asked._least(with_ceiling(case, Decimal(tried)), trial)
    assert (change.ceiling, found) == (least, cheap)


def test_half_of_what_a_plan_is_above_the_ceiling_is_tried_and_so_on(monkeypatch):
    """130,000 was found over a ceiling of 90,000: 110,000 gives one for 105,000, 97,500 none, 101,250 one for 101,000."""
    case, asked_for = tiny(), []
    costs = {110_000: 105_000, 97_500: None, 101_250: 101_000}

    def trial_of(cost):
        return SimpleNamespace(holds=cost is not None, holding=() if cost is None else (SimpleNamespace(cost=cost),))

    def tried(_, change, *, share):
        asked_for.append(int(change.ceiling))
        assert 0 < share < 1
        return trial_of(None if (cost := costs[asked_for[-1]]) is None else Decimal(cost))

    monkeypatch.setattr(ways_out.WaysOut, "tried", tried)
    asked = ways_out.WaysOut(case, until=math.inf, stop=threading.Event())
    assert asked._cheapest(trial_of(Decimal(130_000))).cost == 101_000
    assert asked_for == [*costs]


def test_what_the_cheapest_plan_costs_is_said_and_that_it_is_not_proven():
    found = [SimpleNamespace(cost=Decimal(cost)) for cost in (120_000, 95_000)]
    told = above_the_ceiling(tiny(), found)
    assert "costs 95,000 USD, 5,000 USD above the ceiling" in told
    assert "not proven" in told
    assert above_the_ceiling(tiny(), [*found, SimpleNamespace(cost=Decimal(90_000))]) == ""
