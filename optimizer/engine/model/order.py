"""The order loss in the model: every room edge lies on a shared line, or costs its length."""

from dataclasses import dataclass

from optimizer.engine.model.linear import Linear, Literal, Model
from optimizer.engine.model.variables import Rooms
from optimizer.engine.problem import Problem
from optimizer.fields import FREE_PART


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a room across one axis: where it lies, and its length in steps under each of some literals, of which
    one is true where the room is present.
    """

    room: int
    line: Linear
    lengths: tuple[tuple[Literal, int], ...]


def order_loss(model: Model, problem: Problem, rooms: Rooms) -> Linear:
    """Loss of the edges of all rooms that are present [cents]."""
    order = problem.order
    unaligned: Linear = 0
    length: Linear = 0
    for axis in (0, 1):
        edges = _edges(problem, rooms, axis)
        meets = _meetings(model, rooms, edges)
        centred = _centred(model, rooms, axis, sorted(order.centres[axis]))
        for number, edge in enumerate(edges):
            reasons = [literal for pair, literal in meets.items() if number in pair]
            reasons += [_equal(model, edge.line, line) for line in sorted(order.lines[axis])]
            reasons += centred[edge.room]
            unaligned += _alone(model, edge, reasons)
            length += sum(steps * literal for literal, steps in edge.lengths)
    beyond = model.new_int_var(0, FREE_PART * _most(problem, rooms), "edge beyond the free part")
    model.add(beyond >= FREE_PART * unaligned - length)
    return order.rate * unaligned + order.disorder_rate * beyond


def _meetings(model: Model, rooms: Rooms, edges: list[Edge]) -> dict[tuple[int, int], Literal]:
    """A literal for each two edges of different rooms, under which they lie on one line."""
    found = {}
    for i, one in enumerate(edges):
        for j in range(i + 1, len(edges)):
            other = edges[j]
            if one.room != other.room:
                literal = found[i, j] = _equal(model, one.line, other.line)
                for edge in (one, other):
                    room = rooms[edge.room]
                    for there in room.presence if room is not None else []:
                        model.add_implication(literal, there)
    return found


def _centred(model: Model, rooms: Rooms, axis: int, centres: list[int]) -> list[list[Literal]]:
    """For each room a literal for each structure, under which it is centred on it."""
    found: list[list[Literal]] = []
    for room in rooms:
        if room is None:
            found.append([])
            continue
        start, size = (room.x, room.width) if axis == 0 else (room.y, room.depth)
        found.append([_equal(model, 2 * start + size, centre) for centre in centres])
    return found


def _most(problem: Problem, rooms: Rooms) -> int:
    """Steps of room edge that there can be."""
    placed = [problem.rooms[index].variants for index, variables in enumerate(rooms) if variables is not None]
    return sum(max((2 * (v.width + v.depth) for v in variants), default=0) for variants in placed)


def _alone(model: Model, edge: Edge, reasons: list[Literal]) -> Linear:
    """Length of an edge that lies on no shared line, else 0; one term for each length that it may have."""
    total: Linear = 0
    for length in sorted({length for _, length in edge.lengths}):
        alone = model.new_bool_var("")
        for literal, own in edge.lengths:
            if own == length:
                model.add_bool_or([alone, *reasons, literal.negated()])
        total += length * alone
    return total


def _equal(model: Model, one: Linear, other: Linear) -> Literal:
    literal = model.new_bool_var("")
    model.add(one == other).only_enforce_if(literal)
    return literal


def _edges(problem: Problem, rooms: Rooms, axis: int) -> list[Edge]:
    edges = []
    for index, variables in enumerate(rooms):
        variants = problem.rooms[index].variants
        if variables is not None and not any(variant.is_round for variant in variants):
            start, size = (variables.x, variables.width) if axis == 0 else (variables.y, variables.depth)
            lengths = tuple(
                (literal, variants[v].depth if axis == 0 else variants[v].width)
                for v, literal in variables.literals.items()
            )
            edges += [Edge(index, start, lengths), Edge(index, start + size, lengths)]
    return edges
