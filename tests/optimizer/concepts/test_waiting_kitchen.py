"""A kitchen of which only pad and stubs are built: it counts as later everywhere, and never as the room."""

import threading
from dataclasses import replace
from functools import partial

import numpy as np
import pytest

from optimizer.brief import Sketch, SketchedRoom
from optimizer.catalogue import PREPARED, book_for, rates
from optimizer.concepts.case import Case
from optimizer.concepts.cautions import cautions_for
from optimizer.concepts.improve.measure import WAITS_FT, distance_ft
from optimizer.concepts.phases import phases_of, standing_after
from optimizer.concepts.reasons import Teller
from optimizer.concepts.sketched import DRAWN_LATER, NOT_DRAWN, sketched_option
from optimizer.concepts.whys.answers import it_costs
from optimizer.concepts.whys.left_out import explained
from optimizer.concepts.whys.trying import Found
from optimizer.concepts.with_without import with_and_without
from optimizer.engine.explorer import Explorer, Limits, Tour, board_of
from optimizer.engine.problem import Spot, build_problem, is_whole
from optimizer.layout import Layout, Placement
from optimizer.pipeline import plan_drawing
from optimizer.scenario import load_scenario

CASE = Case.of(load_scenario("scenarios/thimble-yard.yaml"))
KITCHEN = "grill counter"
CORNERS = {"dining terrace": (14, 26), KITCHEN: (14, 43), "reading corner": (0, 38)}
SAY = Teller(CASE.scenario, "USD")


def measured(kitchen, case=CASE):
    """A layout with the kitchen in a choice, or without one, measured whatever it breaks."""
    wanted = {"dining terrace": None, "reading corner": None, **({KITCHEN: kitchen} if kitchen else {})}
    sizes = {r.name: r.choice(wanted[r.name] or r.sizes[0].label) for r in case.rooms if r.name in wanted}
    places = (Placement(n, s.label, *CORNERS[n], s.width_ft, s.depth_ft, "-y") for n, s in sizes.items())
    layout = Layout(tuple(places))
    return case.described(layout, case.in_full(layout))


@pytest.fixture(scope="module")
def options():
    """The kitchen waiting, whole, and left out."""
    return [
        replace(measured(choice), id=f"concept-{n}", rank=n) for n, choice in enumerate((PREPARED, "modest", None), 1)
    ]


def test_it_is_left_out_and_has_its_ground(options):
    """Among the rooms left out, with a small share of worth, no trips, no cook, and its paving."""
    waiting, whole, without = options
    worth = next(wish.worth for wish in CASE.scenario.brief.rooms if wish.name == KITCHEN)
    assert KITCHEN in waiting.left_out_rooms
    assert KITCHEN not in whole.left_out_rooms
    assert waiting.appraisal.worth - without.appraisal.worth == pytest.approx(0.15 * worth)
    assert not [trip for trip in waiting.appraisal.trips_ft if KITCHEN in trip]
    assert not waiting.appraisal.cook
    assert waiting.appraisal.paved_share > without.appraisal.paved_share


def test_its_trips_are_in_the_score_and_in_no_measure(options):
    """Nobody walks there yet; the score has its trips as they will be walked, and no stand-in beside them."""
    waiting, whole, without = options
    assert waiting.appraisal.walking_ft == pytest.approx(without.appraisal.walking_ft)
    assert whole.appraisal.later_walking_ft == without.appraisal.later_walking_ft == 0
    walked = dict(waiting.losses)["walking"] - dict(without.losses)["walking"]
    stands_in = rates().stands_in * CASE.scenario.brief.ends_at({KITCHEN})
    assert walked == pytest.approx(waiting.appraisal.later_walking_ft - stands_in)
    assert waiting.appraisal.later_walking_ft > 0


def test_the_later_phase_builds_it_on_its_stubs(options):
    """Both phases together cost no less than the whole at once; after phase 2 the whole kitchen stands on its pad."""
    waiting, whole, without = options
    cost, at_once, bare = (option.appraisal.cost for option in (waiting, whole, without))
    assert bare.phase(1) < cost.phase(1) < at_once.phase(1)
    later = {line.item for line in cost.lines if line.room == KITCHEN and line.phase == 2}
    assert "grill" in later
    assert not [item for item in later if item.endswith((" branch", " run", "paving"))]
    placed = CASE.placed(waiting.layout)
    assert phases_of(placed) == (1, 2)
    assert standing_after(waiting, placed, 1).layout.of(KITCHEN).choice == PREPARED
    assert standing_after(waiting, placed, 2).layout.of(KITCHEN).choice == "modest"


def test_it_is_said(options):
    """In the reason, in what tells concepts apart, in why it is left out, in a caution and on the plan."""
    waiting, whole, without = options
    assert "the grill counter can follow, on a pad with stubs" in SAY.reason(waiting, None)
    assert "with the grill counter" in SAY.difference(whole.layout, waiting.layout)
    assert f"grill counter later, {PREPARED}" in SAY.difference(waiting.layout, whole.layout)
    assert f"grill counter later, {PREPARED}" in SAY.difference(waiting.layout, without.layout)
    assert "without the pad for the grill counter" in SAY.difference(without.layout, waiting.layout)
    assert any("Grill counter, later" in words for words in cautions_for(CASE.scenario, CASE.placed(waiting.layout)))
    for audience in ("owner", "designer"):
        drawing = plan_drawing(CASE.scenario, waiting, audience=audience)
        assert f"{KITCHEN}, later" in " ".join(text.text for text in drawing.texts)
        assert "later_item" in {mark.role for mark in drawing.marks}


def test_with_it_means_with_the_room(options):
    """Pad and stubs are on the side without, and no larger size; why says that it comes later, and who has it now."""
    waiting, whole, _ = options
    pairs = {(pair.room, pair.size): pair for pair in with_and_without(CASE, options[:2], ())}
    assert pairs[KITCHEN, None].with_it.concept == whole.id
    assert pairs[KITCHEN, None].without_it.concept == waiting.id
    assert (KITCHEN, PREPARED) not in pairs
    problem = build_problem(CASE.scenario, CASE.rooms, book_for("USD"), rules_only=True)
    (told, *_) = explained(CASE, problem, options[:2], ())
    why = next(left.why for left in told.left_out if left.room == KITCHEN)
    assert why.startswith(f"later: {PREPARED}; ")
    assert "Built at once: it fits" in why


def test_a_sketch_says_that_it_is_drawn_to_come_later(options):
    """It is left out, but it is drawn: its place is in the sketch. A room without a place is not drawn."""
    places = [p for p in options[0].layout.placements if p.room != "reading corner"]
    drawn = (SketchedRoom(p.room, (p.x_ft, p.y_ft), p.width_ft, p.depth_ft, p.front, p.choice) for p in places)
    sketch = sketched_option(CASE, Sketch("mine", tuple(drawn)), 1)
    why = {left.room: left.why for left in sketch.left_out}
    assert (why[KITCHEN], why["reading corner"]) == (DRAWN_LATER, NOT_DRAWN)


def test_a_plan_found_does_not_tell_the_size_of_what_it_does_without(options):
    """A kitchen that waits is among what the plan does without, and among the sizes only where it stands."""
    waiting, whole, _ = (it_costs(CASE, Found(o.layout, CASE.in_full(o.layout)), None) for o in options)
    assert PREPARED not in waiting
    assert f"It does without the {KITCHEN}" in waiting
    assert f"the {KITCHEN} as modest" in whole


def test_a_pad_for_a_kitchen_is_farther_from_the_sketch_than_a_smaller_kitchen():
    """And nearer than none at all, wherever in a yard of this size it stands."""
    sizes = {label: next(r for r in CASE.rooms if r.name == KITCHEN).choice(label) for label in ("modest", "starter")}
    drawn, small = (Placement(KITCHEN, n, 10, 20, s.width_ft, s.depth_ft, "-y") for n, s in sizes.items())
    far = partial(distance_ft, CASE.rooms, Layout((drawn,)))
    pad = replace(drawn, choice=PREPARED)
    assert far(Layout((pad,))) == WAITS_FT
    assert far(Layout((small,))) < WAITS_FT < far(Layout(()))
    assert distance_ft(CASE.rooms, Layout((pad,)), Layout((drawn,))) == WAITS_FT
    assert distance_ft(CASE.rooms, Layout((pad,)), Layout((pad,))) == 0


def test_a_pad_is_taken_by_tours_that_may():
    """Other tours may not take it, nor begin with it; a state with a pad is not whole."""
    problem = build_problem(CASE.scenario, CASE.rooms, book_for("USD"), rules_only=True)
    number = next(n for n, room in enumerate(problem.rooms) if room.name == KITCHEN)
    pads = {v for v, variant in enumerate(problem.rooms[number].variants) if variant.is_later}
    nothing = tuple(None for _ in problem.rooms)
    free, asked = (Limits.of(problem, may_wait=may_wait) for may_wait in (True, False))
    assert pads
    assert pads <= free.left_for(nothing, number)[0]
    assert pads.isdisjoint(asked.left_for(nothing, number)[0])
    state = tuple(Spot(min(pads), 0, 0) if n == number else Spot(0, 0, 0) for n in range(len(problem.rooms)))
    assert asked.begun(state)[number] is None
    assert free.begun(state) == state
    assert not is_whole(problem, state)


def test_a_tour_takes_up_the_pad_that_it_begins_with():
    """Unless rooms may wait in it; where nothing but the pad is asked for, every tour has it."""
    problem = build_problem(CASE.scenario, CASE.rooms, book_for("USD"), rules_only=True)
    number = next(n for n, room in enumerate(problem.rooms) if room.name == KITCHEN)
    room = problem.rooms[number]
    pad = next(v for v, variant in enumerate(room.variants) if variant.is_later and room.allowed[v].any())
    y, x = (int(place[0]) for place in np.nonzero(room.allowed[pad]))
    start = tuple(Spot(pad, x, y) if n == number else None for n in range(len(problem.rooms)))
    for may_wait in (True, False):
        explorer = Explorer(board_of(problem))
        explorer.run(Tour(0, 1, start=start, may_wait=may_wait), stop=threading.Event())
        found = [state[number] for _, state in explorer.pool.ranked()]
        assert found
        assert (start[number] in found) == may_wait
    only = replace(room, variants=tuple(replace(variant, is_later=True) for variant in room.variants))
    held = replace(problem, rooms=(*problem.rooms[:number], only, *problem.rooms[number + 1 :]))
    assert pad in Limits.of(held).left_for(tuple(None for _ in problem.rooms), number)[0]
