"""Limits that rooms share, as an insertion asks them: what the others leave for one room."""

from dataclasses import dataclass
from functools import cached_property

from optimizer.engine.amounts import Amount
from optimizer.engine.grid.root_rings import RootRing, taken_sqft
from optimizer.engine.problem import Problem, State


@dataclass(frozen=True, eq=False)
class Limits:
    """Amounts as a tour counts them: money with the likely runs in it, and with something set aside for the ways.

    `required` are the rooms that the tour must place; with `may_wait` a room may have its pad and stubs alone.
    """

    problem: Problem
    amounts: tuple[Amount, ...]
    required: frozenset[int]
    may_wait: bool = False

    @classmethod
    def of(
        cls, problem: Problem, *, set_aside: int = 0, insist: frozenset[int] = frozenset(), may_wait: bool = False
    ) -> "Limits":
        """Limits with so many cents set aside, and with these rooms required besides."""
        required = insist.union(index for index, room in enumerate(problem.rooms) if room.required)
        amounts = tuple(_likely(problem, a, set_aside) if a.rule == "budget" else a for a in problem.amounts)
        return cls(problem, amounts, required, may_wait)

    def left_for(self, state: State, room: int) -> tuple[frozenset[int], bool]:
        """Variants that the room may take while the others stand as they do, and whether it may be left out."""
        fitting, may_lack = set(self._open[room]), room not in self.required
        for amount, ranges in zip(self.amounts, self._ranges, strict=True):
            used = waiting = hoped = 0
            for index, spot in enumerate(state):
                if index == room:
                    continue
                if spot is not None:
                    used += amount.uses[index][spot.variant]
                    continue
                hoped += ranges[index][1]
                waiting += ranges[index][0] if index in self.required else 0
            most = amount.most if amount.most is None else amount.most - used - waiting
            least = amount.least - used - hoped
            may_lack = may_lack and least <= 0
            uses = amount.uses[room]
            fitting = {v for v in fitting if (most is None or uses[v] <= most) and uses[v] >= least}
        return frozenset(fitting), may_lack

    def are_kept(self, state: State) -> bool:
        """Whether a whole state keeps all limits, those of the rings too."""
        for amount in self.amounts:
            used = sum(amount.uses[index][spot.variant] for index, spot in enumerate(state) if spot is not None)
            if used < amount.least or (amount.most is not None and used > amount.most):
                return False
        return all(_taken(self.problem, ring, state, without=-1) <= ring.most_sqft for ring in self.problem.rings)

    @cached_property
    def _ranges(self) -> list[list[tuple[int, int]]]:
        """Least and most that each room can use of each amount."""
        return [[amount.range_of(room, own) for room, own in enumerate(self._open)] for amount in self.amounts]

    @cached_property
    def _open(self) -> list[list[int]]:
        """Variants that each room may take at all; one of which nothing but its pad is asked for has that."""
        every = [range(len(room.variants)) for room in self.problem.rooms]
        if self.may_wait:
            return [list(own) for own in every]
        rooms = zip(self.problem.rooms, every, strict=True)
        return [[v for v in own if not room.variants[v].is_pad] or list(own) for room, own in rooms]

    def begun(self, state: State) -> State:
        """A state with those rooms taken up that stand in a variant which they may not take."""
        return tuple(
            None if spot is not None and spot.variant not in self._open[room] else spot
            for room, spot in enumerate(state)
        )


def ring_room(problem: Problem, state: State, room: int) -> list[tuple[RootRing, float]]:
    """For each ring what the room may take of it [sq ft], with the others where they are."""
    if not problem.rooms[room].is_built:
        return []
    return [(ring, ring.most_sqft - _taken(problem, ring, state, without=room)) for ring in problem.rings]


def _likely(problem: Problem, budget: Amount, set_aside: int) -> Amount:
    uses = tuple(
        tuple(cents + run for cents, run in zip(own, runs, strict=True))
        for own, runs in zip(budget.uses, problem.guide.runs, strict=True)
    )
    # What is set aside leaves nothing at worst; a ceiling that is passed by the fixed charges stays so.
    most = None if budget.most is None else max(min(0, budget.most), budget.most - set_aside)
    return Amount("budget", uses, budget.least, most)


def _taken(problem: Problem, ring: RootRing, state: State, *, without: int) -> float:
    """What the built rooms take of a ring [sq ft]."""
    total = 0.0
    for index, spot in enumerate(state):
        if spot is not None and index != without and problem.rooms[index].is_built:
            variant = problem.rooms[index].variants[spot.variant]
            total += float(taken_sqft(ring, variant.width, variant.depth, variant.is_round)[spot.y, spot.x])
    return total
