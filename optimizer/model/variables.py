"""The model's variables: where each room stands and which variant it takes."""

from dataclasses import dataclass

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import BoolVarT, IntVar

from optimizer.instance import Instance
from optimizer.instance.covers import room_zones
from optimizer.model.linear import Linear
from optimizer.model.scope import Scope


@dataclass(frozen=True)
class RoomVariables:
    """One room in the model. Sizes and anchors are linear in the variant's literals; anchors are in half steps."""

    present: Linear
    there: IntVar | None
    """True where the room is present; None for a room that always is."""
    literals: dict[int, IntVar]
    """Variant -> literal; the room is absent where none is true."""
    x: IntVar
    y: IntVar
    width: Linear
    depth: Linear
    anchor_x: Linear
    anchor_y: Linear
    place_loss: Linear

    @property
    def presence(self) -> list[BoolVarT]:
        """Literals under which the room is present: none for a room that always is."""
        return [] if self.there is None else [self.there]

    def takes(self, solver: cp_model.CpSolver) -> int | None:
        """The variant taken in a solution, or None."""
        return next((variant for variant, literal in self.literals.items() if solver.boolean_value(literal)), None)


def room_variables(model: cp_model.CpModel, instance: Instance, scope: Scope) -> tuple[RoomVariables | None, ...]:
    """Variables of every room of the scope; None for a room that is left out of it."""
    return tuple(
        _room(model, instance, index, scope.variants[index], optional=scope.optional[index])
        if scope.variants[index] or scope.optional[index]
        else None
        for index in range(len(instance.rooms))
    )


def _room(
    model: cp_model.CpModel, instance: Instance, index: int, variants: tuple[int, ...], *, optional: bool
) -> RoomVariables:
    room = instance.rooms[index]
    lattice = instance.context.lattice
    literals = {v: model.new_bool_var(f"{room.name}:{v}") for v in variants}
    there = model.new_bool_var(f"{room.name}:there") if optional else None
    model.add(sum(literals.values()) == (1 if there is None else there))
    x = model.new_int_var(0, lattice.columns, f"{room.name}:x")
    y = model.new_int_var(0, lattice.rows, f"{room.name}:y")
    place_loss = _place(model, instance, index, literals, x, y)
    return RoomVariables(
        present=1 if there is None else there,
        there=there,
        literals=literals,
        x=x,
        y=y,
        width=sum(room.variants[v].width * lit for v, lit in literals.items()),
        depth=sum(room.variants[v].depth * lit for v, lit in literals.items()),
        anchor_x=2 * x + sum(room.variants[v].anchor[0] * lit for v, lit in literals.items()),
        anchor_y=2 * y + sum(room.variants[v].anchor[1] * lit for v, lit in literals.items()),
        place_loss=place_loss,
    )


def _place(
    model: cp_model.CpModel, instance: Instance, index: int, literals: dict[int, IntVar], x: IntVar, y: IntVar
) -> Linear:
    """Put the room into one zone of its variant; an absent room stands at the origin, to break symmetry."""
    room = instance.rooms[index]
    chosen: list[tuple[IntVar, tuple[int, int, int, int, int]]] = []
    for v, literal in literals.items():
        zones = room_zones(room, v)
        zone_literals = [model.new_bool_var(f"{room.name}:{v}:zone{k}") for k in range(len(zones))]
        model.add(sum(zone_literals) == literal)
        chosen += [(z, (a.left, a.right, a.low, a.top, a.loss)) for z, a in zip(zone_literals, zones, strict=True)]
    model.add(x >= sum(zone[0] * lit for lit, zone in chosen))
    model.add(x <= sum(zone[1] * lit for lit, zone in chosen))
    model.add(y >= sum(zone[2] * lit for lit, zone in chosen))
    model.add(y <= sum(zone[3] * lit for lit, zone in chosen))
    return sum(zone[4] * lit for lit, zone in chosen)
