"""What each budget buys in a yard so small that every layout in it can be judged."""

import threading
from dataclasses import replace
from decimal import Decimal
from functools import cache
from itertools import product

import numpy as np
import pytest

from optimizer.concepts.budgets.points import Bought, steps_of
from optimizer.concepts.budgets.possible import at_ceiling, in_cheapest_level
from optimizer.concepts.budgets.programs import Programs, least_cents
from optimizer.concepts.budgets.run import find_budgets, unit_of, usual_range
from optimizer.concepts.budgets.search import BudgetAsked, BudgetSearch, in_each_level
from optimizer.concepts.case import Case
from optimizer.engine.problem import Spot, build_problem, layout_of
from optimizer.events import to_nobody
from optimizer.scenario import read_scenario
from tests.small_yard import SMALL

TINY = (
    SMALL.partition("  trees:")[0]
    + """\
  keep_outs:
    - {name: rear, outline: [[0, 37], [60, 37], [60, 50], [0, 50]], allow: [path]}
    - {name: middle, outline: [[0, 20], [18, 20], [18, 40], [0, 40]], allow: [path]}
    - {name: right, outline: [[48, 20], [60, 20], [60, 40], [48, 40]], allow: [path]}
brief:
  guests: {everyday: 4, party: 4}
  rooms:
    - name: table
      kind: gathering
      required: true
      choices:
        - {label: six, width: 14, depth: 12, seats: 6, worth: 5}
        - {label: eight, width: 16, depth: 13, seats: 8, worth: 7}
    - name: chairs
      kind: nook
      choices:
        - {label: two, width: 8, depth: 7, seats: 2, worth: 3}
        - {label: four, width: 10, depth: 8, seats: 4, worth: 4}
  trips:
    - {from: door, to: table, count: 10}
    - {from: table, to: chairs, count: 4}
options: {grid_step: 4}
"""
)
NEVER = threading.Event()
LEVELS = ({"plain"}, {"good", "fine"})


@cache
def case():
    return Case.of(read_scenario(TINY, "tiny.yaml"))


@cache
def in_levels():
    """The same yard with three finish levels; good is what it is without them."""
    text = TINY.replace("  trips:", "  finish: {levels: [plain, good, fine], level: good}\n  trips:")
    return Case.of(read_scenario(text, "tiny.yaml"))


@cache
def all_verdicts():
    """Every layout that keeps the rules, whatever it costs, in good and with what it costs in each level."""
    _, highest = usual_range(in_levels())
    rich = replace(at_ceiling(in_levels(), highest), prices_levels=True)
    problem = build_problem(rich.scenario, rich.rooms, rich.book)
    states = product(*(list(spots(room)) for room in problem.rooms))
    judged = ((layout, rich.judged(layout)) for layout in (layout_of(problem, state) for state in states))
    return [(layout, verdict) for layout, verdict in judged if verdict.holds]


@cache
def all_bought():
    """All of them as they are without levels."""
    return [
        Bought(layout, verdict.measured.cost.phase(1), verdict.measured.worth, verdict.score)
        for layout, verdict in all_verdicts()
    ]


@cache
def all_in_levels():
    """All of them in each level."""
    return [
        Bought(layout, at.phase_1, at.worth, verdict.score, at.level)
        for layout, verdict in all_verdicts()
        for at in verdict.at_levels
    ]


def spots(room):
    """All that a room can do."""
    if not room.required:
        yield None
    for variant, allowed in enumerate(room.allowed):
        for y, x in np.argwhere(allowed).tolist():
            yield Spot(variant, x, y)


def asked(seconds=12.0, **changed):
    lowest, highest = usual_range(case())
    return BudgetAsked(case(), lowest, highest, 10, seconds, 3, repeatable=True, processes=0, **changed)


@cache
def searched():
    return find_budgets(asked(), emit=to_nobody, stop=NEVER)


def test_each_worth_is_bought_for_hardly_more_than_any_layout_needs():
    """Against every layout of the yard: the same worths, each within 3 % of the least ceiling that it can have. Of one
    arrangement the search judges few places, and ways may be shorter elsewhere.
    """
    _, highest = usual_range(case())
    truth = steps_of(all_bought(), lowest=Decimal(0), highest=highest, most=10, unit=unit_of(highest))
    assert len(truth) == 2
    assert [point.worth for point in searched().points] == [step.bought.worth for step in truth]
    assert all(s.ceiling <= p.ceiling <= 103 * s.ceiling / 100 for p, s in zip(searched().points, truth, strict=True))


def test_no_layout_of_the_yard_has_more_worth_than_the_bound():
    """By least prices, at the cost of each layout."""
    search = BudgetSearch(asked(), NEVER)
    assert all(bought.worth <= search.possible.most_worth(bought.cost) for bought in all_bought())
    assert search.possible.most_worth(Decimal(100)) == 0.0


def test_concepts_hold_within_their_ceilings():
    """Each is measured anew under its own ceiling, breaks no rule, and says what it adds."""
    points, options = searched().points, searched().options
    assert [option.id for option in options] == [point.concept for point in points]
    assert not [finding for option in options for finding in option.findings]
    assert all(o.appraisal.cost.phase(1) == p.cost <= p.ceiling for o, p in zip(options, points, strict=True))
    assert options[0].reason == "The least that was found to work: table (six)."
    assert options[1].reason == "For about 1,400 USD more: the chairs (two)."


def test_the_same_again():
    """A repeatable search finds the same, whatever the clock says."""
    again = find_budgets(asked(), emit=to_nobody, stop=NEVER)
    assert replace(again, seconds=0) == replace(searched(), seconds=0)


@cache
def searched_in_levels():
    lowest, highest = usual_range(in_levels())
    request = BudgetAsked(in_levels(), lowest, highest, 10, 12.0, 3, repeatable=True, processes=0)
    return find_budgets(request, emit=to_nobody, stop=NEVER)


def test_in_levels_too_each_worth_is_bought_for_hardly_more_than_any_layout_needs():
    """Against every layout in every level: rooms and materials are traded as they should be."""
    _, highest = usual_range(in_levels())
    truth = steps_of(all_in_levels(), lowest=Decimal(0), highest=highest, most=10, unit=unit_of(highest))
    points = searched_in_levels().points
    assert [(p.level, p.worth) for p in points] == [(s.bought.level, s.bought.worth) for s in truth]
    assert len({p.level for p in points}) == 3
    assert all(s.ceiling <= p.ceiling <= 103 * s.ceiling / 100 for p, s in zip(points, truth, strict=True))


def test_a_level_in_which_a_later_phase_passes_its_ceiling_is_not_offered():
    """Phase 1 may pass it: that is what budgets are about."""
    layout, verdict = all_verdicts()[0]
    plain, good, fine = verdict.at_levels
    verdict = replace(
        verdict, at_levels=(replace(plain, over=()), replace(good, over=(1,)), replace(fine, over=(1, 2)))
    )
    bought = Bought(layout, Decimal(1), 1.0, 1.0)
    assert [one.level for one in in_each_level(bought, verdict)] == ["plain", "good"]
    assert list(in_each_level(bought, replace(verdict, at_levels=()))) == [bought]


def test_the_search_is_made_in_the_cheapest_level():
    """Whichever comes first in the file, with a judge that prices all of them; without levels in what there is."""
    levels = in_levels().scenario.brief.finish_levels
    turned = replace(in_levels().scenario, brief=replace(in_levels().scenario.brief, finish_levels=levels[::-1]))
    searched_in = in_cheapest_level(Case.of(turned))
    assert (searched_in.scenario.brief.finish_level, searched_in.prices_levels) == ("plain", True)
    assert searched_in.book == in_levels().at_level("plain").book != in_levels().book
    assert in_cheapest_level(case()) is case()


def test_what_is_tried_costs_what_it_costs_in_the_search():
    """A program that pays in dearer levels only is tried once, at the prices of the cheapest."""
    lowest, highest = usual_range(in_levels())
    search = BudgetSearch(BudgetAsked(in_levels(), lowest, highest, 10, 1.0, 3, repeatable=True, processes=0), NEVER)
    plain, dearer = (tuple(p for p in search.programs.front if p.level.name in names) for names in LEVELS)
    search.programs = Programs(dearer)
    assert [(p.choices, p.cents) for p in search._programs_to_try()] == [(plain[-1].choices, plain[-1].cents)]
    assert min(p.cents for p in dearer) > plain[-1].cents


def test_concepts_are_measured_and_priced_in_the_level_of_their_point():
    found = searched_in_levels()
    for point, option in zip(found.points, found.options, strict=True):
        own = next(at for at in option.at_levels if at.level == point.level)
        assert option.level == point.level
        assert point.cost == option.appraisal.cost.phase(1) == own.phase_1
        assert (point.worth, option.findings) == (own.worth, ())
    changes = [point.level_before is not None for point in found.points]
    assert [" materials instead of " in option.reason for option in found.options] == changes


def test_no_layout_in_any_level_has_more_worth_than_the_bound():
    """By least prices of all levels, at the cost of each layout in each."""
    lowest, highest = usual_range(in_levels())
    search = BudgetSearch(BudgetAsked(in_levels(), lowest, highest, 10, 1.0, 3, repeatable=True, processes=0), NEVER)
    assert all(one.worth <= search.possible.most_worth(one.cost) for one in all_in_levels())
    assert search.possible.most_worth(highest) == max(one.worth for one in all_in_levels())
    for program in search.programs.front:
        at = in_levels().at_level(program.level.name)
        budget = build_problem(at_ceiling(at, highest).scenario, at.rooms, at.book).budget
        fixed = round(highest * 100) - budget.most
        assert program.cents == fixed + least_cents(replace(search.problem, amounts=(budget,)), program.choices)
    assert {program.level.name for program in search.programs.front} == {"plain", "good", "fine"}
    assert lowest < usual_range(case())[0]
    assert highest > usual_range(case())[1]


def test_stopped_at_once_it_says_so():
    stop = threading.Event()
    stop.set()
    found = find_budgets(asked(), emit=to_nobody, stop=stop)
    assert found.stopped
    assert not found.points


def test_what_is_known_from_before_is_not_lost():
    """The first layout found is the one that was given, even where no search follows."""
    (dearest,) = (option.layout for option in searched().options[-1:])
    stop = threading.Event()
    stop.set()
    found = find_budgets(asked(start=(dearest,)), emit=to_nobody, stop=stop)
    assert [option.layout for option in found.options] == [dearest]


def test_too_low_a_ceiling_is_said():
    """What must be there costs more, by least prices."""
    low = replace(asked(seconds=1.0), lowest=Decimal(100), highest=Decimal(200))
    found = find_budgets(low, emit=to_nobody, stop=NEVER)
    assert found.highest_is_too_low
    assert not found.points


@pytest.mark.parametrize(("highest", "unit"), [("99", 1), ("850", 1), ("84000", 100), ("124000", 1000)])
def test_ceilings_are_round(highest, unit):
    assert unit_of(Decimal(highest)) == unit
