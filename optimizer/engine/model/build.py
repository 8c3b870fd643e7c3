"""The CP-SAT model of a problem, of one program, or of one arrangement in it."""

import hashlib
from dataclasses import dataclass
from math import comb

from ortools.sat.python import cp_model

from optimizer.engine.model.dense import is_dense, tighten
from optimizer.engine.model.limits import keep_amounts, keep_rings
from optimizer.engine.model.linear import Linear
from optimizer.engine.model.mirrors import break_mirrors
from optimizer.engine.model.order import order_loss
from optimizer.engine.model.pair_model import PairModel
from optimizer.engine.model.scope import Scope
from optimizer.engine.model.separation import separate
from optimizer.engine.model.variables import Rooms, room_variables
from optimizer.engine.model.walking import walking_to_points
from optimizer.engine.problem import Problem

Terms = dict[str, Linear]


@dataclass(frozen=True)
class LayoutModel:
    """A built model with the variables to read a layout from, and its losses by name [cents]."""

    model: cp_model.CpModel
    rooms: Rooms
    terms: Terms

    @property
    def fingerprint(self) -> str:
        """Hash of the model as it is now: of two models with the same one every proof is the same."""
        return hashlib.sha256(str(self.model.proto).encode()).hexdigest()[:16]

    @property
    def objective(self) -> Linear:
        """Sum of the losses."""
        return sum(self.terms.values())


def build_model(
    problem: Problem, scope: Scope, *, with_objective: bool = True, with_mirrors: bool = False
) -> LayoutModel:
    """Build the model; of layouts that mirror each other it has only one, unless it is `with_mirrors`.

    What the engine leaves to the judge, sight between rooms and near misses are not in it: it is the looser for them,
    so its bound and its "nothing fits" hold for the real problem.
    """
    model = cp_model.CpModel()
    rooms = room_variables(model, problem, scope)
    views = _views(model, problem, scope, rooms)
    for view in views:
        separate(view)
    between = _stamps(views)
    if is_dense(problem, scope):
        tighten(views)
    if not with_mirrors:
        break_mirrors(model, problem, scope, rooms)
    _redundant_no_overlap(model, problem, rooms)
    keep_amounts(model, problem, rooms)
    keep_rings(model, problem, rooms)
    if not with_objective:
        return LayoutModel(model, rooms, {})
    terms = {**_of_rooms(problem, rooms), **between}
    terms["walking to doors"] = walking_to_points(model, problem, rooms)
    if problem.order.rate or problem.order.disorder_rate:
        terms["order"] = order_loss(model, problem, rooms)
    built = LayoutModel(model, rooms, terms)
    model.minimize(built.objective)
    return built


def _of_rooms(problem: Problem, rooms: Rooms) -> Terms:
    """What choices cost and lack, what their places cost, and what is left out."""
    choices: Linear = 0
    places: Linear = 0
    for room, variables in zip(problem.rooms, rooms, strict=True):
        if variables is None:
            choices += room.absent_loss - room.absent_place
            places += room.absent_place
            continue
        places += variables.place_loss
        choices += sum(room.losses[v] * literal for v, literal in variables.literals.items())
        if variables.there is not None:
            choices += (room.absent_loss - room.absent_place) * (1 - variables.there)
            places += room.absent_place * (1 - variables.there)
    return {"choices": choices, "places": places}


def _views(model: cp_model.CpModel, problem: Problem, scope: Scope, rooms: Rooms) -> list[PairModel]:
    views = []
    for pair, side in zip(problem.pairs, scope.sides, strict=True):
        first, second = rooms[pair.first], rooms[pair.second]
        if first is not None and second is not None:
            views.append(PairModel(model, problem, pair, (first, second), side))
    return views


def _stamps(views: list[PairModel]) -> Terms:
    """What holds and counts between rooms, by the name of rule or term."""
    terms: Terms = {}
    for view in views:
        for stamp in view.pair.stamps:
            terms[stamp.name] = terms.get(stamp.name, 0) + stamp.add_to(view)
    return terms


def _redundant_no_overlap(model: cp_model.CpModel, problem: Problem, rooms: Rooms) -> None:
    """The same rule once more for the solver's own propagation, where no two rooms may overlap.

    A pair that is not there asks for nothing, so its rooms may.
    """
    apart = sum(not pair.contact.may_overlap for pair in problem.pairs)
    if apart < comb(len(problem.rooms), 2):
        return
    xs, ys = [], []
    for room, variables in zip(problem.rooms, rooms, strict=True):
        if variables is not None:
            for v, literal in variables.literals.items():
                variant, at = room.variants[v], (variables.x, variables.y)
                xs.append(model.new_optional_fixed_size_interval_var(at[0], variant.width, literal, ""))
                ys.append(model.new_optional_fixed_size_interval_var(at[1], variant.depth, literal, ""))
    model.add_no_overlap_2d(xs, ys)
