"""The proof of the whole model: programs by what they cost at least, and each as blocks of places of its main room.

Best first: the node of the least bound is opened next, so that at any time the least bound of an open node is a bound
over all layouts. A program is opened into blocks; a block is asked of the solver, and split where it takes too long.
"""

import heapq
import math
import threading
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from itertools import count
from pathlib import Path
from typing import Final

from optimizer.engine.explorer import board_of
from optimizer.engine.model import build_model, is_dense
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Problem, State, modelled_value
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover.blocks import Block, blocks_of, pieces_of, scope_of
from optimizer.engine.prover.incumbent import best_of_program
from optimizer.engine.prover.place_tree import PlaceTables, PlaceTree
from optimizer.engine.prover.places import Places
from optimizer.engine.prover.programs import Program, programs
from optimizer.engine.prover.solve import Answer, Effort, SolverFault, solve

SIDES: Final = (6, 3, 1)
"""Sides of blocks of places, in steps: one that is not done in time is split into blocks of the next side."""
SLICE_S: Final = 1.0
"""Deterministic time that a block may take; one that cannot be split further gets twice as much each time."""
WHOLE_SLICES: Final = 8
"""Slices that a program in one model gets at first."""
WEAK: Final = 0.5
"""Where more of the main room's places than this stay open, blocks do not pay: the program is one model."""
EXPLORED: Final = 3
"""So many programs are explored by themselves before they are opened."""


@dataclass(frozen=True, slots=True)
class WholeProof:
    """The best layout by the model's count that is known, and a bound over all layouts of the model, in cents.

    `work_s` is the solver's deterministic time.
    """

    state: State | None
    objective: int
    bound: int
    work_s: float = 0.0

    @property
    def is_proven(self) -> bool:
        """Whether no layout of the model is better."""
        return self.state is not None and self.bound >= self.objective


@dataclass(frozen=True, slots=True)
class Budget:
    """How long to go on: until stopped, or for so much of the solver's deterministic time. `workers` at a time.

    A limit of work repeats exactly: there several workers never share a model.
    """

    stop: threading.Event
    work_s: float | None = None
    workers: int = 1
    seed: int = 0
    log_file: Path | None = None
    """Where the solver's log is added, if anywhere."""

    def log(self, line: str) -> None:
        """Add a line of the solver's log."""
        if self.log_file is not None:
            with self.log_file.open("a", encoding="utf-8") as file:
                file.write(f"{line}\n")


Found = Callable[[State], None]


class BranchAndBound:
    """One proof. `known` is told every better layout, which may break what is not in the model."""

    def __init__(self, problem: Problem, budget: Budget, known: Found = lambda _state: None) -> None:
        self._problem, self._budget, self._known = problem, budget, known
        self._modelled = modelled_problem(problem)
        self._open: list[tuple[int, int, Program | Block]] = []
        self._order, self._explored = count(), 0
        self._offered: deque[State] = deque()
        self.proof = WholeProof(None, FORBIDDEN, 0)

    def offer(self, state: State) -> None:
        """A layout that somebody else found; it may be offered while the proof is under way, from another thread."""
        self._offered.append(state)

    def run(self) -> WholeProof:
        """Go on until the best is proven or the budget is spent."""
        self._take_offered()
        coming = programs(board_of(self._modelled))
        self._push_next(coming)
        with ThreadPoolExecutor(self._budget.workers) as threads:
            while self._has_next() and not self._is_spent():
                self._take_offered()
                self._bound()
                self._solve(threads, self._next_blocks(coming))
        self._bound()
        return self.proof

    def _take_offered(self) -> None:
        while self._offered:
            self._better(self._offered.popleft(), is_new=False)

    def _has_next(self) -> bool:
        """Whether something that may be better can be opened; programs that were not listed cannot be."""
        if not self._open or self._least() >= self.proof.objective:
            return False
        node = self._open[0][2]
        return isinstance(node, Block) or bool(node.choices)

    def _least(self) -> int:
        return self._open[0][0]

    @property
    def _left_s(self) -> float:
        """Deterministic time that is left of the budget, infinite where it has no limit."""
        return math.inf if self._budget.work_s is None else self._budget.work_s - self.proof.work_s

    def _is_spent(self, more_s: float = 0.0) -> bool:
        """Whether nothing is left of the budget after some more work."""
        return more_s >= self._left_s or self._budget.stop.is_set()

    def _add_work(self, work_s: float) -> None:
        self.proof = replace(self.proof, work_s=round(self.proof.work_s + work_s, 6))

    def _bound(self) -> None:
        """The least bound of what is open is a bound over all; it never falls."""
        least = min(self.proof.objective, self._least() if self._open else FORBIDDEN)
        self.proof = replace(self.proof, bound=max(self.proof.bound, least if least < FORBIDDEN else 0))

    def _push(self, bound: int, node: Program | Block) -> None:
        heapq.heappush(self._open, (bound, next(self._order), node))

    def _push_next(self, coming: Iterator[Program]) -> None:
        program = next(coming, None)
        if program is not None:
            self._push(program.floor, program)

    def _next_blocks(self, coming: Iterator[Program]) -> list[tuple[int, Block]]:
        """As many blocks of the least bounds as there are workers; programs on the way are opened."""
        blocks: list[tuple[int, Block]] = []
        while self._has_next() and len(blocks) < self._budget.workers and not self._is_spent():
            bound, _, node = heapq.heappop(self._open)
            if isinstance(node, Block):
                blocks.append((bound, node))
            else:
                self._push_next(coming)
                self._open_program(node)
        return blocks

    def _open_program(self, program: Program) -> None:
        places = Places(self._modelled, program)
        if places.main is None:
            self._better(tuple(None for _ in self._problem.rooms), bound=program.floor)
            return
        is_first = self._explored == 0
        if is_first:  # without a good layout most places stay open, which takes long to see
            self._explore(program, places)
        leaves, asked = places.leaves(self.proof.objective)
        if leaves and not is_first and self._explored < EXPLORED and self._explore(program, places):
            leaves, asked = places.leaves(self.proof.objective)
        if not leaves or self._try_places(program, places):
            return
        scope = scope_of(self._problem, places, program, leaves)
        is_whole = is_dense(self._problem, scope)
        if is_whole or len(leaves) > WEAK * asked:
            for part in pieces_of(leaves) if is_whole else [tuple(leaves)]:
                self._push(part[0].floor, Block(places, program, part, 0, scope, is_whole=True))
            return
        for block in blocks_of(leaves, SIDES[0]):
            self._push(block[0].floor, Block(places, program, block, 0, scope))

    def _try_places(self, program: Program, places: Places) -> bool:
        """Settle a program by its places one after another, where these are few; whether they are."""
        tables = PlaceTables.of(places, self.proof.objective)
        if tables is None:
            return False
        tree = PlaceTree(self._problem, places, tables, self._is_spent)
        tree.run(self.proof.objective)
        self._add_work(tree.work_s)
        if tree.best is not None:
            self._better(tree.best, bound=program.floor)
        if not tree.is_done:
            self._push(max(program.floor, tree.floor), program)
        return True

    def _explore(self, program: Program, places: Places) -> bool:
        """Look for something better in a program by itself; whether there was."""
        self._explored += 1
        limit, asked = self.proof.objective, self._budget
        found = best_of_program(self._problem, places, limit, seed=asked.seed, stop=asked.stop, work_s=self._left_s)
        self._add_work(found.work_s)
        if found.state is not None:
            self._better(found.state, bound=program.floor)
        return found.state is not None

    def _solve(self, threads: ThreadPoolExecutor, blocks: Sequence[tuple[int, Block]]) -> None:
        asked = [(bound, left) for bound, block in blocks if (left := block.below(self.proof.objective)).leaves]
        jobs = [threads.submit(self._ask, block, self.proof.objective) for _, block in asked]
        for (bound, block), job in zip(asked, jobs, strict=True):
            self._take(bound, block, job.result())

    def _ask(self, block: Block, limit: int) -> Answer:
        scope = scope_of(self._problem, block.places, block.program, block.leaves, within=block.scope)
        built = build_model(self._problem, scope)
        return solve(built, self._effort(block, limit), stop=self._budget.stop)

    def _effort(self, block: Block, limit: int) -> Effort:
        """How hard to try a block. Where trips are dense one search with all of the linear relaxation is best."""
        dense = block.is_whole and is_dense(self._problem, block.scope)
        doublings = block.level if block.is_whole else max(0, block.level - len(SIDES) + 1)
        slice_s = SLICE_S * 2.0**doublings * (WHOLE_SLICES if block.is_whole else 1)
        return Effort(
            workers=self._budget.workers if block.is_whole and not dense and self._budget.work_s is None else 1,
            deterministic_s=min(slice_s, self._left_s),
            wall_s=1e9,
            seed=1,
            linearization=(2 if dense else 1) if block.is_whole else 0,
            cutoff=limit if limit < FORBIDDEN else None,
            log=None if self._budget.log_file is None else self._budget.log,
        )

    def _take(self, bound: int, block: Block, answer: Answer) -> None:
        """What the solver said of a block: a better layout, that there is none, or not yet."""
        self._add_work(answer.work_s)
        if answer.state is not None:
            self._better(answer.state, counted=answer.objective, bound=bound)
        if answer.verdict in ("optimal", "infeasible"):
            return
        bound = max(bound, answer.bound or 0)
        left = block.below(self.proof.objective)
        if block.is_whole or block.level + 1 >= len(SIDES) or self._is_spent():
            self._push(bound, replace(left, level=block.level + 1))
            return
        for part in blocks_of(left.leaves, SIDES[block.level + 1]):
            self._push(max(bound, part[0].floor), replace(block, leaves=part, level=block.level + 1))

    def _better(self, state: State, *, counted: int | None = None, bound: int = 0, is_new: bool = True) -> None:
        """Take a layout over where it is better. Raises SolverFault where counts contradict each other."""
        objective = modelled_value(self._problem, state)
        if (counted is not None and counted != objective) or objective < bound:
            raise SolverFault(f"{state} counts {objective}, the solver has {counted}, a bound says {bound}", "")
        if objective < self.proof.objective:
            self.proof = replace(self.proof, state=state, objective=objective)
            if is_new:
                self._known(state)
