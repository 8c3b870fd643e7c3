"""In what order to polish: programs in turn, and in each the best first that differ clearly."""

from collections.abc import Sequence
from itertools import zip_longest

from optimizer.layout import Layout, difference
from optimizer.options import LEAST_DIFFERENCE
from optimizer.search import Board, State, likely_cost_of, posed_layout_of

LOOKED_AT = 50
"""States of one program that are compared; further ones are worse than all of these."""


def varied(board: Board, states: Sequence[State], *, diagonal_ft: float) -> tuple[State, ...]:
    """States from a ranked sequence, so ordered that two of three have all rooms, if there are so many, and that
    those between come from different programs. More of those with all rooms turn out to pass the ceiling.
    """
    programs: dict[tuple[bool, ...], list[State]] = {}
    for state in states:
        programs.setdefault(tuple(spot is not None for spot in state), []).append(state)
    ordered = {p: _ideas_first(board, _dear_last(board, s[:LOOKED_AT]), diagonal_ft) for p, s in programs.items()}
    whole = ordered.pop((True,) * len(board.instance.rooms), [])
    return _in_turn(whole[::2], whole[1::2], _in_turn(*ordered.values()))


def _dear_last(board: Board, states: Sequence[State]) -> list[State]:
    """States in their order, those last that will likely pass the ceiling with their ways, steps and runs."""
    spendable, more = board.instance.spendable, board.instance.ways_estimate
    if spendable is None:
        return list(states)
    return sorted(states, key=lambda state: likely_cost_of(board, state) + more > spendable)


def _in_turn(*lists: Sequence[State]) -> tuple[State, ...]:
    return tuple(state for turn in zip_longest(*lists) for state in turn if state is not None)


def _ideas_first(board: Board, states: Sequence[State], diagonal_ft: float) -> list[State]:
    """States that differ from all before them, then the others."""
    new: list[tuple[State, Layout]] = []
    alike: list[State] = []
    for state in states:
        layout = posed_layout_of(board.instance, state)
        if all(difference(layout, other, diagonal_ft=diagonal_ft) >= LEAST_DIFFERENCE for _, other in new):
            new.append((state, layout))
        else:
            alike.append(state)
    return [state for state, _ in new] + alike
