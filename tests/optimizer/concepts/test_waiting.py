"""A kitchen whose phase is open, on an invented pocket yard: built later it counts as later, and the words say why."""

import threading
from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Budget
from optimizer.catalogue import PREPARED, book_for, phase_in, rates
from optimizer.concepts.case import Case
from optimizer.concepts.cautions import cautions_for
from optimizer.concepts.phases import phases_of, standing_after
from optimizer.concepts.reasons import Teller
from optimizer.concepts.waiting import waiting_cost, waiting_words
from optimizer.concepts.whys.left_out import explained
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.explorer.refusals import Refusals
from optimizer.engine.problem import Spot, build_problem, layout_of
from optimizer.results.document import option_record
from optimizer.scenario import load_scenario
from tests.optimizer.concepts.test_waiting_kitchen import KITCHEN
from tests.optimizer.concepts.test_waiting_kitchen import measured as measured_in

THIMBLE = load_scenario("scenarios/thimble-yard.yaml")
LATER = "modest, in phase 2"
BOOK = book_for("USD")


def opened(**money):
    """The yard with its kitchen's phase open."""
    rooms = tuple(replace(room, may_wait=room.name == KITCHEN) for room in THIMBLE.brief.rooms)
    budget = Budget(**{"ceiling": Decimal(60000), **money})
    return Case.of(replace(THIMBLE, brief=replace(THIMBLE.brief, rooms=rooms, budget=budget)))


CASE = opened()


def measured(kitchen, case=CASE):
    """A layout with the kitchen in a choice, or without one, measured whatever it breaks."""
    return measured_in(kitchen, case)


@pytest.fixture(scope="module")
def options():
    """The kitchen in phase 2, at once, and left out."""
    choices = (LATER, "modest", None)
    return [replace(measured(choice), id=f"concept-{n}", rank=n) for n, choice in enumerate(choices, 1)]


def test_it_is_left_out_and_walked_to_once_it_stands(options):
    """No room of phase 1 and nothing of its cook; its ways are laid with it, and nothing is walked twice over."""
    waiting, whole, without = options
    assert waiting.left_out_rooms == without.left_out_rooms != whole.left_out_rooms
    assert waiting.appraisal.seats == without.appraisal.seats
    assert not waiting.appraisal.cook
    assert waiting.appraisal.walking_ft == pytest.approx(whole.appraisal.walking_ft)
    assert waiting.appraisal.later_walking_ft == 0
    first, second = (standing_after(waiting, CASE.placed(waiting.layout), phase) for phase in (1, 2))
    assert [way for way in second.appraisal.ways if KITCHEN in way.between]
    assert not [way for way in first.appraisal.ways if KITCHEN in way.between]


def test_each_phase_has_its_own_plan_and_its_own_money(options):
    """After phase 1 it is not there, after phase 2 it is whole; phase 1 costs what it does without, and sleeves."""
    waiting = options[0]
    placed, costs = CASE.placed(waiting.layout), [option.appraisal.cost for option in options]
    assert phases_of(placed) == (1, 2)
    assert standing_after(waiting, placed, 1).layout.of(KITCHEN) is None
    assert standing_after(waiting, placed, 2).layout.of(KITCHEN).choice == "modest"
    sleeves = BOOK.of("reserve kept clear").price * CASE.scenario.brief.budget.factor
    assert 0 <= costs[0].phase(1) - costs[2].phase(1) - sleeves < 500  # lights and ways of its own are in neither
    assert costs[0].total > costs[1].total
    (record,) = (room for room in option_record(CASE.rooms, waiting)["rooms"] if room["name"] == KITCHEN)
    assert (record["phase"], record["seats"]) == (2, 0)


def test_the_score_saves_nothing_by_building_later(options):
    """Its own work with coming back and contingency counts like money of phase 1: worth and score say at once."""
    waiting, whole, _ = options
    lines = [line for line in waiting.appraisal.cost.lines if (line.room, line.phase) == (KITCHEN, 2)]
    back = 1 + BOOK.of("return to the site").price
    then = sum(line.amount for line in lines) * back * Decimal("1.15")
    assert waiting_cost(waiting.layout, waiting.appraisal.cost, BOOK) == pytest.approx(then)
    counted = float(waiting.appraisal.cost.phase(1) + then)
    assert dict(waiting.losses)["cost"] == pytest.approx(rates().cost * counted)
    assert whole.score < waiting.score
    assert waiting_cost(whole.layout, whole.appraisal.cost, BOOK) == 0


def test_the_words_say_when_and_why(options):
    """In the reason, the caution and among the rooms left out: the phase, and by how much phase 1 would pass its limit."""
    waiting, whole, _ = options
    (words,) = waiting_words(CASE.scenario, waiting.layout, waiting.appraisal.cost)
    assert words.startswith(f"the {KITCHEN} comes in phase 2, since phase 1 would pass its limit by about ")
    over = Decimal(words.split(" about ")[1].split()[0].replace(",", ""))
    assert over == pytest.approx(whole.appraisal.cost.phase(1) - 60000, abs=2500)  # ways and sleeves are not in it
    say = Teller(CASE.scenario, "USD")
    assert words in say.reason(waiting, None)
    assert f"{KITCHEN} in phase 2" in say.reason(waiting, whole)
    placed, appraisal = CASE.placed(waiting.layout), waiting.appraisal
    (caution,) = (c for c in cautions_for(CASE.scenario, placed, appraisal.legs, appraisal.cost) if "sleeves" in c)
    assert words[1:] in caution
    assert "stubs" not in " ".join(cautions_for(CASE.scenario, placed, (), appraisal.cost))
    problem = build_problem(CASE.scenario, CASE.rooms, BOOK, rules_only=True)
    told = explained(CASE, problem, [waiting], [])[0].left_out
    assert next(left.why for left in told if left.room == KITCHEN).startswith("later: in phase 2, since phase 1")


def test_where_phase_1_has_the_money_that_is_said():
    """Nobody is told of a limit that would be kept, or that is not there."""
    rich, free = opened(ceiling=Decimal(200000)), opened(ceiling=None)
    waiting = [(case.scenario, measured(LATER, case)) for case in (rich, free)]
    said = [waiting_words(yard, option.layout, option.appraisal.cost)[0] for yard, option in waiting]
    assert "would keep its limit with it" in said[0]
    assert said[1] == f"the {KITCHEN} comes in phase 2"


def test_the_engine_counts_it_in_its_phase():
    """In phase 1 its sleeves alone, in phase 2 all of it; at once is best, later is better than never."""
    case = opened(phases=((2, Decimal(50000)),))
    problem = build_problem(case.scenario, case.rooms, BOOK)
    number = next(n for n, room in enumerate(problem.rooms) if room.name == KITCHEN)
    room, labels = problem.rooms[number], [choice.label for choice in case.rooms[number].choices]
    by = {labels[variant.choice]: v for v, variant in enumerate(room.variants)}
    now, later = by["modest"], by[LATER]
    uses = {amount.rule: amount.uses[number] for amount in problem.amounts}
    assert 0 < uses["budget"][later] < uses["budget"][now] / 10
    assert uses["later_phases"][now] == 0 < uses["budget"][now] < uses["later_phases"][later]
    assert room.losses[now] < room.losses[later] < room.absent_loss
    assert room.losses[later] < room.losses[by[PREPARED]]
    careless = replace(case.scenario.brief, weights=replace(case.scenario.brief.weights, worth=0.0))
    losses = build_problem(replace(case.scenario, brief=careless), case.rooms, BOOK).rooms[number].losses
    assert losses[now] < losses[later]  # money alone does not speak for later either


def test_what_is_refused_at_once_may_hold_later():
    """Money refuses a kitchen in phase 1 at a place; the same kitchen in phase 2 may stand there."""
    problem = build_problem(CASE.scenario, CASE.rooms, BOOK, rules_only=True)
    number = next(n for n, room in enumerate(problem.rooms) if room.name == KITCHEN)
    variants, refusals = problem.rooms[number].variants, Refusals()
    labels = [CASE.rooms[number].choices[variant.choice].label for variant in variants]
    states = [
        tuple(Spot(labels.index(label), 14, 17) if n == number else None for n in range(len(problem.rooms)))
        for label in ("modest", LATER)
    ]
    refusals.learn(problem, states[0], (number,))
    assert [refusals.forbid(problem, state) for state in states] == [True, False]


def test_a_search_puts_it_into_the_phase_that_has_the_money():
    """Where both phases have a ceiling every layout that holds keeps both, and the best has the kitchen in phase 2."""
    case = opened(ceiling=Decimal(75000), phases=((2, Decimal(50000)),))
    problem = build_problem(case.scenario, case.rooms, BOOK)
    explorer = Explorer(board_of(problem))
    explorer.run(Tour(150, 1, set_aside=1_200_000), stop=threading.Event())  # 12,000 are left for ways and lights
    layouts = [layout_of(problem, state) for _, state in explorer.pool.ranked()[:8]]
    judged = [(layout, verdict) for layout in layouts if (verdict := case.judged(layout)).holds]
    assert judged
    for _, verdict in judged:
        cost = verdict.measured.cost
        assert cost.phase(1) <= 75000
        assert cost.phase(2) == 0 or 25000 <= cost.phase(2) <= 50000
    best, _ = min(judged, key=lambda one: one[1].score)
    assert phase_in(best.of(KITCHEN).choice) == 2
