"""The cook's rule: the explorer's stamp and the check say the same of a kitchen with a drawn counter."""

import numpy as np
import pytest

from optimizer.brief import Equipment, RoomWish
from optimizer.catalogue import book_for, sized_room
from optimizer.check.case import CheckCase
from optimizer.check.cook import cook_looks_at_table
from optimizer.derived import Derived
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import FORBIDDEN, Gaps
from optimizer.engine.problem import Spot, build_problem, layout_of
from optimizer.layout import placed_of
from tests.yards import plain_yard, sized

NAMES = ("grill", "griddle", "preparation", "sink")
KITCHEN = sized_room(RoomWish("cooker", "kitchen", equipment=tuple(map(Equipment, NAMES))))
ROOMS = (sized("table", "gathering", 14, 12, required=True), KITCHEN)
YARD = plain_yard(ceiling=None)
PROBLEM = build_problem(YARD, ROOMS, book_for("USD"))
TABLES, COOKER = PROBLEM.rooms
MODEST: dict[int, Variant] = {v: variant for v, variant in enumerate(COOKER.variants) if variant.choice == 0}
TABLE = Spot(0, 28, 20)
(RULE,) = [stamp for stamp in PROBLEM.pair(0, 1).stamps if stamp.name == "cook_looks_at_table"]


def looks(variant: int, x: int, y: int) -> bool:
    """Whether the check finds that the cook looks at the table."""
    layout = layout_of(PROBLEM, (TABLE, Spot(variant, x, y)))
    return not list(cook_looks_at_table(CheckCase(Derived(YARD, placed_of(ROOMS, layout)))))


def kept(variant: int, x: int, y: int) -> bool:
    """Whether the explorer's stamp allows it."""
    offset = np.array([TABLE.x - x]), np.array([TABLE.y - y])
    gaps = Gaps(TABLES.variants[TABLE.variant], COOKER.variants[variant], *offset, PROBLEM.context.lattice.step_ft)
    return bool(RULE.cents(gaps)[0, 0] < FORBIDDEN)


def ahead_steps(variant: int, x: int, y: int) -> float:
    """How far the table's middle lies before the counter's, in steps, by hand."""
    placed, table = COOKER.variants[variant], TABLES.variants[TABLE.variant]
    sense, axis = (1 if placed.front[0] == "+" else -1), placed.front[1]  # type: ignore[index]
    here = x + placed.width / 2 if axis == "x" else y + placed.depth / 2
    there = TABLE.x + table.width / 2 if axis == "x" else TABLE.y + table.depth / 2
    return float(sense * (there - here) - placed.counter_ahead / 2)


def test_the_counter_lies_ahead_of_the_rooms_middle():
    """Two grills make the aisle deeper than the ground before the counter; else this file would test nothing."""
    assert {variant.counter_ahead for variant in MODEST.values()} != {0}


@pytest.mark.parametrize("variant", MODEST, ids=lambda v: str(COOKER.variants[v].front))
def test_the_explorer_strikes_out_what_the_check_finds(variant: int):
    """Nothing that the check refuses is left; what is struck out beyond it lies within a step, by rounding up."""
    found = [
        (kept(variant, x, y), looks(variant, x, y), ahead_steps(variant, x, y))
        for y in range(0, 40, 3)
        for x in range(0, 60, 5)
    ]
    assert all(check for allowed, check, _ in found if allowed)
    assert all(ahead < 1 for allowed, check, ahead in found if check and not allowed and abs(ahead) < 1)
    assert {check for _, check, _ in found} == {True, False}
    assert all(check == (ahead >= 0) for _, check, ahead in found if abs(ahead) > 1)
