"""The pattern of a state, as the model fixes it: choices, and the canonical side of each pair."""

from itertools import combinations

from optimizer.engine.problem.problem import Problem
from optimizer.engine.problem.state import State

LEFT, RIGHT, BELOW, ABOVE = range(4)
Key = tuple[tuple[int, ...], tuple[int, ...]]
"""Choice of each room (-1: left out), and side of each pair's second room on which its first lies (-1: none)."""


def key_of(problem: Problem, state: State) -> Key:
    """Arrangement of a state."""
    choices = tuple(
        -1 if spot is None else problem.rooms[room].variants[spot.variant].choice for room, spot in enumerate(state)
    )
    return choices, tuple(_side(problem, state, a, b) for a, b in combinations(range(len(state)), 2))


def _side(problem: Problem, state: State, a: int, b: int) -> int:
    one, other = state[a], state[b]
    if one is None or other is None:
        return -1
    v, w = problem.rooms[a].variants[one.variant], problem.rooms[b].variants[other.variant]
    if one.x + v.width <= other.x:
        return LEFT
    if other.x + w.width <= one.x:
        return RIGHT
    return BELOW if 2 * one.y + v.depth <= 2 * other.y + w.depth else ABOVE
