"""The CP-SAT model of an instance, or of one arrangement in it."""

from dataclasses import dataclass

from ortools.sat.python import cp_model
from ortools.sat.python.cp_model import IntVar

from optimizer.instance import Instance, Pair
from optimizer.model.distances import keep_apart, keep_near
from optimizer.model.limits import give, pave
from optimizer.model.linear import Linear
from optimizer.model.objective import Rooms, rooms_loss, walking_loss, wishes_loss
from optimizer.model.order import order_loss
from optimizer.model.scope import Scope
from optimizer.model.separation import PairModel, face, have_ahead, separate
from optimizer.model.variables import room_variables


@dataclass(frozen=True)
class LayoutModel:
    """A built model with the variables to read a layout from."""

    model: cp_model.CpModel
    rooms: Rooms


def build_model(instance: Instance, scope: Scope, *, with_objective: bool = True) -> LayoutModel:
    """Build the model. Sight between rooms and walkability are left to the judge: the model is the looser for it, so
    its bound and its "nothing fits" hold for the real problem.
    """
    model = cp_model.CpModel()
    rooms = room_variables(model, instance, scope)
    views = [
        view
        for pair, side in zip(instance.pairs, scope.sides, strict=True)
        if (view := _view(model, instance, pair, side, rooms)) is not None
    ]
    sides = {(view.pair.first, view.pair.second): separate(view) for view in views}
    for view in views:
        _relate(view)
    _redundant_no_overlap(model, instance, rooms)
    _spend(model, instance, rooms)
    pave(model, instance, rooms)
    give(model, instance, rooms)
    if with_objective:
        model.minimize(_objective(model, instance, rooms, views, sides, scope))
    return LayoutModel(model, rooms)


def _objective(
    model: cp_model.CpModel,
    instance: Instance,
    rooms: Rooms,
    views: list[PairModel],
    sides: dict[tuple[int, int], dict[int, list[IntVar]]],
    scope: Scope,
) -> Linear:
    total = rooms_loss(instance, rooms) + walking_loss(model, instance, rooms, sides)
    total += sum(wishes_loss(view) for view in views)
    return total + order_loss(model, instance, rooms) if scope.with_order and instance.order_rate else total


def _view(model: cp_model.CpModel, instance: Instance, pair: Pair, side: int | None, rooms: Rooms) -> PairModel | None:
    first, second = rooms[pair.first], rooms[pair.second]
    if first is None or second is None:
        return None
    return PairModel(model, instance, pair, first, second, first.presence + second.presence, side)


def _relate(view: PairModel) -> None:
    if view.pair.near_ft is not None:
        keep_near(view, view.pair.near_ft, unless=[])
    if view.pair.apart_ft > 0:
        keep_apart(view, view.pair.apart_ft, unless=[])
    if view.pair.cover_apart_ft > 0:
        keep_apart(view, view.pair.cover_apart_ft, unless=view.uncovered(view.pair.cover_end))
    for end in view.pair.faces:
        face(view, end, unless=[])
    for end in view.pair.ahead:
        have_ahead(view, end)


def _redundant_no_overlap(model: cp_model.CpModel, instance: Instance, rooms: Rooms) -> None:
    """The same rule once more for the solver's own propagation, where no pair may overlap."""
    if any(pair.may_overlap for pair in instance.pairs):
        return
    xs, ys = [], []
    for index, variables in enumerate(rooms):
        if variables is None:
            continue
        for v, literal in variables.literals.items():
            variant = instance.rooms[index].variants[v]
            xs.append(model.new_optional_fixed_size_interval_var(variables.x, variant.width, literal, ""))
            ys.append(model.new_optional_fixed_size_interval_var(variables.y, variant.depth, literal, ""))
    model.add_no_overlap_2d(xs, ys)


def _spend(model: cp_model.CpModel, instance: Instance, rooms: Rooms) -> None:
    if instance.spendable is not None:
        costs = [
            instance.rooms[index].variants[v].cost * literal
            for index, variables in enumerate(rooms)
            if variables is not None
            for v, literal in variables.literals.items()
        ]
        model.add(sum(costs) <= instance.spendable)
