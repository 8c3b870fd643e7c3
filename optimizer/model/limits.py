"""Limits on the whole layout other than money."""

from ortools.sat.python import cp_model

from optimizer.instance import Instance
from optimizer.model.objective import Rooms


def pave(model: cp_model.CpModel, instance: Instance, rooms: Rooms) -> None:
    """Paved rooms take no more cells than the yard's limit leaves; paths are left to the judge, so this is a floor."""
    if instance.pavable_cells is not None:
        cells = [
            instance.paved_cells(index, v) * literal
            for index, variables in enumerate(rooms)
            if variables is not None
            for v, literal in variables.literals.items()
        ]
        model.add(sum(cells) <= instance.pavable_cells)


def give(model: cp_model.CpModel, instance: Instance, rooms: Rooms) -> None:
    """The choices taken give the guests at least what they need; what a choice gives is rounded up, so this is looser
    than the check.
    """
    for need in instance.needs:
        given = [
            need.gives[index][v] * literal
            for index, variables in enumerate(rooms)
            if variables is not None
            for v, literal in variables.literals.items()
        ]
        model.add(sum(given) >= need.least)
