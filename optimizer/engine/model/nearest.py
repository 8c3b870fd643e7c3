"""The model of a layout as near as can be to where rooms are wanted: every rule, and movement as the only loss."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from optimizer.engine.amounts import Amount
from optimizer.engine.model.build import LayoutModel, build_model
from optimizer.engine.model.linear import Linear
from optimizer.engine.model.scope import whole_scope
from optimizer.engine.model.variables import RoomVariables
from optimizer.engine.problem import Problem, Spot

FINE: Final = 100
"""Parts of a half step in which movement is counted: where rooms are wanted need not lie on the grid."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """Where one room is wanted: twice its middle from the grid's corner, what each variant counts as a change, and what
    it counts to leave the room out; all in parts of a half step. Without a middle the place does not matter.
    """

    middle: tuple[int, int] | None
    changes: tuple[int, ...]
    left_out: int


def nearest_model(problem: Problem, wanted: Sequence[Wanted]) -> LayoutModel:
    """Build the model; movement is counted along x and along y, of the middles of rooms."""
    built = build_model(problem, whole_scope(problem), with_objective=False, with_mirrors=True)
    moves: Linear = 0
    changes: Linear = 0
    for variables, want in zip(built.rooms, wanted, strict=True):
        if variables is None:
            changes += want.left_out
            continue
        moves += _movement(built, variables, want, problem)
        changes += sum(want.changes[v] * literal for v, literal in variables.literals.items())
        if variables.there is not None:
            changes += want.left_out * (1 - variables.there)
    result = LayoutModel(built.model, built.rooms, {"moves": moves, "changes": changes})
    result.model.minimize(result.objective)
    return result


def forbid(built: LayoutModel, spots: Sequence[tuple[int, Spot]], *, within: int, without: Sequence[int] = ()) -> None:
    """Forbid that rooms, by number, all stand with these variants within so many steps of these corners; or only where
    the rooms of `without` are all missing too.
    """
    missing = [built.rooms[room] for room in without]
    ways = [literal for variables in missing if variables is not None for literal in variables.presence]
    for room, spot in spots:
        variables = built.rooms[room]
        if variables is None:
            continue
        ways.append(variables.literals[spot.variant].negated())
        for corner, at in ((variables.x, spot.x), (variables.y, spot.y)):
            below, above = built.model.new_bool_var(""), built.model.new_bool_var("")
            built.model.add(corner <= at - within - 1).only_enforce_if(below)
            built.model.add(corner >= at + within + 1).only_enforce_if(above)
            ways += [below, above]
    built.model.add_bool_or(ways)


def set_aside(built: LayoutModel, amount: Amount, most: int) -> None:
    """Let what rooms use come to so much at the most."""
    taken = [
        amount.uses[room][v] * literal
        for room, variables in enumerate(built.rooms)
        if variables is not None
        for v, literal in variables.literals.items()
    ]
    built.model.add(sum(taken) <= most)


def _movement(built: LayoutModel, variables: RoomVariables, want: Wanted, problem: Problem) -> Linear:
    if want.middle is None:
        return 0
    lattice, moves = problem.context.lattice, []
    ends = ((variables.x, variables.width, lattice.columns), (variables.y, variables.depth, lattice.rows))
    for (corner, size, most), middle in zip(ends, want.middle, strict=True):
        far = max(abs(middle), abs(2 * FINE * most - middle))
        moved = built.model.new_int_var(0, far, "")
        here = FINE * (2 * corner + size)
        built.model.add(moved >= here - middle).only_enforce_if(variables.presence)
        built.model.add(moved >= middle - here).only_enforce_if(variables.presence)
        moves.append(moved)
    return sum(moves)
