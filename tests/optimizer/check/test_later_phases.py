"""Ceilings of later phases."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.appraisal import priced
from optimizer.catalogue import book_for, sized_rooms
from optimizer.derived import Derived
from optimizer.engine.problem import build_problem
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import load_scenario, read_scenario
from tests.small_yard import changed, problems


def test_the_key_is_read():
    """Phases by their number, in order; phase 1 has the ceiling."""
    text = changed("brief:", "budget: {ceiling: 90000, phases: {3: 20000, 2: 40000}}\nbrief:")
    budget = read_scenario(text, "yard.yaml").brief.budget
    assert budget.phases == ((2, Decimal(40000)), (3, Decimal(20000)))


@pytest.mark.parametrize("key", ["1: 40000", "2: -4", "ten: 4", "10: 4"])
def test_what_is_no_ceiling_of_a_later_phase_is_refused(key):
    """With its line; phase 1 among them."""
    found = problems(changed("brief:", f"budget: {{phases: {{{key}}}}}\nbrief:"))
    assert [problem.split(":")[:2] for problem in found] == [["yard.yaml", "15"]]


def test_the_model_never_counts_more_than_the_bill():
    """Floor of phase 2 in the engine against the exact cost: a fire, coming back for it, contingency. Of what may come
    on held ground it knows nothing, since it may be that nothing fits.
    """
    yard = load_scenario("scenarios/fernhollow-court.yaml")
    budget = replace(yard.brief.budget, phases=((2, Decimal(90000)),))
    wishes = tuple(replace(room, phase=2 if room.kind == "fire" else room.phase) for room in yard.brief.rooms)
    yard = replace(yard, brief=replace(yard.brief, budget=budget, rooms=wishes))
    rooms, book = sized_rooms(yard.brief), book_for("USD")
    (amount,) = (a for a in build_problem(yard, rooms, book).amounts if a.rule == "later_phases")
    fire, reserve = (next(room for room in rooms if room.rules.kind == kind) for kind in ("fire", "reserve"))
    size = fire.choices[-1]
    layout = Layout((Placement(fire.name, size.label, 24, 94, size.width_ft, size.depth_ft, "+y"),))
    cost = priced(Derived(yard, placed_of(rooms, layout)), book).phase(2)
    floor = max(uses for uses in amount.uses[rooms.index(fire)])
    assert 0 < floor <= cost * 100 + 2
    assert set(amount.uses[rooms.index(reserve)]) == {0}
    assert amount.most == 9_000_002
