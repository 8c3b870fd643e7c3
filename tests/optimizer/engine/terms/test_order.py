"""What the explorer counts for order: as measured, and at every insertion what it really adds."""

import numpy as np
import pytest

from optimizer.appraisal.order import disorder_ft, near_miss_ft, unaligned_ft
from optimizer.catalogue import rates, sized_rooms
from optimizer.engine.explorer import Limits, value_of
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.problem import layout_of, modelled_value, rect_of, stamp_losses
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover.solve import Effort, hint, solve
from optimizer.engine.rules.relations import everywhere
from optimizer.engine.terms import Order, Rect, Standing, near_misses
from optimizer.scenario import load_scenario
from tests.explored import explored, states

SCENARIO = load_scenario("scenarios/wattle-rise.yaml")
CENTS = 100


@pytest.fixture(scope="module")
def explorer():
    """Layouts that a short tour passes, good and bad ones."""
    return explored(SCENARIO, sized_rooms(SCENARIO.brief), rebuilds=25, seed=4)


def rects(problem, state):
    """Placed rooms in steps."""
    return [rect_of(problem, room, spot) for room, spot in enumerate(state) if spot is not None]


def besides_walls(problem, state):
    """What near misses with buildings and structures cost a state [cents]."""
    context, total = problem.context, 0
    for room, spot in enumerate(state):
        if spot is not None:
            variant = problem.rooms[room].variants[spot.variant]
            losses = near_misses.TERM.cents(context, context.rooms[room], variant, everywhere(context))
            total += int(losses[spot.y, spot.x])
    return total


def test_order_is_counted_as_it_is_measured(explorer):
    """To the rounding of rates to whole cents for each step, of which no layout has more than a few hundred."""
    problem, money = explorer.board.problem, CENTS * SCENARIO.brief.weights.order
    for state in states(explorer)[:25]:
        site, layout = SCENARIO.site, layout_of(problem, state)
        measured = rates().order * unaligned_ft(site, layout) + rates().disorder * disorder_ft(site, layout)
        assert problem.order.loss(rects(problem, state)) == pytest.approx(money * measured, abs=200)
        near = money * rates().near_miss * near_miss_ft(site, layout)
        counted = stamp_losses(problem, state)["near misses"] + besides_walls(problem, state)
        assert counted == pytest.approx(near, abs=50)


def test_some_layout_is_out_of_order(explorer):
    """The other side of the claim: both terms are met above 0 and at 0."""
    problem, found = explorer.board.problem, states(explorer)
    near = [stamp_losses(problem, state)["near misses"] for state in found]
    beyond = [disorder_ft(SCENARIO.site, layout_of(problem, state)) for state in found]
    assert min(near) == min(beyond) == 0
    assert max(near) > 0
    assert max(beyond) > 0


def test_an_insertion_adds_what_the_loss_grows_by(explorer):
    """For every room of every state: with it less without it, as one figure and as read off the two axes."""
    problem = explorer.board.problem
    order = problem.order
    for state in states(explorer)[:8]:
        every = rects(problem, state)
        for rect in every:
            others = [other for other in every if other is not rect]
            standing, grows = Standing.of(order, others), order.loss(every) - order.loss(others)
            assert standing.loss == order.loss(others)
            assert standing.loss_added(rect) == grows
            x = standing.added(0, 0, 40, size=rect.width, length=rect.depth)
            y = standing.added(1, 0, 40, size=rect.depth, length=rect.width)
            if rect.x < 40 and rect.y < 40:
                added = np.int64(x[rect.x] + y[rect.y])
                length = 2 * (rect.width + rect.depth)
                assert order.rate * added + standing.disorder_added(added, length) == grows


def test_order_by_hand():
    """Two rooms of 4 x 2 and 3 x 2 steps on open ground with a wall along x = 0: the wall and a common line are shared."""
    order = Order.over(((0,), ()), (20, 20), rate=10, disorder_rate=0)
    one = Rect(0, 5, 4, 2)
    assert order.loss([one]) == 10 * (2 + 4 + 4)  # its left edge lies on the wall
    beside = Rect(8, 5, 3, 2)
    assert order.loss([one, beside]) == 10 * (2 + 2 + 2)  # both their lower and upper edges are shared
    assert order.loss([one, Rect(8, 6, 3, 2)]) == 10 * (2 + 4 + 4 + 2 + 2 + 3 + 3)


def test_a_room_centred_on_a_structure_by_hand():
    """Across x the room of 4 x 2 steps is centred on line 2.5: its upright edges count as shared, its others do not."""
    order = Order.over(((), ()), (20, 20), rate=10, disorder_rate=0, centres=((5,), ()))
    assert order.loss([Rect(3, 5, 4, 2)]) == 10 * (2 + 2 + 4 + 4)
    assert order.loss([Rect(2, 5, 1, 2)]) == 10 * (1 + 1)
    standing = Standing.of(order, [Rect(9, 5, 3, 2)])
    x = standing.added(0, 0, 10, size=3, length=4)
    grows = [(order.loss([Rect(9, 5, 3, 2), Rect(at, 8, 3, 4)]) - standing.loss) // 10 for at in range(10)]
    y = int(standing.added(1, 8, 1, size=4, length=3)[0])
    assert grows == [int(added) + y for added in x]
    assert grows[1] == min(grows[:6]) < grows[0]


def test_disorder_by_hand():
    """Of 12 steps of edge a fifth may lie on no line; what is beyond counts five times over."""
    order = Order.over(((), ()), (20, 20), rate=0, disorder_rate=1)
    assert order.loss([Rect(3, 3, 4, 2)]) == 5 * 12 - 12
    assert order.loss([]) == 0


def test_the_model_counts_all_but_near_misses_and_what_it_rounds(explorer):
    """The solver's optimum of an arrangement is what the model counts of it, and no more than the explorer does."""
    problem, state = explorer.board.problem, states(explorer)[0]
    built = build_model(problem, arrangement_scope(problem, key_of(problem, state)))
    hint(built, state)
    answer = solve(built, Effort(deterministic_s=30.0))
    assert answer.verdict == "optimal"
    assert answer.objective == modelled_value(problem, answer.state)
    assert answer.objective <= value_of(explorer.board, Limits.of(problem), answer.state)


def test_a_circle_by_hand():
    """A circle adds nothing wherever it stands, and its square lends no line to others."""
    order = Order.over(((0,), ()), (20, 20), rate=10, disorder_rate=3)
    one, ring = Rect(1, 5, 4, 2), Rect(8, 5, 3, 3, is_round=True)
    assert order.loss([one, ring]) == order.loss([one])
    assert order.loss([one, ring._replace(is_round=False)]) != order.loss([one])
    assert Standing.of(order, [one]).loss_added(ring) == Standing.of(order, [ring]).loss == 0
    assert Standing.of(order, [ring]).loss_added(one) == order.loss([one])
