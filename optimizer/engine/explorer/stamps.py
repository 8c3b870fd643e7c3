"""Stamps of two variants, each made once and shared by all boards of a problem."""

from dataclasses import dataclass, field
from typing import Final

from optimizer.engine.explorer.composite import Composite, composite_of
from optimizer.engine.problem import Problem

MOST_BYTES: Final = 400_000_000
"""Stamps kept at most; then they are made anew, since a large yard on a fine grid has many."""
Member = tuple[int, int, int]
"""A room, its variant and the number of the variant's shape among the room's shapes."""


@dataclass(eq=False)
class Stamps:
    """Stamps by rooms and shapes: variants of one shape share theirs."""

    problem: Problem
    _made: dict[tuple[int, int, int, int], Composite] = field(default_factory=dict)
    _bytes: int = 0

    def of(self, moving: Member, standing: Member) -> Composite:
        """What a room does and suffers by its offset from another that stands."""
        key = (moving[0], moving[2], standing[0], standing[2])
        found = self._made.get(key)
        if found is None:
            found = self._new(moving, standing)
            if self._bytes > MOST_BYTES:
                self._made.clear()
                self._bytes = 0
            self._bytes += found.patch.nbytes + found.along_x.nbytes + found.along_y.nbytes
            self._made[key] = found
        return found

    def _new(self, moving: Member, standing: Member) -> Composite:
        if moving[0] > standing[0]:
            return self.of(standing, moving).turned()
        variants = [self.problem.rooms[room].variants[variant] for room, variant, _ in (moving, standing)]
        return composite_of(self.problem, self.problem.pair(moving[0], standing[0]), *variants)
