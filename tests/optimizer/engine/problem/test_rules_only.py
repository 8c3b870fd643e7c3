"""The problem without losses allows what the whole problem allows."""

import numpy as np

from optimizer.catalogue import book_for
from optimizer.engine.grid.context import context_of
from optimizer.engine.problem import barred_places, build_problem
from tests.yards import KEPT_RELATIONS, plain_rooms, plain_yard

YARD, BOOK = plain_yard(*KEPT_RELATIONS), book_for("USD")


def test_the_same_rules():
    """Places, conditions between rooms and sums are the same, and nothing costs anything."""
    whole, rules = (build_problem(YARD, plain_rooms(), BOOK, rules_only=only) for only in (False, True))
    for full, bare in zip(whole.rooms, rules.rooms, strict=True):
        assert (full.name, full.required, full.variants) == (bare.name, bare.required, bare.variants)
        assert all(map(np.array_equal, full.allowed, bare.allowed))
        assert not any(places.any() for places in bare.places)
    assert rules.amounts == whole.amounts
    assert len(rules.rings) == len(whole.rings)
    forbidding = {"near", "apart", "faces", "cook_looks_at_table"}
    for full, bare in zip(whole.pairs, rules.pairs, strict=True):
        assert bare.contact == full.contact
        assert [s.name for s in bare.stamps] == [s.name for s in full.stamps if s.name in forbidding]


def test_bars_together_are_all_that_is_not_allowed():
    """By rule, for one room alone."""
    problem = build_problem(YARD, plain_rooms(), BOOK, rules_only=True)
    context = context_of(YARD, plain_rooms())
    for room, sized in zip(problem.rooms, plain_rooms(), strict=True):
        for variant, allowed in zip(room.variants, room.allowed, strict=True):
            bars = barred_places(context, sized, variant)
            rows, columns = (
                n - size + 1 for n, size in zip(allowed.shape, (variant.depth, variant.width), strict=True)
            )
            assert np.array_equal(~np.logical_or.reduce(list(bars.values()))[:rows, :columns], allowed[:rows, :columns])
