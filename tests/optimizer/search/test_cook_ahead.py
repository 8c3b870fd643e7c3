"""The cook's rule: explorer, model and check say the same of a kitchen with a drawn counter."""

import itertools

import numpy as np
import pytest
from ortools.sat.python import cp_model

from optimizer.brief import Equipment, RoomWish
from optimizer.catalogue import book_for, sized_room
from optimizer.check.case import CheckCase
from optimizer.check.cook import cook_looks_at_table
from optimizer.derived import Derived
from optimizer.instance import build_instance
from optimizer.instance.variants import Variant
from optimizer.layout import placed_of
from optimizer.model.scope import Scope
from optimizer.model.separation import PairModel, have_ahead
from optimizer.model.variables import room_variables
from optimizer.search import board_of, layout_of
from optimizer.search.pair_masks import FORBIDDEN, strike_out
from optimizer.search.state import Spot
from tests.yards import plain_yard, sized

NAMES = ("grill", "griddle", "preparation", "sink")
KITCHEN = sized_room(RoomWish("cooker", "kitchen", equipment=tuple(map(Equipment, NAMES))))
ROOMS = (sized("table", "gathering", 14, 12, required=True), KITCHEN)
YARD = plain_yard(ceiling=None)
BOARD = board_of(build_instance(YARD, ROOMS, book_for("USD")))
COOKER = BOARD.instance.rooms[1]
MODEST: dict[int, Variant] = {v: variant for v, variant in enumerate(COOKER.variants) if variant.choice == 0}
TABLE = Spot(0, BOARD.column + len(BOARD.xs) // 2, BOARD.row + len(BOARD.ys) // 2 + 1)


def looks(variant: int, row: int, column: int) -> bool:
    """Whether the check finds that the cook looks at the table."""
    spot = Spot(variant, int(BOARD.xs[column]), int(BOARD.ys[row]))
    return not list(
        cook_looks_at_table(CheckCase(Derived(YARD, placed_of(ROOMS, layout_of(BOARD.instance, (TABLE, spot))))))
    )


def ahead_steps(variant: int, row: int, column: int) -> float:
    """How far the table's middle lies before the counter's, in steps, by hand."""
    placed, table = COOKER.variants[variant], BOARD.instance.rooms[0].variants[TABLE.variant]
    sense, axis = (1 if placed.front[0] == "+" else -1), placed.front[1]  # type: ignore[index]
    here = BOARD.xs[column] + placed.width / 2 if axis == "x" else BOARD.ys[row] + placed.depth / 2
    there = TABLE.x + table.width / 2 if axis == "x" else TABLE.y + table.depth / 2
    return float(sense * (there - here) - placed.counter_ahead / 2)


def test_the_counter_lies_ahead_of_the_rooms_middle():
    """Two grills make the aisle deeper than the ground before the counter; else this file would test nothing."""
    assert {variant.counter_ahead for variant in MODEST.values()} != {0}


@pytest.mark.parametrize("variant", MODEST, ids=lambda v: str(COOKER.variants[v].front))
def test_the_explorer_strikes_out_what_the_check_finds(variant: int):
    """Nothing that the check refuses is left; what is struck out beyond it lies within a step, by rounding up."""
    empty = np.zeros((len(BOARD.ys), len(BOARD.xs)), dtype=np.int64)
    left = strike_out(BOARD, empty, room=1, variant=MODEST[variant], other=0, spot=TABLE) < FORBIDDEN
    spots = itertools.product(range(0, len(BOARD.ys), 3), range(0, len(BOARD.xs), 5))
    found = [(left[spot], looks(variant, *spot), ahead_steps(variant, *spot)) for spot in spots]
    assert all(check for kept, check, _ in found if kept)
    assert all(ahead < 1 for kept, check, ahead in found if check and not kept and abs(ahead) < 1)
    assert {check for _, check, _ in found} == {True, False}
    assert all(check == (ahead >= 0) for _, check, ahead in found if abs(ahead) > 1)


@pytest.mark.parametrize("variant", MODEST, ids=lambda v: str(COOKER.variants[v].front))
def test_the_model_has_the_counter_ahead(variant: int):
    """With both rooms held where they stand the rule alone is kept just where the table lies before the counter."""
    allowed = np.argwhere(COOKER.allowed[variant][np.ix_(BOARD.ys, BOARD.xs)])[::37]
    found = {(keeps(variant, *map(int, spot)), ahead_steps(variant, *map(int, spot)) >= 0) for spot in allowed}
    assert found == {(True, True), (False, False)}


def keeps(variant: int, row: int, column: int) -> bool:
    """Whether the solver finds the rule kept."""
    model, instance = cp_model.CpModel(), BOARD.instance
    scope = Scope(variants=((TABLE.variant,), (variant,)), optional=(False, False), sides=(None,), with_order=False)
    table, cooker = room_variables(model, instance, scope)
    assert table is not None
    assert cooker is not None
    pair = BOARD.pairs[0][1]
    assert pair is not None
    held = ((table.x, TABLE.x), (table.y, TABLE.y), (cooker.x, BOARD.xs[column]), (cooker.y, BOARD.ys[row]))
    for variable, value in held:
        model.add(variable == int(value))
    for end in pair.ahead:
        have_ahead(PairModel(model, instance, pair, table, cooker, [], None), end)
    return cp_model.CpSolver().solve(model) in (cp_model.OPTIMAL, cp_model.FEASIBLE)
