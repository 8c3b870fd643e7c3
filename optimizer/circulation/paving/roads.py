"""Cheapest routes over one graph's lines: the table of who is joined to whom is made once and asked with many costs."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
import scipy
from numpy.typing import NDArray

from optimizer.circulation.visibility import Coordinates

LEAST: Final = 1e-9
"""Money: a line that costs nothing is still a line."""
_SLACK: Final = 1 + 1e-9  # what rounding may add to a cost

Whole = NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class Roads:
    """Lines in both directions and, beyond the nodes, one hub a terminal that is joined to the terminal's gates.

    `table` holds what each step from node to node costs, set anew for each question. Of its entries, `steps` are the
    numbers (row times size plus column, in their order), `of_line` the lines that they are; `ways` are the entries of
    each line, shape (2, lines), and `doors` those of each gate, shape (2, gates): forward and back.
    """

    nodes: int
    terminals: Whole
    table: "scipy.sparse.csr_array"
    steps: Whole
    of_line: Whole
    ways: Whole
    doors: Whole

    def costs(self, line_costs: Coordinates) -> Coordinates:
        """What each step costs where each line, shape (lines,), costs so much: what `cheapest` starts from."""
        costs = np.full(len(self.steps), np.inf)
        costs[self.ways] = np.maximum(line_costs, LEAST)
        return costs

    def cheapest(
        self, costs: Coordinates, gate_costs: Coordinates, ends: tuple[int, int], *, at_most: float = np.inf
    ) -> tuple[list[int], list[int]] | None:
        """Nodes and lines from one terminal to another, by what steps cost and what gates do, shape (gates,).

        None where nothing joins them. `at_most` is what some route is known to cost: nothing dearer is looked at.
        """
        at_start, at_end = (self.terminals == end for end in ends)
        if not (at_start.any() and at_end.any()):
            return None
        gates = np.flatnonzero(at_start | at_end)
        self.table.data[:] = costs
        self.table.data[self.doors[:, gates]] = np.maximum(gate_costs[gates], LEAST)
        return self._sought(self.nodes + ends[0], self.nodes + ends[1], at_most * _SLACK + LEAST)

    def _sought(self, first: int, last: int, limit: float) -> tuple[list[int], list[int]] | None:
        length, previous = scipy.sparse.csgraph.dijkstra(
            self.table, indices=first, return_predecessors=True, limit=limit
        )
        if not np.isfinite(length[last]):
            return None
        nodes = [last]
        while nodes[-1] != first:
            nodes.append(int(previous[nodes[-1]]))
        nodes = nodes[-2:0:-1]
        steps = [a * self.table.shape[0] + b for a, b in pairwise(nodes)]
        return nodes, [int(line) for line in self.of_line[np.searchsorted(self.steps, steps)]]


def roads_of(nodes: int, terminals: Sequence[int], first: Whole, second: Whole) -> Roads:
    """Roads over lines between nodes, of which the first belong to these terminals."""
    owners = np.array(terminals, dtype=np.int64)
    hubs, gates, lines = nodes + owners, np.arange(len(owners)), np.arange(len(first))
    starts = np.concatenate([first, second, hubs, gates])
    ends = np.concatenate([second, first, gates, hubs])
    size = nodes + int(owners.max(initial=-1)) + 1
    steps = starts * size + ends
    order = np.argsort(steps, kind="stable")
    rows = np.searchsorted(starts[order], np.arange(size + 1)).astype(np.int32)
    entries = (np.ones(len(order)), ends[order].astype(np.int32), rows)
    place = np.empty(len(order), dtype=np.int64)
    place[order] = np.arange(len(order))
    ways, doors = place[: 2 * len(first)].reshape(2, -1), place[2 * len(first) :].reshape(2, -1)
    table = scipy.sparse.csr_array(entries, shape=(size, size))
    return Roads(nodes, owners, table, steps[order], np.concatenate([lines, lines, gates, gates])[order], ways, doors)
