"""What held ground is until something is built on it: a key of a reserve, its price, its beds."""

import pytest

from optimizer.catalogue import book_for, sized_rooms
from optimizer.layout import Layout, placed_of
from optimizer.planting.strips import round_water
from tests.optimizer.derived.futures.yard import HELD, TEXT, yard
from tests.small_yard import changed, problems

NOOK = "    - {name: seats, kind: nook, seats: 2, worth: 3}\n"
HELD_SQFT = 36 * 22


def reserve(use: str | None):
    key = "phase: 2," if use is None else f"phase: 2, interim: {use},"
    scenario = yard(("phase: 2,", key), ("    - {name: cooker", f"{NOOK}    - {{name: cooker"))
    return sized_rooms(scenario.brief)


@pytest.mark.parametrize(
    ("use", "item"),
    [(None, "reserve ground"), ("lawn", "reserve ground"), ("gravel court", "gravel court"), ("nook", "plain paving")],
)
def test_each_use_has_its_price(use, item):
    """The whole of the ground in phase 1, by the square foot; sleeves are paid whatever it is."""
    (choice,) = reserve(use)[0].choices
    now = {quantity.item: quantity.amount for quantity in choice.quantities if quantity.phase == 1}
    assert now == {item: HELD_SQFT, "reserve kept clear": 1}


def test_gravel_costs_more_than_lawn_and_paving_most():
    """In every book."""
    for currency in ("USD", "AUD"):
        lawn, gravel, paving = (
            book_for(currency).of(i).price for i in ("reserve ground", "gravel court", "plain paving")
        )
        assert lawn < gravel < paving


def test_ground_open_to_a_nook_has_no_bed_round_it():
    """Lawn and gravel have one."""
    beds = [round_water(placed_of(reserve(use), Layout((HELD,)))).area for use in ("lawn", "gravel court", "nook")]
    assert beds[0] == beds[1] > HELD_SQFT
    assert beds[2] == 0


@pytest.mark.parametrize(("old", "new", "said"), [
    ("phase: 2,", "phase: 2, interim: sand,", "expected lawn, gravel court or nook, found 'sand'"),
    ("phase: 2,", "interim: lawn,", "expected a reserve of a later phase, found water later in phase 1; give the room a later `phase`"),
    ("phase: 2,", "phase: 2, interim: nook,", "expected a nook in the brief, found none; write lawn or gravel court"),
    ("{name: grass, kind: lawn,", "{name: grass, kind: lawn, interim: lawn,", "expected `interim` in a reserve only, found it in grass"),
])  # fmt: skip
def test_a_use_that_says_nothing_is_refused(old, new, said):
    """One report, with its line."""
    (problem,) = problems(changed(old, new, TEXT))
    assert problem.startswith("yard.yaml:")
    assert said in problem
