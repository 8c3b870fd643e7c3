"""How high a ceiling is raised, once a plan was found under a higher one."""

import math
import threading
from decimal import Decimal
from types import SimpleNamespace

import pytest

from optimizer.concepts.whys import ways_out
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
