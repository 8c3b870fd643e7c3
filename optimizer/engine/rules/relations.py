"""What the relations have in common: between two rooms they bind by offset, between a room and a thing by position."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from shapely import Geometry

from optimizer.brief import Relation, RelationKind
from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sight_shares import look_in
from optimizer.engine.grid.variants import Variant
from optimizer.engine.pairs import Condition, View
from optimizer.engine.rules.part import Part

TOLERANCE_FT = 0.02

OnThing = Callable[[Context, Relation, Variant, Geometry], Cells]
"""(context, relation, variant of the room, thing) -> positions at which it is kept."""
Between = Callable[[Context, Relation, int], Condition]
"""(context, relation, which end of the pair is the relation's first) -> condition between two rooms."""


@dataclass(frozen=True, slots=True)
class RelationPart:
    """How a kind of relation is said, whether it is a rule or a wish. Between rooms it is a condition, or a look."""

    kind: RelationKind
    on_thing: OnThing
    between: Between | None = None

    def condition(self, context: Context, relation: Relation, first: int) -> Condition | None:
        """Condition between two rooms, of which the one with this number is the pair's first."""
        return None if self.between is None else self.between(context, relation, end_of(context, relation, first, 0))

    def part(self) -> Part:
        """The rule's part: every hard relation of the kind."""
        if self.between is None:
            return Part(positions=self._positions, looks=self._looks)
        return Part(positions=self._positions, conditions=self._conditions)

    def _positions(self, context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
        allowed = None
        for relation in self._hard(context):
            thing = thing_of(context, relation, room)
            if thing is not None:
                fits = self.on_thing(context, relation, variant, thing)
                allowed = fits if allowed is None else allowed & fits
        return allowed

    def _conditions(self, context: Context, first: int, second: int) -> Iterator[Condition]:
        for relation in self._hard(context):
            condition = self.condition(context, relation, first) if joins(context, relation, first, second) else None
            if condition is not None:
                yield condition

    def _looks(self, context: Context, first: int, second: int) -> Iterator[View]:
        for relation in self._hard(context):
            if joins(context, relation, first, second):
                look = look_in(context, relation)
                yield View(look, 0 if look.looker == context.rooms[first].name else 1)

    def _hard(self, context: Context) -> tuple[Relation, ...]:
        return tuple(r for r in context.scenario.brief.relations if r.kind == self.kind and r.is_hard)


def joins(context: Context, relation: Relation, first: int, second: int) -> bool:
    """Whether the relation is between the two rooms."""
    return set(relation.between) == {context.rooms[first].name, context.rooms[second].name}


def end_of(context: Context, relation: Relation, first: int, end: int) -> int:
    """Which end of a pair, whose first room is given, the relation's end is."""
    return 0 if relation.between[end] == context.rooms[first].name else 1


def thing_of(context: Context, relation: Relation, room: SizedRoom) -> Geometry | None:
    """The site's thing at the relation's other end, or None where the relation does not join the room to one."""
    if room.name not in relation.between:
        return None
    other = relation.between[1] if relation.between[0] == room.name else relation.between[0]
    return context.thing(other)


def everywhere(context: Context) -> Cells:
    """Every position."""
    return np.ones((context.lattice.rows, context.lattice.columns), dtype=bool)
