"""What the engine counts of slabs that are there is what the take-off counts, place by place."""

import itertools
from dataclasses import replace

import numpy as np
import pytest

from optimizer.appraisal.appraise import priced
from optimizer.catalogue import Quantity, book_for, rates
from optimizer.derived import Derived
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import variants_of
from optimizer.engine.problem import build_problem
from optimizer.engine.rules.budget import costs_of
from optimizer.engine.terms import slab_losses
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import Paving, SpotLevel
from tests.yards import PLAIN_SITE, circled, plain_rooms, plain_yard, round_at, sized

BOOK = book_for("USD")
PAVING = ("unit paving", "unit paving overlay", "paving lifted")  # a pool has its barrier besides
SLAB = Paving("old patio", ((20.3, 10.7), (38.1, 10.7), (38.1, 26.6), (30, 30), (20.3, 26.6)), "concrete", "reuse")
SITE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=(), surroundings=(), paving=(SLAB,))


def paved(name, kind, width, depth, phase=1):
    room = sized(name, kind, width, depth)
    items = (Quantity("unit paving", float(width * depth)),) if room.rules.paved else ()
    return replace(room, phase=phase, choices=(replace(room.choices[0], quantities=items),))


def yard(site=SITE):
    plain = replace(plain_yard(ceiling=None), site=site)
    return replace(plain, brief=replace(plain.brief, trips=()))


@pytest.mark.parametrize("room", [
    paved("table", "gathering", 14, 12),
    paved("table", "lawn", 10, 10),
    paved("table", "gathering", 24, 18),
    paved("table", "nook", 8, 7, phase=2),
    paved("table", "play", 10, 10),
    paved("table", "pool", 10, 12),
], ids=["fits", "lawn", "too large", "later", "play", "pool"])  # fmt: skip
def test_losses_are_the_money_of_the_take_off(room):
    """Choice and place together are what the room, its paving and what is lifted for it cost, at places all over the yard."""
    scenario, rooms = yard(), plain_rooms(room)
    context, budget = context_of(scenario, rooms), scenario.brief.budget
    for variant in variants_of(rooms[0], context.lattice):
        losses = slab_losses(context, rooms[0], variant, BOOK)
        assert losses.min() >= 0
        own = costs_of(context, rooms[0], (variant,), BOOK)[0] * rates().cost * scenario.brief.weights.cost
        step = context.lattice.step_ft
        for row in range(0, context.lattice.rows - variant.depth, 5):
            for column in range(0, context.lattice.columns - variant.width, 7):
                at = (context.lattice.x_ft(column), context.lattice.y_ft(row))
                posed = Placement("table", "plain", *at, variant.width * step, variant.depth * step, "+y")
                layout = context.pose.layout_back(Layout((posed,)))
                lines = priced(Derived(scenario, placed_of(rooms, layout)), BOOK).lines
                real = sum(line.amount for line in lines if line.item in PAVING and line.phase == 1)
                money = 100 * float(real * (1 + budget.contingency)) * rates().cost * scenario.brief.weights.cost
                assert own + losses[row, column] <= money + 1
                assert own + losses[row, column] == pytest.approx(money, abs=2)


def test_there_are_places_on_the_slab_and_off_it():
    """On it nothing is added; beside it the saving is missed; half on it something is lifted too."""
    scenario, rooms = yard(), plain_rooms(paved("table", "gathering", 14, 12))
    context = context_of(scenario, rooms)
    variant = next(v for v in variants_of(rooms[0], context.lattice) if v.width == 14)
    losses = slab_losses(context, rooms[0], variant, BOOK)
    values = np.unique(losses[: context.lattice.rows - 12, : context.lattice.columns - 14])
    assert values[0] == 0
    saved = 168 * float(BOOK.of("unit paving").price - BOOK.of("unit paving overlay").price)
    missed = 100 * saved * rates().cost * float(1 + scenario.brief.budget.contingency)
    assert values[1] == pytest.approx(missed, abs=1)
    assert len(values) > 5


def test_without_slabs_nothing_is_counted():
    """Kept and lifted paving have no part in it; a slab that falls too little is only lifted."""
    rooms = plain_rooms(paved("table", "gathering", 14, 12))
    for then in ("keep", "lift"):
        context = context_of(yard(replace(SITE, paving=(replace(SLAB, then=then),))), rooms)
        assert slab_losses(context, rooms[0], variants_of(rooms[0], context.lattice)[0], BOOK) is None
    level = tuple(SpotLevel((x, y), 0.0) for x in (0, 60) for y in (0, 40))
    context = context_of(yard(replace(SITE, levels=level)), rooms)
    assert (slab_losses(context, rooms[0], variants_of(rooms[0], context.lattice)[0], BOOK) > 0).all()


def test_the_problem_has_them_in_its_places_and_floors():
    """Each place costs what its terms and the slab say, and the model's floor of it is never above."""
    rooms = plain_rooms(paved("table", "gathering", 14, 12))
    with_slab, without = (build_problem(yard(site), rooms, BOOK) for site in (SITE, replace(SITE, paving=())))
    more = with_slab.rooms[0].places[0] - without.rooms[0].places[0]
    expected = slab_losses(with_slab.context, rooms[0], with_slab.rooms[0].variants[0], BOOK)
    assert (more == expected).all()
    assert (with_slab.rooms[0].floors[0] <= with_slab.rooms[0].places[0]).all()
    assert with_slab.rooms[0].losses[0] < without.rooms[0].losses[0]


def test_a_circle_is_counted_by_its_disc():
    """Never more than the take-off counts, and just that where it lies wholly on the slab or wholly off it."""
    ring = circled("fire", 10)
    choice = replace(ring.choices[0], quantities=(Quantity("unit paving", ring.choices[0].area_sqft),))
    scenario, rooms = yard(), (replace(ring, choices=(choice,)),)
    context, budget = context_of(scenario, rooms), scenario.brief.budget
    (variant,) = variants_of(rooms[0], context.lattice)
    losses, own = slab_losses(context, rooms[0], variant, BOOK), costs_of(context, rooms[0], (variant,), BOOK)[0]
    # Where the circle lies on the slab and the corners of its square do not.
    beside = (losses == 0) & (slab_losses(context, rooms[0], replace(variant, is_round=False), BOOK) > 0)
    assert beside.any()
    some = itertools.product(range(0, context.lattice.rows - 10, 5), range(0, context.lattice.columns - 10, 4))
    kinds = set()
    for row, column in [*some, *np.argwhere(beside)[:5].tolist()]:
        posed = round_at("fire", context.lattice.x_ft(column), context.lattice.y_ft(row), 10)
        placed = placed_of(rooms, context.pose.layout_back(Layout((posed,))))
        lines = [line for line in priced(Derived(scenario, placed), BOOK).lines if line.item in PAVING]
        money = 100 * float(sum(line.amount for line in lines) * (1 + budget.contingency)) * rates().cost
        assert own * rates().cost + losses[row, column] <= money + 1
        items = frozenset(line.item for line in lines)
        if "paving lifted" not in items:
            assert own * rates().cost + losses[row, column] == pytest.approx(money, abs=2)
        kinds.add(items)
    assert {frozenset(["unit paving"]), frozenset(["unit paving overlay"])} <= kinds
