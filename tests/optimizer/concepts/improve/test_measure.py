"""What the model counts of a layout is how far it lies from the sketch, in any pose of the yard."""

from dataclasses import replace

import numpy as np
import pytest

from optimizer.concepts.case import Case
from optimizer.concepts.improve.measure import ABSENT_FT, distance_ft, feet_of, wanted_of
from optimizer.engine.model.nearest import FINE
from optimizer.engine.problem import Spot, build_problem, layout_of
from optimizer.layout import Layout
from optimizer.scenario import load_scenario


def counted(problem, wanted, state):
    """What the model counts, by the figures that it is given."""
    total = 0
    for data, want, spot in zip(problem.rooms, wanted, state, strict=True):
        if spot is None:
            total += want.left_out
            continue
        variant = data.variants[spot.variant]
        middle = (FINE * (2 * spot.x + variant.width), FINE * (2 * spot.y + variant.depth))
        total += want.changes[spot.variant]
        total += 0 if want.middle is None else sum(abs(a - b) for a, b in zip(middle, want.middle, strict=True))
    return total


def drawn(problem, random):
    """A state drawn from all there are, some rooms left out."""
    state = []
    for data in problem.rooms:
        spot = Spot(int(random.integers(len(data.variants))), int(random.integers(30)), int(random.integers(30)))
        state.append(None if random.random() < 0.2 else spot)
    return tuple(state)


def test_the_model_counts_the_distance():
    """The yard is turned and mirrored before it is solved; sketches lie off the grid and have fronts of their own."""
    case = Case.of(load_scenario("scenarios/wattle-rise.yaml"))
    problem, random = build_problem(case.scenario, case.rooms, case.book, rules_only=True), np.random.default_rng(3)
    assert any(variant.front for data in problem.rooms for variant in data.variants)
    seen = set()
    for _ in range(40):
        placed = layout_of(problem, drawn(problem, random)).placements
        sketch = Layout(tuple(replace(p, x_ft=p.x_ft + random.random(), y_ft=p.y_ft - 0.4) for p in placed))
        state = drawn(problem, random)
        far_ft = distance_ft(case.rooms, sketch, layout_of(problem, state))
        parts = counted(problem, wanted_of(problem, sketch), state)
        assert feet_of(problem.context.lattice, parts) == pytest.approx(far_ft, abs=0.05)
        seen.add(far_ft > ABSENT_FT)
    assert True in seen
