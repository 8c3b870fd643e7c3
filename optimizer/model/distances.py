"""Straight distance between two rooms on the grid, exact: a table of what one gap leaves for the other."""

import math

from ortools.sat.python.cp_model import BoolVarT, IntVar

from optimizer.model.separation import ABOVE, BELOW, LEFT, RIGHT, PairModel

SLACK_FT = 1e-6


def keep_near(view: PairModel, distance_ft: float, *, unless: list[BoolVarT]) -> None:
    """Edge to edge at most this far, unless one of the literals is true."""
    step = view.instance.context.lattice.step_ft
    reach = math.floor((distance_ft + SLACK_FT) / step)
    across = [
        math.floor(math.sqrt(max(0.0, (distance_ft + SLACK_FT) ** 2 - (k * step) ** 2)) / step)
        for k in range(reach + 1)
    ]
    enforced = [*view.both, *(literal.negated() for literal in unless)]
    gap_x = view.model.new_int_var(0, reach, "")
    gap_y = view.model.new_int_var(0, reach, "")
    most = view.model.new_int_var(0, reach, "")
    view.model.add_element(gap_x, across, most)
    view.model.add(gap_y <= most)
    gaps = view.gaps()
    for side, gap in ((LEFT, gap_x), (RIGHT, gap_x), (BELOW, gap_y), (ABOVE, gap_y)):
        view.model.add(gaps[side] <= gap).only_enforce_if(enforced)


def keep_apart(view: PairModel, distance_ft: float, *, unless: list[BoolVarT]) -> None:
    """Edge to edge at least this far, unless one of the literals is true.

    On one side in x (or none) and one in y (or none), with the two gaps outside the quarter disc.
    """
    step = view.instance.context.lattice.step_ft
    reach = math.ceil((distance_ft - SLACK_FT) / step)
    across = [
        math.ceil(math.sqrt(max(0.0, (distance_ft - SLACK_FT) ** 2 - (k * step) ** 2)) / step - 1e-9)
        for k in range(reach + 1)
    ]
    enforced = [*view.both, *(literal.negated() for literal in unless)]
    gap_x, gap_y = _real_gap(view, (LEFT, RIGHT), reach, enforced), _real_gap(view, (BELOW, ABOVE), reach, enforced)
    least = view.model.new_int_var(0, reach, "")
    view.model.add_element(gap_x, across, least)
    view.model.add(gap_y >= least)


def _real_gap(view: PairModel, sides: tuple[int, int], reach: int, enforced: list[BoolVarT]) -> IntVar:
    """A gap that is no larger than the rooms really leave on one of two opposite sides, or 0."""
    gap = view.model.new_int_var(0, reach, "")
    literals = []
    for side in sides:
        literal = view.model.new_bool_var("")
        view.model.add(view.gaps()[side] >= gap).only_enforce_if([literal, *enforced])
        literals.append(literal)
    none = view.model.new_bool_var("")
    view.model.add(gap == 0).only_enforce_if(none)
    view.model.add_bool_or([*literals, none])
    return gap
