"""Two rooms side by side: apart, touching, near, facing; with the cuts that give walking a floor."""

from dataclasses import dataclass

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import BoolVarT, IntVar

from optimizer.instance import Instance, Pair
from optimizer.layout.placement import FRONT_VECTORS
from optimizer.model.linear import Linear
from optimizer.model.variables import RoomVariables

LEFT, RIGHT, BELOW, ABOVE = range(4)
OUTWARDS = {LEFT: (1, 0), RIGHT: (-1, 0), BELOW: (0, 1), ABOVE: (0, -1)}
"""From the first room to the second, by the side of the second on which the first lies."""


@dataclass(frozen=True)
class PairModel:
    """A pair of rooms in the model, both present under `both`."""

    model: cp_model.CpModel
    instance: Instance
    pair: Pair
    first: RoomVariables
    second: RoomVariables
    both: list[BoolVarT]
    side: int | None

    def uncovered(self, end: int) -> list[BoolVarT]:
        """Literals of the variants without a roof of the room at an end."""
        index, variables = (self.pair.first, self.first) if end == 0 else (self.pair.second, self.second)
        variants = self.instance.rooms[index].variants
        return [literal for v, literal in variables.literals.items() if not variants[v].covered]

    def gaps(self) -> dict[int, Linear]:
        """Gap between the rooms with the first on each side of the second."""
        a, b = self.first, self.second
        return {
            LEFT: b.x - a.x - a.width,
            RIGHT: a.x - b.x - b.width,
            BELOW: b.y - a.y - a.depth,
            ABOVE: a.y - b.y - b.depth,
        }


def separate(view: PairModel) -> dict[int, list[IntVar]]:
    """Say that the rooms are apart or touch on some side; the literals of each side, for cuts."""
    pair, model, gaps = view.pair, view.model, view.gaps()
    by_side: dict[int, list[IntVar]] = {side: [] for side in gaps}
    if pair.may_overlap and not pair.gap and not pair.must_touch:
        return by_side
    ways: list[IntVar] = []
    for side in gaps:
        if not pair.must_touch:
            far = model.new_bool_var("")
            model.add(gaps[side] >= pair.gap).only_enforce_if([far, *view.both])
            by_side[side].append(far)
        if pair.must_touch or pair.gap:
            by_side[side].append(_touch(view, side))
        ways += by_side[side]
    if pair.may_overlap:
        ways.append(_overlap(view))
    model.add_bool_or([*ways, *(literal.negated() for literal in view.both)])
    _hold_side(view)
    return by_side


def _touch(view: PairModel, side: int) -> IntVar:
    pair, model = view.pair, view.model
    share = pair.touch_share if pair.must_touch else pair.share
    literal = model.new_bool_var("")
    a, b = view.first, view.second
    start_a, size_a, start_b, size_b = (
        (a.y, a.depth, b.y, b.depth) if side in (LEFT, RIGHT) else (a.x, a.width, b.x, b.width)
    )
    enforced = [literal, *view.both]
    model.add(view.gaps()[side] == 0).only_enforce_if(enforced)
    model.add(start_a + share <= start_b + size_b).only_enforce_if(enforced)
    model.add(start_b + share <= start_a + size_a).only_enforce_if(enforced)
    for end in pair.open_ends:
        outwards = OUTWARDS[side] if end == 0 else (-OUTWARDS[side][0], -OUTWARDS[side][1])
        for shut in _facing_variants(view, end, outwards):
            model.add_implication(literal, shut.negated())
    return literal


def _overlap(view: PairModel) -> IntVar:
    literal = view.model.new_bool_var("")
    for gap in view.gaps().values():
        view.model.add(gap <= -1).only_enforce_if([literal, *view.both])
    return literal


def _hold_side(view: PairModel) -> None:
    """Keep the canonical side of a fixed arrangement."""
    if view.side is None:
        return
    gaps, model = view.gaps(), view.model
    if view.side in (LEFT, RIGHT):
        model.add(gaps[view.side] >= 0)
        return
    model.add(gaps[LEFT] <= -1)
    model.add(gaps[RIGHT] <= -1)
    middles = 2 * view.first.y + view.first.depth - 2 * view.second.y - view.second.depth
    model.add(middles <= 0 if view.side == BELOW else middles >= 1)


def _facing_variants(view: PairModel, end: int, outwards: tuple[int, int]) -> list[IntVar]:
    index, variables = (view.pair.first, view.first) if end == 0 else (view.pair.second, view.second)
    variants = view.instance.rooms[index].variants
    return [
        literal
        for v, literal in variables.literals.items()
        if (front := variants[v].front) is not None and FRONT_VECTORS[front] == outwards
    ]


def face(view: PairModel, end: int, *, unless: list[BoolVarT]) -> None:
    """Say that the room at this end opens towards the other, unless one of the literals is true."""
    gaps, model = view.gaps(), view.model
    for side, outwards in OUTWARDS.items():
        towards = outwards if end == 0 else (-outwards[0], -outwards[1])
        for literal in _facing_variants(view, end, towards):
            enforced = [literal, *view.both, *(u.negated() for u in unless)]
            model.add(gaps[side] >= 0).only_enforce_if(enforced)
            for beside in (BELOW, ABOVE) if side in (LEFT, RIGHT) else (LEFT, RIGHT):
                model.add(gaps[beside] <= -1).only_enforce_if(enforced)


def have_ahead(view: PairModel, end: int) -> None:
    """Say that the middle of the other room lies before the counter of the room at this end."""
    a, b = (view.first, view.second) if end == 0 else (view.second, view.first)
    variants = view.instance.rooms[view.pair.first if end == 0 else view.pair.second].variants
    away = (2 * b.x + b.width - 2 * a.x - a.width, 2 * b.y + b.depth - 2 * a.y - a.depth)
    for v, literal in a.literals.items():
        if (front := variants[v].front) is not None:
            dx, dy = FRONT_VECTORS[front]
            ahead = dx * away[0] + dy * away[1]
            view.model.add(ahead >= variants[v].counter_ahead).only_enforce_if([literal, *view.both])
