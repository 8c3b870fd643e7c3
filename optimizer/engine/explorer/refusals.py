"""What the judge refused: rooms of such sizes so near to those places are not put there together again.

A refusal is a neighbourhood: of other layouts with the blamed rooms within three steps most are refused too. It guides
the search, and no bound rests on it.
"""

from dataclasses import dataclass, field
from typing import Final, NamedTuple

from optimizer.engine.explorer.board import Board
from optimizer.engine.grid.variants import Shape
from optimizer.engine.pairs.stamp import FORBIDDEN, Cents
from optimizer.engine.problem import Problem, Spot, State

NEAR: Final = 3
"""Steps along each axis."""


class Member(NamedTuple):
    """A blamed room: its number, its shape and its corner."""

    room: int
    shape: Shape
    x: int
    y: int

    def is_near(self, problem: Problem, spot: Spot | None) -> bool:
        """Whether a spot is one of the neighbourhood."""
        if spot is None or abs(spot.x - self.x) > NEAR or abs(spot.y - self.y) > NEAR:
            return False
        return problem.rooms[self.room].variants[spot.variant].shape == self.shape


NoGood = tuple[Member, ...]


@dataclass
class Refusals:
    """No-goods, and the same by each of their members."""

    all: list[NoGood] = field(default_factory=list)
    _by_member: dict[tuple[int, Shape], list[tuple[Member, NoGood]]] = field(default_factory=dict)

    def learn(self, problem: Problem, state: State, rooms: tuple[int, ...]) -> None:
        """Remember that these rooms may not stand so: all that stand, where none is blamed."""
        blamed = [room for room in rooms if state[room] is not None] or [
            r for r, s in enumerate(state) if s is not None
        ]
        members = tuple(_member(problem, state, room) for room in sorted(set(blamed)))
        if not members or members in self.all:
            return  # a layout without rooms is near to every other
        self.all.append(members)
        for member in members:
            rest = tuple(other for other in members if other is not member)
            self._by_member.setdefault((member.room, member.shape), []).append((member, rest))

    def strike(
        self, board: Board, state: State, room: int, shape: Shape, table: Cents, *, row: int, column: int
    ) -> None:
        """Forbid the places of a table, which starts at (`column`, `row`), that complete a no-good."""
        for member, rest in self._by_member.get((room, shape), ()):
            if all(other.is_near(board.problem, state[other.room]) for other in rest):
                low, left = member.y - NEAR - row, member.x - NEAR - column
                table[max(0, low) : max(0, low + 2 * NEAR + 1), max(0, left) : max(0, left + 2 * NEAR + 1)] = FORBIDDEN

    def strikes(self, problem: Problem, state: State, room: int, spot: Spot) -> bool:
        """Whether a room at a spot completes a no-good."""
        shape = problem.rooms[room].variants[spot.variant].shape
        return any(
            member.is_near(problem, spot) and all(other.is_near(problem, state[other.room]) for other in rest)
            for member, rest in self._by_member.get((room, shape), ())
        )

    def forbid(self, problem: Problem, state: State) -> bool:
        """Whether a state is near to one that was refused."""
        return any(all(member.is_near(problem, state[member.room]) for member in members) for members in self.all)


def _member(problem: Problem, state: State, room: int) -> Member:
    spot = state[room]
    assert spot is not None
    return Member(room, problem.rooms[room].variants[spot.variant].shape, spot.x, spot.y)
