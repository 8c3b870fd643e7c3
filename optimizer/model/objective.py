"""The objective as named losses in cents: choices and places, walking, wishes, order."""

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import BoolVarT, IntVar

from optimizer.instance import Instance, PairWish
from optimizer.model.distances import keep_apart, keep_near
from optimizer.model.linear import Linear
from optimizer.model.separation import ABOVE, BELOW, LEFT, RIGHT, PairModel, face
from optimizer.model.variables import RoomVariables

Rooms = tuple[RoomVariables | None, ...]


def rooms_loss(instance: Instance, rooms: Rooms) -> Linear:
    """What choices cost and lack, what their places cost, and what is left out."""
    total: Linear = 0
    for room, variables in zip(instance.rooms, rooms, strict=True):
        if variables is None:
            total += room.absent_loss
            continue
        total += variables.place_loss + room.absent_loss * (1 - variables.present)
        total += sum(room.variants[v].loss * literal for v, literal in variables.literals.items())
    return total


def walking_loss(
    model: cp_model.CpModel, instance: Instance, rooms: Rooms, sides: dict[tuple[int, int], dict[int, list[IntVar]]]
) -> Linear:
    """Feet walked at their rate; a trip whose room is absent costs nothing."""
    total: Linear = 0
    for number, pull in enumerate(instance.pulls):
        room = rooms[pull.room]
        other = None if pull.other is None else rooms[pull.other]
        if room is None or (pull.other is not None and other is None):
            continue
        most = 2 * (instance.context.lattice.columns + instance.context.lattice.rows)
        dx, dy = model.new_int_var(0, most, f"dx{number}"), model.new_int_var(0, most, f"dy{number}")
        at = (other.anchor_x, other.anchor_y) if other is not None else pull.at
        assert at is not None
        enforced = room.presence + (other.presence if other is not None else [])
        for distance, here, there in ((dx, room.anchor_x, at[0]), (dy, room.anchor_y, at[1])):
            model.add(distance >= here - there).only_enforce_if(enforced)
            model.add(distance >= there - here).only_enforce_if(enforced)
        if other is not None and pull.other is not None:
            literals = sides.get((min(pull.room, pull.other), max(pull.room, pull.other)))
            if literals is not None and not _has_front(instance, pull.room, pull.other):
                _floor(model, (dx, dy), literals, enforced, (room, other))
                model.add(dx + dy >= _least_sides(instance, pull.room, pull.other)).only_enforce_if(enforced)
        total += pull.rate * (dx + dy)
    return total


def _has_front(instance: Instance, *rooms: int) -> bool:
    """Whether one of the rooms is measured from its front; the cuts hold from centre to centre."""
    return any(variant.front is not None for room in rooms for variant in instance.rooms[room].variants)


def _least_sides(instance: Instance, *rooms: int) -> int:
    """Sum of the rooms' shortest sides: in half steps, the least that their centres are apart along the axes."""
    return sum(min(min(v.width, v.depth) for v in instance.rooms[room].variants) for room in rooms)


def _floor(
    model: cp_model.CpModel,
    distance: tuple[IntVar, IntVar],
    literals: dict[int, list[IntVar]],
    enforced: list[BoolVarT],
    rooms: tuple[RoomVariables, RoomVariables],
) -> None:
    """Separation cuts: rooms side by side are at least half their sizes apart, centre to centre. Without them the
    bound is of no use, by measurement.
    """
    a, b = rooms
    for side, chosen in literals.items():
        along, size = (distance[0], a.width + b.width) if side in (LEFT, RIGHT) else (distance[1], a.depth + b.depth)
        for literal in chosen:
            model.add(along >= size).only_enforce_if([literal, *enforced])


def wishes_loss(view: PairModel) -> Linear:
    """Loss of the pair's wishes that are not kept; wishes to see or not are left out, and so is their loss."""
    total: Linear = 0
    for wish in view.pair.wishes:
        if wish.asks in ("seen", "hidden"):
            continue
        missed = view.model.new_bool_var("")
        _wish(view, wish, missed)
        total += wish.loss * missed
    return total


def _wish(view: PairModel, wish: PairWish, missed: IntVar) -> None:
    if wish.asks == "near":
        keep_near(view, wish.amount_ft, unless=[missed])
    elif wish.asks == "apart":
        keep_apart(view, wish.amount_ft, unless=[missed])
    elif wish.asks == "faces":
        face(view, wish.opens, unless=[missed])
    elif wish.asks == "touching":
        _touch(view, round(wish.amount_ft / view.instance.context.lattice.step_ft), missed)


def _touch(view: PairModel, share: int, missed: IntVar) -> None:
    model, gaps, a, b = view.model, view.gaps(), view.first, view.second
    literals = []
    for side in (LEFT, RIGHT, BELOW, ABOVE):
        literal = model.new_bool_var("")
        along = (a.y, a.depth, b.y, b.depth) if side in (LEFT, RIGHT) else (a.x, a.width, b.x, b.width)
        enforced = [literal, *view.both]
        model.add(gaps[side] == 0).only_enforce_if(enforced)
        model.add(along[0] + share <= along[2] + along[3]).only_enforce_if(enforced)
        model.add(along[2] + share <= along[0] + along[1]).only_enforce_if(enforced)
        literals.append(literal)
    model.add_bool_or([missed, *literals, *(there.negated() for there in view.both)])
