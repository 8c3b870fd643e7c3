"""A model with every room held in its place, to read what it says of one layout."""

from ortools.sat.python import cp_model

from optimizer.engine.model import build_model, whole_scope


def losses_in_model(problem, state, scope=None):
    """Losses by name with every room held where the state has it, each as small as the model lets them be together;
    None where the state breaks a rule of the model. Of the whole model, or of that of a scope.
    """
    built = build_model(problem, scope or whole_scope(problem))
    for variables, spot in zip(built.rooms, state, strict=True):
        if variables is None:
            assert spot is None
            continue
        for v, literal in variables.literals.items():
            built.model.add(literal == (spot is not None and spot.variant == v))
        built.model.add(variables.x == (0 if spot is None else spot.x))
        built.model.add(variables.y == (0 if spot is None else spot.y))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    if solver.solve(built.model) != cp_model.OPTIMAL:
        return None
    return {name: int(solver.value(term)) for name, term in built.terms.items()}
