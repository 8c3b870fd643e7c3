"""The best layout of one arrangement as a mixed-integer programme for HiGHS, which knows nothing of the CP-SAT model.

It reads the same tables as the explorer does: what each place of a room costs, and what each offset of two rooms costs
or forbids. A room takes one place (`z`); its starts along x and y are binary, the places themselves need not be. Two
rooms take one rectangle of offsets that cost the same. Walking is linear, and an edge is aligned as far as another edge
or a line of the site lies where it does. Money is in cents; places too dear for the target are left out.
"""

from dataclasses import dataclass
from itertools import product

import numpy as np

from optimizer.engine.grid.zones import zones_of
from optimizer.engine.pairs import FORBIDDEN, Gaps
from optimizer.engine.problem import Problem, RoomPair
from optimizer.engine.problem.arrangement import ABOVE, BELOW, LEFT, RIGHT, Key
from optimizer.engine.terms.walking import Walking
from optimizer.fields import FREE_PART
from tests.benchmarks.milp import Milp, Terms

EVEN_SQFT = 1e-6


@dataclass(frozen=True)
class Room:
    """A room of the programme: variables of its places by (variant, x, y), and of its starts by (axis, variant, start)."""

    number: int
    costs: dict[int, np.ndarray]
    places: dict[tuple[int, int, int], int]
    starts: dict[tuple[int, int, int], int]

    def along(self, axis: int, weight) -> Terms:
        """A sum over its starts along an axis; `weight(variant, start)` is what each is worth."""
        return {var: weight(v, start) for (own, v, start), var in self.starts.items() if own == axis}

    def taken(self, variant: int) -> Terms:
        """One where it takes a variant."""
        return {var: 1.0 for (axis, v, _), var in self.starts.items() if axis == 0 and v == variant}


def arrangement_milp(problem: Problem, key: Key, target: int) -> Milp:
    """The programme of an arrangement, for layouts that count no more than the target [cents]."""
    milp = Milp()
    tables = {room: _own(problem, room, choice) for room, choice in enumerate(key[0]) if choice >= 0}
    absent = sum(problem.rooms[room].absent_loss for room, choice in enumerate(key[0]) if choice < 0)
    least = {room: min(int(table.min()) for table in own.values()) for room, own in tables.items()}
    slack = target - absent - sum(least.values())
    rooms = {room: _add_room(milp, room, own, least[room] + slack) for room, own in tables.items()}
    milp.constant = absent
    for pair, side in zip(problem.pairs, key[1], strict=True):
        if side >= 0:
            _add_pair(milp, problem, pair, side, (rooms[pair.first], rooms[pair.second]))
    _add_rings(milp, problem, list(rooms.values()))
    _add_order(milp, problem, list(rooms.values()))
    return milp


def _own(problem: Problem, room: int, choice: int) -> dict[int, np.ndarray]:
    """What each place costs by itself as the model counts it, by variant; FORBIDDEN where there is none."""
    data, found = problem.rooms[room], {}
    for v, variant in enumerate(data.variants):
        if variant.choice == choice:
            rows, columns = (np.arange(count) for count in data.allowed[v].shape)
            cost = data.floors[v] + data.losses[v]
            for pull in problem.pulls:
                if pull.room == room:
                    x, y = (
                        abs(2 * columns + variant.anchor[0] - pull.at[0]),
                        abs(2 * rows + variant.anchor[1] - pull.at[1]),
                    )
                    cost = cost + pull.rate * (x[None, :] + y[:, None])
            found[v] = np.where(data.allowed[v], cost, FORBIDDEN)
    return found


def _add_room(milp: Milp, number: int, tables: dict[int, np.ndarray], most: int) -> Room:
    places: dict[tuple[int, int, int], int] = {}
    starts: dict[tuple[int, int, int], int] = {}
    links: dict[tuple[int, int, int], Terms] = {}
    for v, table in tables.items():
        for y, x in np.argwhere(table <= most).tolist():
            place = places[v, x, y] = milp.variable(cost=int(table[y, x]))
            for axis, start in ((0, x), (1, y)):
                links.setdefault((axis, v, start), {})[place] = 1.0
    for where, own in links.items():
        starts[where] = milp.variable(binary=True)
        milp.row({**own, starts[where]: -1.0}, 0, 0)
    room = Room(number, tables, places, starts)
    milp.row(room.along(0, lambda _v, _s: 1.0), 1, 1)
    for v in tables:
        others = {var: -1.0 for (axis, own, _), var in starts.items() if axis == 1 and own == v}
        milp.row({**room.taken(v), **others}, 0, 0)
    return room


def _add_pair(milp: Milp, problem: Problem, pair: RoomPair, side: int, rooms: tuple[Room, Room]) -> None:
    first, second = rooms
    sums: dict[tuple[int, int], Terms] = {}
    boxes: list[tuple[int, tuple[int, int, int, int]]] = []
    for v, w in product(first.costs, second.costs):
        for box in _boxes(problem, pair, side, v, w):
            var = milp.variable(cost=box.loss, binary=True)
            boxes.append((var, (box.left, box.right, box.low, box.top)))
            for end, variant in ((0, v), (1, w)):
                sums.setdefault((end, variant), {})[var] = -1.0
    for end, room in enumerate(rooms):
        for variant in room.costs:
            milp.row({**room.taken(variant), **sums.get((end, variant), {})}, 0, 0)
    shape = problem.context.lattice
    for axis, most in enumerate((shape.columns, shape.rows)):
        offset = {**first.along(axis, lambda _v, s: s), **second.along(axis, lambda _v, s: -s)}
        milp.row({**offset, **{var: most - at[2 * axis] for var, at in boxes}}, 0, np.inf)
        milp.row({**offset, **{var: most - at[2 * axis + 1] for var, at in boxes}}, -np.inf, 0)
    _add_walking(milp, problem, pair, rooms)


def _boxes(problem: Problem, pair: RoomPair, side: int, v: int, w: int):
    """Rectangles of offsets at which two variants stand as asked on a side; left and low are counted from -columns
    and -rows.
    """
    lattice = problem.context.lattice
    right, up = np.arange(-lattice.columns, lattice.columns + 1), np.arange(-lattice.rows, lattice.rows + 1)
    variants = problem.rooms[pair.first].variants[v], problem.rooms[pair.second].variants[w]
    gaps = Gaps(*variants, right, up, lattice.step_ft)
    cents = np.where(pair.contact.kept(gaps) & _on_side(*variants, right, up, side), 0, FORBIDDEN)
    for stamp in pair.stamps:
        if stamp.in_model and not isinstance(stamp, Walking):
            cents = cents + stamp.cents(gaps)
    return zones_of(cents < FORBIDDEN, cents)


def _on_side(first, second, right: np.ndarray, up: np.ndarray, side: int) -> np.ndarray:
    """Offsets at which the first room lies on that canonical side of the second."""
    left_of, right_of = right + first.width <= 0, right >= second.width
    below = 2 * up + first.depth <= second.depth
    across = {LEFT: left_of, RIGHT: right_of & ~left_of}.get(side, ~left_of & ~right_of)
    along = {BELOW: below, ABOVE: ~below}.get(side, np.ones(len(up), dtype=bool))
    return np.outer(along, across)


def _add_walking(milp: Milp, problem: Problem, pair: RoomPair, rooms: tuple[Room, Room]) -> None:
    rate = sum(stamp.rate for stamp in pair.stamps if isinstance(stamp, Walking))
    if not rate:
        return
    for axis in (0, 1):
        apart: Terms = {}
        for room, sign in zip(rooms, (1, -1), strict=True):
            anchors = {v: problem.rooms[room.number].variants[v].anchor[axis] for v in room.costs}
            apart |= room.along(axis, lambda v, s, anchors=anchors, sign=sign: sign * (2 * s + anchors[v]))
        distance = milp.variable(cost=rate, high=np.inf)
        for sign in (1, -1):
            milp.row({distance: 1.0, **{var: sign * value for var, value in apart.items()}}, 0, np.inf)


def _add_rings(milp: Milp, problem: Problem, rooms: list[Room]) -> None:
    """What built rooms take of each ring, exactly; CP-SAT asks no more of it."""
    for ring in problem.rings:
        taken: Terms = {}
        for room in rooms:
            if problem.rooms[room.number].is_built:
                for (v, x, y), var in room.places.items():
                    width, depth = problem.rooms[room.number].variants[v].size
                    taken[var] = float(ring.cells[y : y + depth, x : x + width].sum())
        milp.row(taken, -np.inf, ring.most_sqft + EVEN_SQFT)


def _add_order(milp: Milp, problem: Problem, rooms: list[Room]) -> None:
    """Edge that lies on no line of the site and on no edge of another room, and what of it passes the free part."""
    order, unaligned, length = problem.order, milp.variable(cost=problem.order.rate, high=np.inf), {}
    missing: Terms = {unaligned: -1.0}
    for axis in (0, 1):
        edges = [_edges(problem, room, axis) for room in rooms]
        for number, own in enumerate(edges):
            others = [edge for other, edge in enumerate(edges) if other != number]
            for _, var, steps, is_fixed in own:
                length[var] = length.get(var, 0.0) + steps
                if not is_fixed:
                    missing[var] = missing.get(var, 0.0) + steps
            _add_aligned(milp, own, others, missing)
    milp.row(missing, 0, 0)
    if order.disorder_rate:
        beyond = milp.variable(cost=order.disorder_rate, high=np.inf)
        milp.row({beyond: 1.0, unaligned: -FREE_PART, **length}, 0, np.inf)


Edge = tuple[int, int, int, bool]
"""A line, the variable under which an edge lies on it, its steps, and whether the site alone aligns it."""


def _edges(problem: Problem, room: Room, axis: int) -> list[Edge]:
    found = []
    for (own, v, start), var in room.starts.items():
        if own == axis:
            size = problem.rooms[room.number].variants[v].size
            low, high = start, start + size[axis]
            centred = low + high in problem.order.centres[axis]
            found += [(at, var, size[1 - axis], centred or at in problem.order.lines[axis]) for at in (low, high)]
    return found


def _add_aligned(milp: Milp, own: list[Edge], others: list[list[Edge]], missing: Terms) -> None:
    """On each other line a room's edges may be aligned with another room's, as far as both lie there."""
    for line in sorted({at for at, _, _, is_fixed in own if not is_fixed}):
        here = [(var, steps) for at, var, steps, is_fixed in own if at == line and not is_fixed]
        beside = {var: -1.0 for other in others for at, var, _, _ in other if at == line}
        for steps in sorted({steps for _, steps in here}):
            if beside:
                aligned = milp.variable()
                milp.row({aligned: 1.0, **{var: -1.0 for var, length in here if length == steps}}, -np.inf, 0)
                milp.row({aligned: 1.0, **beside}, -np.inf, 0)
                missing[aligned] = -float(steps)
