"""A mixed-integer programme, put together row by row and solved by HiGHS as scipy carries it."""

from dataclasses import dataclass, field

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array

Terms = dict[int, float]
"""Variable -> weight."""


@dataclass(frozen=True)
class Answer:
    """What HiGHS said; `objective` is None without a solution."""

    status: str
    objective: float | None
    bound: float | None
    values: np.ndarray | None


@dataclass
class Milp:
    """Variables lie between 0 and 1 unless said otherwise."""

    constant: float = 0.0
    costs: list[float] = field(default_factory=list)
    highs: list[float] = field(default_factory=list)
    binary: list[bool] = field(default_factory=list)
    rows: list[tuple[Terms, float, float]] = field(default_factory=list)

    def variable(self, *, cost: float = 0.0, high: float = 1.0, binary: bool = False) -> int:
        """A new variable, not below 0."""
        self.costs.append(cost)
        self.highs.append(high)
        self.binary.append(binary)
        return len(self.costs) - 1

    def row(self, terms: Terms, least: float, most: float) -> None:
        """Say that a sum lies between two numbers."""
        self.rows.append((terms, least, most))

    def solve(self, *, seconds: float, most: float = np.inf) -> Answer:
        """Least cost, among what costs no more than `most`."""
        rows = [*self.rows, (dict(enumerate(self.costs)), -np.inf, most - self.constant)]
        entries = [(number, var, weight) for number, (terms, _, _) in enumerate(rows) for var, weight in terms.items()]
        which, variables, weights = (np.array(part) for part in zip(*entries, strict=True))
        matrix = csr_array((weights, (which, variables)), shape=(len(rows), len(self.costs)))
        said = milp(
            self.costs,
            integrality=np.array(self.binary, dtype=int),
            bounds=Bounds(0, self.highs),
            constraints=LinearConstraint(matrix, [low for _, low, _ in rows], [high for _, _, high in rows]),
            options={"time_limit": seconds, "mip_rel_gap": 0.0},
        )
        status = {0: "optimal", 1: "undecided", 2: "infeasible"}.get(said.status, said.message)
        if said.x is None:
            return Answer(status, None, None, None)
        return Answer(status, said.fun + self.constant, said.mip_dual_bound + self.constant, said.x)
