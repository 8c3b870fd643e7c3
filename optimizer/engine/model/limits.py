"""Limits on the whole layout: amounts, and the rings round trees."""

import math

from optimizer.engine.grid.root_rings import taken_sqft
from optimizer.engine.model.linear import Model
from optimizer.engine.model.variables import Rooms
from optimizer.engine.problem import Problem

_HUNDREDTHS = 100


def keep_amounts(model: Model, problem: Problem, rooms: Rooms) -> None:
    """The choices taken use no more than there is, and give no less than is needed."""
    for amount in problem.amounts:
        used = sum(
            amount.uses[index][v] * literal
            for index, variables in enumerate(rooms)
            if variables is not None
            for v, literal in variables.literals.items()
        )
        if amount.most is not None:
            model.add(used <= amount.most)
        if amount.least > 0:
            model.add(used >= amount.least)


def keep_rings(model: Model, problem: Problem, rooms: Rooms) -> None:
    """Built rooms take no more of a tree's ring than they may: of each zone the place that takes least counts, so this
    is looser than the rule.
    """
    for ring in problem.rings:
        terms = []
        for room, variables in zip(problem.rooms, rooms, strict=True):
            if variables is not None and room.is_built:
                for literal, v, zone in variables.zones:
                    taken = taken_sqft(ring, *room.variants[v].size, room.variants[v].is_round)
                    least = taken[zone.low : zone.top + 1, zone.left : zone.right + 1].min()
                    terms.append(math.floor(_HUNDREDTHS * least) * literal)
        model.add(sum(terms) <= math.floor(_HUNDREDTHS * ring.most_sqft))
