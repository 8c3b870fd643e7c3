"""The engine's model as a mixed-integer programme with big M, for HiGHS (`scipy.optimize.milp`).

It is read off the CP-SAT model constraint by constraint, so that the rules and losses are the same: a constraint that
holds under literals gets the least M that its variables' bounds allow, and a table is looked up by a binary an entry.
Left out are the intervals and their common "no overlap" alone: the pairs say the same, and it is no linear constraint.
"""

import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array

from optimizer.engine.model import LayoutModel, build_model, whole_scope
from optimizer.engine.problem import Problem, Spot, State

_FREE = 2**62
"""Bounds of CP-SAT beyond this are none."""
_LEFT_OUT = ("interval", "no_overlap_2d")

Terms = list[tuple[int, float]]
"""Variables with their coefficients."""


@dataclass
class Programme:
    """Rows `low <= coefficients x variables <= high`, all variables whole numbers between two bounds."""

    low: list[float] = field(default_factory=list)
    high: list[float] = field(default_factory=list)
    entries: list[tuple[int, int, float]] = field(default_factory=list)
    least: list[int] = field(default_factory=list)
    most: list[int] = field(default_factory=list)

    def add(self, terms: Iterable[tuple[int, float]], low: float, high: float) -> None:
        """Add a row."""
        self.entries += [(len(self.low), variable, weight) for variable, weight in terms]
        self.low.append(low)
        self.high.append(high)

    def add_binary(self) -> int:
        """Number of a new variable that is 0 or 1."""
        self.least.append(0)
        self.most.append(1)
        return len(self.least) - 1

    def add_under(self, literals: Sequence[int], terms: Terms, low: float, high: float) -> None:
        """Add a row that need not hold where one of the literals is false."""
        if not literals:
            self.add(terms, low, high)
            return
        ends = [sorted((weight * self.least[v], weight * self.most[v])) for v, weight in terms]
        reached = sum(end[0] for end in ends), sum(end[1] for end in ends)
        for bound, end, sense in ((low, reached[0], 1), (high, reached[1], -1)):
            spare = sense * (bound - end)
            if np.isfinite(bound) and spare > 0:
                given, constant = _of_literals(literals, -sense * spare)
                room = bound - sense * spare * len(literals) - constant
                self.add([*terms, *given], *((room, np.inf) if sense > 0 else (-np.inf, room)))


def solved_by_highs(problem: Problem, seconds: float) -> State | None:
    """Best layout that HiGHS finds in the time, building included; None where it finds none."""
    until = time.monotonic() + seconds
    built = build_model(problem, whole_scope(problem))
    programme, costs = programme_of(built)
    rows, columns, weights = zip(*programme.entries, strict=True)
    shape = (len(programme.low), len(programme.least))
    answer = milp(
        costs,
        integrality=np.ones(shape[1]),
        bounds=Bounds(programme.least, programme.most),
        constraints=LinearConstraint(csr_array((weights, (rows, columns)), shape), programme.low, programme.high),
        options={"time_limit": max(0.1, until - time.monotonic())},
    )
    return None if answer.x is None else _state(built, np.rint(answer.x))


def programme_of(built: LayoutModel) -> tuple[Programme, np.ndarray]:
    """The rows of a model, and what each variable costs. Raises ValueError at a constraint that it cannot say."""
    proto, programme = built.model.proto, Programme()
    for variable in proto.variables:
        low, *_, high = variable.domain
        programme.least.append(low)
        programme.most.append(high)
    for constraint in proto.constraints:
        _add(programme, constraint)
    costs = np.zeros(len(programme.least))
    costs[list(proto.objective.vars)] = list(proto.objective.coeffs)
    return programme, costs


def _add(programme: Programme, constraint: object) -> None:
    under = list(constraint.enforcement_literal)
    if constraint.has_linear():
        linear = constraint.linear
        low, high = linear.domain
        terms = list(zip(linear.vars, linear.coeffs, strict=True))
        programme.add_under(under, terms, low if low > -_FREE else -np.inf, high if high < _FREE else np.inf)
    elif constraint.has_bool_or():
        _add_sum(programme, [*constraint.bool_or.literals, *(-literal - 1 for literal in under)], 1, np.inf)
    elif constraint.has_bool_and():
        for literal in constraint.bool_and.literals:
            _add_sum(programme, [literal, *(-other - 1 for other in under)], 1, np.inf)
    elif constraint.has_exactly_one():
        _add_sum(programme, constraint.exactly_one.literals, 1, 1)
    elif constraint.has_element():
        _add_table(programme, constraint.element)
    elif not any(getattr(constraint, f"has_{kind}")() for kind in _LEFT_OUT):
        raise ValueError(f"no linear form: {constraint}")


def _add_sum(programme: Programme, literals: Iterable[int], low: float, high: float) -> None:
    """So many of the literals are true."""
    terms, constant = _of_literals(literals, 1)
    programme.add(terms, low - constant, high - constant)


def _of_literals(literals: Iterable[int], weight: float) -> tuple[Terms, float]:
    """A weight for each true literal, as terms and a constant; a literal below 0 is a variable negated."""
    taken = list(literals)
    terms = [(v, weight) if v >= 0 else (-v - 1, -weight) for v in taken]
    return terms, weight * sum(v < 0 for v in taken)


def _add_table(programme: Programme, element: object) -> None:
    """The target is the entry at the index: one of as many binaries is true."""
    taken = [programme.add_binary() for _ in element.exprs]
    programme.add([(binary, 1.0) for binary in taken], 1, 1)
    values = [entry.offset for entry in element.exprs]
    for read, entries in ((element.linear_index, range(len(taken))), (element.linear_target, values)):
        terms = list(zip(read.vars, read.coeffs, strict=True))
        terms += [(binary, -float(entry)) for binary, entry in zip(taken, entries, strict=True)]
        programme.add(terms, -read.offset, -read.offset)


def _state(built: LayoutModel, values: np.ndarray) -> State:
    found = []
    for room in built.rooms:
        taken = [] if room is None else [v for v, literal in room.literals.items() if values[literal.index]]
        found.append(Spot(taken[0], int(values[room.x.index]), int(values[room.y.index])) if taken else None)
    return tuple(found)
