"""Programs that no other beats, against all that there are."""

from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from optimizer.brief import FinishLevel, FinishWish
from optimizer.catalogue import SizedChoice, SizedRoom
from optimizer.catalogue.kinds import kind_rules
from optimizer.concepts.budgets.programs import least_cents, programs_of, programs_over
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.variants import Variant
from tests.tiny import NAMES, ROOMS, tiny

FIXED = 700


def made_up(seed):
    """A problem of three rooms with drawn prices and worths; the last choice of the second has no place."""
    random = np.random.default_rng(seed)
    rooms, known, uses = [], [], []
    for number, base in enumerate(ROOMS):
        worths = sorted(random.integers(1, 9, size=3).tolist())
        choices = tuple(SizedChoice(f"c{n}", 4, 4, 0, float(worth)) for n, worth in enumerate(worths))
        variants = tuple(Variant(choice, 1, 1, None, (1, 1)) for choice in (0, 1, 2, 1))
        allowed = [np.ones((5, 6), dtype=bool) for _ in variants]
        if number == 1:
            allowed[2][:] = False
        required = number == 0
        rooms.append(SizedRoom(base.name, kind_rules("nook"), required, 1, choices))
        filler = {"losses": (0,) * 4, "places": base.places[:1] * 4, "floors": base.floors[:1] * 4}
        known.append(replace(base, variants=variants, allowed=tuple(allowed), required=required, **filler))
        uses.append(tuple(random.integers(1, 60, size=4).tolist()))
    problem = replace(tiny(NAMES[0]), rooms=tuple(known), amounts=(Amount("budget", tuple(uses), most=10_000),))
    return problem, tuple(rooms)


def everything(problem, rooms):
    """Price and worth of every set of choices that have a place."""
    offers = []
    for number, room in enumerate(rooms):
        budget = problem.budget.uses[number]
        own = [
            (budget[v], room.choices[variant.choice].worth)
            for v, variant in enumerate(problem.rooms[number].variants)
            if problem.rooms[number].allowed[v].any()
        ]
        offers.append(own if room.required else [(0, 0.0), *own])
    return [(FIXED + sum(c for c, _ in some), sum(w for _, w in some)) for some in product(*offers)]


@pytest.mark.parametrize("seed", range(8))
def test_most_worth_for_every_sum(seed):
    """At every price the same as the best of all sets of choices that have a place."""
    problem, rooms = made_up(seed)
    found, every = programs_of(problem, rooms, FIXED), everything(problem, rooms)
    for cents in sorted({c for c, _ in every} | {c - 1 for c, _ in every}):
        within = [worth for price, worth in every if price <= cents]
        best = found.best_for(cents)
        assert (best.worth if best else None) == (max(within) if within else None)
        assert best is None or best.cents <= cents


@pytest.mark.parametrize("seed", range(4))
def test_most_worth_over_levels(seed):
    """Of programs in two levels, each with its own prices and worths, the same as the best of all of them."""
    (problem, rooms), (other, _) = made_up(seed), made_up(seed + 100)
    dearer = replace(problem, amounts=other.amounts)
    plain, fine = FinishLevel("plain", FinishWish(), 0.9), FinishLevel("fine", FinishWish(), 1.1)
    levels = [(plain, problem), (fine, dearer)]
    found = programs_over([(level, programs_of(priced, rooms, FIXED)) for level, priced in levels])
    every = [(c, level.worth(w)) for level, priced in levels for c, w in everything(priced, rooms)]
    for cents in sorted({c for c, _ in every} | {c - 1 for c, _ in every}):
        within = [worth for price, worth in every if price <= cents]
        best = found.best_for(cents)
        assert (best.worth if best else None) == (max(within) if within else None)
    prices = {level.name: priced for level, priced in levels}
    assert all(p.cents == FIXED + least_cents(prices[p.level.name], p.choices) for p in found.front)
