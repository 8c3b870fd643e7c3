"""Two rooms in the model, as rules and terms speak of them."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import product
from typing import Final

from optimizer.engine.grid.variants import Variant
from optimizer.engine.model.floors import add_floors
from optimizer.engine.model.linear import Linear, Literal, Model
from optimizer.engine.model.variables import RoomVariables
from optimizer.engine.pairs import Contact
from optimizer.engine.problem import Problem, RoomPair
from optimizer.engine.problem.arrangement import ABOVE, BELOW, LEFT, RIGHT

__all__ = ["Linear", "Literal", "PairModel"]

OUTWARDS: Final = {LEFT: (1, 0), RIGHT: (-1, 0), BELOW: (0, 1), ABOVE: (0, -1)}
"""From the first room to the second, by the side of the second on which the first lies."""
_SIDES: Final = {outwards: side for side, outwards in OUTWARDS.items()}


@dataclass(frozen=True)
class PairModel:
    """A pair of rooms in the model. `side` is the canonical side to which it is held, or None.

    `by_side` holds the literals of each side that separation has made: where one is true, the first room lies so.
    `apart` holds the distances along x and along y once something has asked for them.
    """

    model: Model
    problem: Problem
    pair: RoomPair
    rooms: tuple[RoomVariables, RoomVariables]
    side: int | None
    by_side: dict[int, list[Literal]] = field(default_factory=dict)
    apart: list[Linear] = field(default_factory=list)

    @property
    def contact(self) -> Contact:
        """How the rooms may stand side by side."""
        return self.pair.contact

    def gap_of(self, way: int) -> int:
        """Steps between the rooms under a literal of `by_side`, by its number: the first one is that of standing apart,
        unless they must touch.
        """
        return self.contact.gap if way == 0 and not self.contact.must_touch else 0

    @property
    def both(self) -> list[Literal]:
        """Literals under which both rooms are present."""
        return self.rooms[0].presence + self.rooms[1].presence

    def absent(self) -> list[Literal]:
        """Literals of which one is true where a room is absent."""
        return [literal.negated() for literal in self.both]

    def room(self, end: int) -> RoomVariables:
        """The first room (0) or the second (1)."""
        return self.rooms[end]

    def variants(self, end: int) -> list[tuple[Variant, Literal]]:
        """Variants of the room at an end, each with the literal under which it is taken."""
        variants = self.problem.rooms[(self.pair.first, self.pair.second)[end]].variants
        return [(variants[v], literal) for v, literal in self.rooms[end].literals.items()]

    def insets(self) -> list[tuple[int, list[Literal]]]:
        """Every sum of the insets of two variants, with the literals of which one is true where theirs is another."""
        sizes = (sorted({variant.inset for variant, _ in self.variants(end)}) for end in (0, 1))
        return [(sum(pair), [*self._not_of(0, pair[0]), *self._not_of(1, pair[1])]) for pair in product(*sizes)]

    def _not_of(self, end: int, inset: int) -> list[Literal]:
        return [taken for variant, taken in self.variants(end) if variant.inset != inset]

    def boolean(self, name: str = "") -> Literal:
        """A new literal."""
        return self.model.new_bool_var(name)

    def number(self, low: int, high: int, name: str = "") -> Linear:
        """A new whole number."""
        return self.model.new_int_var(low, high, name)

    def always(self, said: Linear, *literals: Literal) -> None:
        """Say something, wherever all the literals are true."""
        self.model.add(said).only_enforce_if(list(literals))

    def hold(self, said: Linear, *literals: Literal, unless: Sequence[Literal] = ()) -> None:
        """Say something of both rooms, where the literals are true and none of `unless` is."""
        self.always(said, *literals, *self.both, *(literal.negated() for literal in unless))

    def any_of(self, literals: Sequence[Literal]) -> None:
        """Say that one of the literals is true at least."""
        self.model.add_bool_or(list(literals))

    def look_up(self, index: Linear, table: Sequence[int], result: Linear) -> None:
        """Say that the result is the table's value at an index."""
        self.model.add_element(index, list(table), result)

    def gaps(self) -> dict[int, Linear]:
        """Gap between the rooms with the first on each side of the second."""
        a, b = self.rooms
        return {
            LEFT: b.x - a.x - a.width,
            RIGHT: a.x - b.x - b.width,
            BELOW: b.y - a.y - a.depth,
            ABOVE: a.y - b.y - b.depth,
        }

    def gaps_by_axis(self) -> tuple[tuple[Linear, Linear], tuple[Linear, Linear]]:
        """Gaps of the two sides along x, and along y."""
        gaps = self.gaps()
        return (gaps[LEFT], gaps[RIGHT]), (gaps[BELOW], gaps[ABOVE])

    def gaps_beyond(self, outwards: tuple[int, int], end: int) -> tuple[Linear, tuple[Linear, Linear]]:
        """Gap beyond the side of the room at an end that looks `outwards`, and the two gaps beside it."""
        side = _SIDES[outwards if end == 0 else (-outwards[0], -outwards[1])]
        along_x, along_y = self.gaps_by_axis()
        return self.gaps()[side], along_y if side in (LEFT, RIGHT) else along_x

    def touch(self, side: int, share: int, *literals: Literal) -> None:
        """Say that the rooms share so many steps of edge with the first on that side of the second."""
        a, b = self.rooms
        start_a, size_a, start_b, size_b = (
            (a.y, a.depth, b.y, b.depth) if side in (LEFT, RIGHT) else (a.x, a.width, b.x, b.width)
        )
        self.hold(self.gaps()[side] == 0, *literals)
        self.hold(start_a + share <= start_b + size_b, *literals)
        self.hold(start_b + share <= start_a + size_a, *literals)

    def distances(self) -> tuple[Linear, Linear]:
        """How far the anchors are apart along x and along y, at least, in half steps: 0 where a room is absent.

        With the floors that the ways of standing side by side give.
        """
        if self.apart:
            return self.apart[0], self.apart[1]
        lattice = self.problem.context.lattice
        a, b = self.rooms
        names = self.problem.rooms[self.pair.first].name, self.problem.rooms[self.pair.second].name
        x = self.number(0, 2 * lattice.columns, f"{names[0]}-{names[1]}:dx")
        y = self.number(0, 2 * lattice.rows, f"{names[0]}-{names[1]}:dy")
        for distance, here, there in ((x, a.anchor_x, b.anchor_x), (y, a.anchor_y, b.anchor_y)):
            self.hold(distance >= here - there)
            self.hold(distance >= there - here)
        add_floors(self, (x, y))
        self.apart.extend((x, y))
        return x, y
