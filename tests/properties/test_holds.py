"""A hold never makes the best better, and never gives a room a place that it did not have."""

from dataclasses import replace

import numpy as np
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from optimizer.brief import Hold
from optimizer.catalogue import book_for, sized_rooms
from optimizer.engine.problem import build_problem, layout_of
from optimizer.engine.prover import BranchAndBound, Budget
from tests.explored import NEVER
from tests.properties.test_random_yards import yards
from tests.yards import holding, plain_rooms, plain_yard

BOOK = book_for("USD")


def boxes(step, columns, rows):
    """Rectangles with corners on a grid."""
    sides = st.tuples(st.integers(0, columns), st.integers(1, columns), st.integers(0, rows), st.integers(1, rows))

    def ring(left, width, low, height):
        x1, y1, x2, y2 = (step * n for n in (left, low, left + width, low + height))
        return ((x1, y1), (x2, y1), (x2, y2), (x1, y2))

    return sides.map(lambda parts: ring(*parts))


def holds(room, step, columns, rows, choice):
    """One hold of a room, of each kind."""
    at = st.tuples(st.integers(0, columns), st.integers(0, rows)).map(lambda at: (step * at[0], step * at[1]))
    return st.one_of(
        at.map(lambda at: Hold(room, at_ft=at)),
        boxes(step, columns, rows).map(lambda area: Hold(room, within=area)),
        boxes(step, columns, rows).map(lambda area: Hold(room, not_in=area)),
        st.sampled_from(["+x", "-x", "+y", "-y"]).map(lambda front: Hold(room, front=front)),
        st.just(Hold(room, choice=choice)),
    )


def proven(scenario):
    """Least objective by the model's count, and a layout that has it; None where there is none."""
    problem = build_problem(scenario, sized_rooms(scenario.brief), BOOK)
    proof = BranchAndBound(problem, Budget(NEVER, workers=1)).run()
    if proof.state is None:
        return None
    assert proof.is_proven
    return proof.objective, layout_of(problem, proof.state)


@settings(max_examples=15, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(yards(), holds("nook", 4.0, 10, 8, "one"))
def test_the_best_is_never_better(yard, hold):
    """On yards of two rooms, proven with the hold and without it."""
    free, held = proven(yard), proven(holding(yard, hold))
    assume(held is not None)
    assert free is not None
    assert free[0] <= held[0]
    if free[1] == held[1]:
        assert free[0] == held[0]


@settings(max_examples=30, deadline=None, derandomize=True)
@given(st.data(), st.sampled_from(["table", "cooker", "fire", "nook"]))
def test_no_place_is_added(data, name):
    """Every place that a hold on the grid leaves was one before, at the same losses: so no layout becomes cheaper."""
    scenario = plain_yard(ceiling=None)
    hold = data.draw(holds(name, 1.0, 60, 40, "plain"))
    free, held = (build_problem(yard, plain_rooms(), BOOK) for yard in (scenario, holding(scenario, hold)))
    for before, after in zip(free.rooms, held.rooms, strict=True):
        known = {replace(variant): n for n, variant in enumerate(before.variants)}
        for v, variant in enumerate(after.variants):
            n = known[variant]
            assert after.losses[v] == before.losses[n]
            assert not np.any(after.allowed[v] & ~before.allowed[n])
            kept = after.allowed[v]
            assert np.array_equal(after.places[v][kept], before.places[n][kept])
