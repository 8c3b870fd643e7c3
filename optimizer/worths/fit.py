"""Worths that keep all answers and otherwise stay as near to those of the file as can be.

Worths are compared by their ratios, so all is said of logarithms: the nearest point to today's that satisfies linear
inequalities. Since answers speak of ratios alone, the geometric mean of all worths stays as it is, and what no answer
touches does too.
"""

from collections.abc import Sequence
from math import exp
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import nnls

from optimizer.worths.answers import Answer, Ask
from optimizer.worths.contradiction import contradiction, known
from optimizer.worths.sizes import asks_of_sizes, logs_of
from optimizer.worths.things import Thing

Matrix = NDArray[np.float64]
TIES: Final = 3.0
"""Moving one size of a room away from its others counts so many times as much as moving all of them together."""
_UNCHANGED: Final = 0.005
"""A worth that would change by less stays as it is written, as a logarithm."""


def fitted(things: Sequence[Thing], answers: Sequence[Answer]) -> tuple[float, ...] | None:
    """Worths of all things in points, with three digits where they differ from today's; None for a contradiction."""
    if contradiction(things, answers) is not None:
        return None
    asks = [ask for answer in known(things, answers) for ask in answer.asks]
    today = tuple(thing.worth for thing in things)
    if not asks:
        return today
    was = np.array(logs_of(things))
    rows, least = _rows(things, [*asks, *asks_of_sizes(things)])
    weights = _weights(things)
    moved = np.linalg.solve(weights, _least_distance(rows @ np.linalg.inv(weights), least - rows @ was))
    return tuple(
        worth if abs(by) < _UNCHANGED else float(f"{exp(old + by):.3g}")
        for worth, old, by in zip(today, was, moved, strict=True)
    )


def _rows(things: Sequence[Thing], asks: Sequence[Ask]) -> tuple[Matrix, Matrix]:
    """Inequalities `rows @ worths >= least`: one a row, +1 for what is worth more and -1 for what is worth less."""
    at = {thing.name: number for number, thing in enumerate(things)}
    rows = np.zeros((len(asks), len(things)))
    for row, ask in zip(rows, asks, strict=True):
        row[at[ask.more]] += 1.0
        row[at[ask.less]] -= 1.0
    return rows, np.array([ask.least for ask in asks])


def _weights(things: Sequence[Thing]) -> Matrix:
    """How a change of each worth counts: the mean of a room's sizes once, what differs from it `TIES` times."""
    is_same_room = np.array([[one.room == other.room for other in things] for one in things], dtype=float)
    mean = is_same_room / is_same_room.sum(axis=1)
    result: Matrix = mean + TIES * (np.eye(len(things)) - mean)
    return result


def _least_distance(rows: Matrix, least: Matrix) -> Any:
    """Shortest `x` with `rows @ x >= least`, which must have one.

    Source: Lawson and Hanson, Solving Least Squares Problems, 1974, chapter 23: least distance programming by
    non-negative least squares.
    """
    matrix = np.vstack([rows.T, least])
    target = np.zeros(len(matrix))
    target[-1] = 1.0
    shares, _ = nnls(matrix, target)
    rest = matrix @ shares - target
    return -rest[:-1] / rest[-1]
