"""The order loss in the model: every room edge lies on a shared line, or costs its length."""

from dataclasses import dataclass

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import IntVar

from optimizer.fields import FREE_PART
from optimizer.instance import Instance
from optimizer.model.linear import Linear
from optimizer.model.objective import Rooms


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a room across one axis: where it lies, and its length in steps under each of some literals, of which
    one is true.
    """

    room: int
    line: Linear
    lengths: tuple[tuple[IntVar, int], ...]


def order_loss(model: cp_model.CpModel, instance: Instance, rooms: Rooms) -> Linear:
    """Loss of an arrangement, whose rooms are all present [cents]."""
    unaligned: Linear = 0
    length: Linear = 0
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
            unaligned += _alone(model, edge, reasons)
            length += sum(steps * literal for literal, steps in edge.lengths)
    beyond = model.new_int_var(0, FREE_PART * _most(instance, rooms), "beyond")
    model.add(beyond >= FREE_PART * unaligned - length)
    return instance.order_rate * unaligned + instance.disorder_rate * beyond


def _most(instance: Instance, rooms: Rooms) -> int:
    """Steps of room edge that there can be."""
    placed = [instance.rooms[index].variants for index, variables in enumerate(rooms) if variables is not None]
    return sum(max(2 * (variant.width + variant.depth) for variant in variants) for variants in placed)


def _alone(model: cp_model.CpModel, edge: Edge, reasons: list[IntVar]) -> Linear:
    """Length of an edge that lies on no shared line, else 0; one term for each length that it may have."""
    total: Linear = 0
    for length in sorted({length for _, length in edge.lengths}):
        alone = model.new_bool_var("")
        others = [literal for literal, other in edge.lengths if other != length]
        model.add_bool_or([alone, *reasons, *others])
        total += length * alone
    return total


def _equal(model: cp_model.CpModel, one: Linear, other: Linear) -> IntVar:
    literal = model.new_bool_var("")
    model.add(one == other).only_enforce_if(literal)
    return literal


def _edges(instance: Instance, rooms: Rooms, axis: int) -> list[Edge]:
    edges = []
    for index, variables in enumerate(rooms):
        if variables is not None:
            variants = instance.rooms[index].variants
            start, size = (variables.x, variables.width) if axis == 0 else (variables.y, variables.depth)
            lengths = tuple(
                (literal, variants[v].depth if axis == 0 else variants[v].width)
                for v, literal in variables.literals.items()
            )
            edges += [Edge(index, start, lengths), Edge(index, start + size, lengths)]
    return edges
