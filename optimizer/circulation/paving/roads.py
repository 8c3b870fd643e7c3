"""Cheapest routes over one graph's lines: the table of who is joined to whom is made once and asked with many costs."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np
import scipy
from numpy.typing import NDArray

from optimizer.circulation.visibility import Coordinates

_LEAST: Final = 1e-9  # a line that costs nothing is still a line


@dataclass(frozen=True, slots=True, eq=False)
class Roads:
    """Lines in both directions and, beyond the nodes, one hub a terminal that is joined to the terminal's gates.

    `table` holds what each step from node to node costs, set anew for each question; `places` says what its entries
    are: counted on through all `lines`, all lines backwards, all gates outwards and all gates inwards. `steps` are the
    entries' numbers, row times size plus column, in their order.
    """

    nodes: int
    terminals: NDArray[np.int64]
    table: "scipy.sparse.csr_array"
    places: NDArray[np.int64]
    steps: NDArray[np.int64]
    lines: int

    def cheapest(
        self, line_costs: Coordinates, gate_costs: Coordinates, start: int, end: int
    ) -> tuple[list[int], list[int]] | None:
        """Nodes and lines from one terminal to another; None where nothing joins them. Shapes (lines,) and (gates,)."""
        at_start, at_end = self.terminals == start, self.terminals == end
        if not (at_start.any() and at_end.any()):
            return None
        gates = np.where(at_start | at_end, gate_costs, np.inf)
        np.maximum(np.concatenate([line_costs, line_costs, gates, gates])[self.places], _LEAST, out=self.table.data)
        size = self.table.shape[0]
        first, last = self.nodes + start, self.nodes + end
        length, previous = scipy.sparse.csgraph.dijkstra(self.table, indices=first, return_predecessors=True)
        if not np.isfinite(length[last]):
            return None
        nodes = [last]
        while nodes[-1] != first:
            nodes.append(int(previous[nodes[-1]]))
        nodes = nodes[-2:0:-1]
        steps = [a * size + b for a, b in pairwise(nodes)]
        return nodes, [int(place) % self.lines for place in self.places[np.searchsorted(self.steps, steps)]]


def roads_of(nodes: int, terminals: Sequence[int], first: NDArray[np.int64], second: NDArray[np.int64]) -> Roads:
    """Roads over lines between nodes, of which the first belong to these terminals."""
    owners = np.array(terminals, dtype=np.int64)
    hubs, gates = nodes + owners, np.arange(len(owners))
    starts = np.concatenate([first, second, hubs, gates])
    ends = np.concatenate([second, first, gates, hubs])
    order = np.lexsort((ends, starts))
    size = nodes + int(owners.max(initial=-1)) + 1
    rows = np.searchsorted(starts[order], np.arange(size + 1)).astype(np.int32)
    steps = starts[order] * size + ends[order]
    entries = (np.ones(len(order)), ends[order].astype(np.int32), rows)
    return Roads(nodes, owners, scipy.sparse.csr_array(entries, shape=(size, size)), order, steps, len(first))
