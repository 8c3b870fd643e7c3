"""How much of the problem one model looks at: everything, one program, or one arrangement."""

from dataclasses import dataclass, field
from functools import lru_cache

from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.zones import Zone, cropped, zones_of
from optimizer.engine.problem import Problem
from optimizer.engine.problem.arrangement import Key


@dataclass(frozen=True, slots=True, eq=False)
class Scope:
    """For each room the variants that it may take (None: it is left out), and whether it may be absent; for each pair
    of rooms its canonical side, or None where any will do.

    With `masks`, no positions of a room's variant outside of the rectangles round these, cut from the zones of `within`
    where that is a scope of the same rooms that holds all of them: the cutting is what takes time.
    """

    variants: tuple[tuple[int, ...] | None, ...]
    optional: tuple[bool, ...]
    sides: tuple[int | None, ...]
    masks: tuple[tuple[Cells, ...], ...] | None = None
    within: "Scope | None" = None
    _cut: dict[tuple[int, int], tuple[Zone, ...]] = field(default_factory=dict)

    def zones(self, problem: Problem, room: int, variant: int) -> tuple[Zone, ...]:
        """Where a room's variant may stand, and at what loss, as rectangles."""
        if (room, variant) not in self._cut:
            outer = self.within.zones(problem, room, variant) if self.within else _all_zones(problem, room, variant)
            self._cut[room, variant] = outer if self.masks is None else cropped(outer, self.masks[room][variant])
        return self._cut[room, variant]


@lru_cache(maxsize=1024)
def _all_zones(problem: Problem, room: int, variant: int) -> tuple[Zone, ...]:
    """Zones of all that is allowed, made once for all the models that ask."""
    return zones_of(problem.rooms[room].allowed[variant], problem.rooms[room].floors[variant])


def whole_scope(problem: Problem) -> Scope:
    """Every choice and side; a room without any size that is one is left out where it may be."""
    there = [room.required or bool(room.variants) for room in problem.rooms]
    return Scope(
        variants=tuple(
            tuple(range(len(room.variants))) if stays else None
            for room, stays in zip(problem.rooms, there, strict=True)
        ),
        optional=tuple(not room.required and stays for room, stays in zip(problem.rooms, there, strict=True)),
        sides=tuple(None for _ in problem.pairs),
    )


def program_scope(problem: Problem, choices: tuple[int, ...]) -> Scope:
    """The rooms with these choices (below 0: left out), in any turn and on any side of each other."""
    return Scope(
        variants=tuple(
            None if choice < 0 else tuple(v for v, variant in enumerate(room.variants) if variant.choice == choice)
            for room, choice in zip(problem.rooms, choices, strict=True)
        ),
        optional=tuple(False for _ in problem.rooms),
        sides=tuple(None for _ in problem.pairs),
    )


def arrangement_scope(problem: Problem, key: Key) -> Scope:
    """One arrangement: rooms with these choices in any turn, on these sides of each other."""
    choices, sides = key
    program = program_scope(problem, choices)
    return Scope(program.variants, program.optional, tuple(None if side < 0 else side for side in sides))
