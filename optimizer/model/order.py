"""The order loss in the model: every room edge lies on a shared line, or costs its length."""

from dataclasses import dataclass

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import IntVar

from optimizer.instance import Instance
from optimizer.model.linear import Linear
from optimizer.model.objective import Rooms


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a room across one axis: where it lies, and its length in steps."""

    room: int
    line: Linear
    length: int


def order_loss(model: cp_model.CpModel, instance: Instance, rooms: Rooms) -> Linear:
    """Loss of an arrangement whose rooms each have one variant [cents]."""
    total: Linear = 0
    for axis, lines in ((0, instance.lines_x), (1, instance.lines_y)):
        edges = _edges(instance, rooms, axis)
        same = {
            (i, j): _equal(model, one.line, other.line)
            for i, one in enumerate(edges)
            for j, other in enumerate(edges)
            if i < j and one.room != other.room
        }
        for i, edge in enumerate(edges):
            reasons = [literal for pair, literal in same.items() if i in pair]
            reasons += [_equal(model, edge.line, line) for line in lines]
            alone = model.new_bool_var("")
            model.add_bool_or([alone, *reasons])
            total += instance.order_rate * edge.length * alone
    return total


def _equal(model: cp_model.CpModel, one: Linear, other: Linear) -> IntVar:
    literal = model.new_bool_var("")
    model.add(one == other).only_enforce_if(literal)
    return literal


def _edges(instance: Instance, rooms: Rooms, axis: int) -> list[Edge]:
    edges = []
    for index, variables in enumerate(rooms):
        if variables is not None and len(variables.literals) == 1:
            variant = instance.rooms[index].variants[next(iter(variables.literals))]
            size, length = (variant.width, variant.depth) if axis == 0 else (variant.depth, variant.width)
            start = variables.x if axis == 0 else variables.y
            edges += [Edge(index, start, length), Edge(index, start + size, length)]
    return edges
