"""The model's variables: where each room stands and which variant it takes."""

from dataclasses import dataclass

from optimizer.engine.grid.zones import Zone
from optimizer.engine.model.linear import Linear, Literal, Model
from optimizer.engine.model.scope import Scope
from optimizer.engine.problem import Problem


@dataclass(frozen=True)
class RoomVariables:
    """One room in the model. Sizes and anchors are linear in the variant's literals; anchors are in half steps."""

    there: Literal | None
    """True where the room is present; None for a room that always is."""
    literals: dict[int, Literal]
    """Variant -> literal; the room is absent where none is true."""
    zones: tuple[tuple[Literal, int, Zone], ...]
    """Literal, variant and zone of every zone; one is true where the room is present."""
    x: Linear
    y: Linear
    width: Linear
    depth: Linear
    anchor_x: Linear
    anchor_y: Linear

    @property
    def presence(self) -> list[Literal]:
        """Literals under which the room is present: none for a room that always is."""
        return [] if self.there is None else [self.there]

    @property
    def place_loss(self) -> Linear:
        """What the place costs [cents]."""
        return sum(zone.loss * literal for literal, _, zone in self.zones)


Rooms = tuple[RoomVariables | None, ...]
"""Variables of each room; None for one that is left out of the scope."""


def room_variables(model: Model, problem: Problem, scope: Scope) -> Rooms:
    """Variables of every room of the scope."""
    return tuple(
        None if taken is None else _room(model, problem, scope, index, taken)
        for index, taken in enumerate(scope.variants)
    )


def _room(model: Model, problem: Problem, scope: Scope, index: int, taken: tuple[int, ...]) -> RoomVariables:
    room, lattice = problem.rooms[index], problem.context.lattice
    literals = {v: model.new_bool_var(f"{room.name}:{v}") for v in taken}
    there = model.new_bool_var(f"{room.name}:there") if scope.optional[index] else None
    model.add(sum(literals.values()) == (1 if there is None else there))
    x = model.new_int_var(0, lattice.columns, f"{room.name}:x")
    y = model.new_int_var(0, lattice.rows, f"{room.name}:y")
    sizes = {v: (room.variants[v].width, room.variants[v].depth) for v in literals}
    anchors = {v: room.variants[v].anchor for v in literals}
    return RoomVariables(
        there=there,
        literals=literals,
        zones=_zones(model, problem, scope, index, literals, (x, y)),
        x=x,
        y=y,
        width=sum(sizes[v][0] * literal for v, literal in literals.items()),
        depth=sum(sizes[v][1] * literal for v, literal in literals.items()),
        anchor_x=2 * x + sum(anchors[v][0] * literal for v, literal in literals.items()),
        anchor_y=2 * y + sum(anchors[v][1] * literal for v, literal in literals.items()),
    )


def _zones(
    model: Model, problem: Problem, scope: Scope, index: int, literals: dict[int, Literal], at: tuple[Linear, Linear]
) -> tuple[tuple[Literal, int, Zone], ...]:
    """Put the room into one zone of its variant; an absent room stands at the origin, to break symmetry."""
    chosen: list[tuple[Literal, int, Zone]] = []
    for v, literal in literals.items():
        zones = scope.zones(problem, index, v)
        own = [model.new_bool_var(f"{problem.rooms[index].name}:{v}:zone{k}") for k in range(len(zones))]
        model.add(sum(own) == literal)
        chosen += [(zone_literal, v, zone) for zone_literal, zone in zip(own, zones, strict=True)]
    x, y = at
    model.add(x >= sum(zone.left * literal for literal, _, zone in chosen))
    model.add(x <= sum(zone.right * literal for literal, _, zone in chosen))
    model.add(y >= sum(zone.low * literal for literal, _, zone in chosen))
    model.add(y <= sum(zone.top * literal for literal, _, zone in chosen))
    return tuple(chosen)
