"""The proof of the whole model: programs by what they cost at least, and each as blocks of places of its main room.

Best first: the node of the least bound is opened next, so that at any time the least bound of an open node is a bound
over all layouts. A program is opened into blocks of its places within the horizon; a block is asked of the solver, and
split where it takes too long. What lies beyond the horizon waits for the next one.
"""

import heapq
import math
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import lru_cache, partial
from itertools import count
from typing import Final

from optimizer.engine.explorer import board_of
from optimizer.engine.model import build_model, is_dense, program_scope
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Problem, State, modelled_value
from optimizer.engine.problem.modelled import modelled_problem
from optimizer.engine.prover.blocks import SIDES, Block, blocks_of, pieces_of, scope_of
from optimizer.engine.prover.dives import DIVE_S, REACH, Dives, block_of
from optimizer.engine.prover.horizon import Horizon
from optimizer.engine.prover.incumbent import best_of_program
from optimizer.engine.prover.place_tree import PlaceTables, PlaceTree
from optimizer.engine.prover.places import Leaf, Places
from optimizer.engine.prover.programs import Program, programs
from optimizer.engine.prover.proof import Budget, WholeProof
from optimizer.engine.prover.solve import Answer, Effort, SolverFault, solve

SLICE_S: Final = 0.5
"""Deterministic time that a block may take; one that cannot be split further gets twice as much each time."""
WHOLE_SLICES: Final = 16
"""Slices that a program in one model gets at first."""
EXPLORED: Final = 3
"""So many programs are explored by themselves before they are opened, where all is looked at from the start. Not with
root rings, which the tables do not know."""
PLACES_KEPT: Final = 64
"""Tables of so many programs are kept for the next horizon."""


Found = Callable[[State], None]


class BranchAndBound:
    """One proof. `known` is told every better layout, which may break what is not in the model."""

    def __init__(self, problem: Problem, budget: Budget, known: Found = lambda _state: None) -> None:
        self._problem, self._budget, self._known = problem, budget, known
        self._modelled = modelled_problem(problem)
        self._open: list[tuple[int, int, Program | Block]] = []
        self._order, self._asked, self._blocks = count(), 0, 0
        self._explored = self._to_explore = 0
        self._horizon, self._dives = Horizon.all_of(0), Dives()
        self._opened: list[Program] = []
        self._places_of = lru_cache(PLACES_KEPT)(partial(Places, self._modelled))
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
        self._horizon = self._first_horizon()
        self._to_explore = EXPLORED if self._horizon.is_all and not self._problem.rings else 0
        with ThreadPoolExecutor(self._budget.workers) as threads:
            while self._has_next() and not self._is_spent():
                self._take_offered()
                self._bound()
                self._look_farther()
                self._dive()
                self._solve(threads, self._next_blocks(coming))
        self._take_offered()
        self._bound()
        return self.proof

    @property
    def _limit(self) -> int:
        """Only what costs less is looked for: less than the best that is known, and within the horizon."""
        return min(self.proof.objective, self._horizon.limit)

    def _first_horizon(self) -> Horizon:
        """Where trips are dense all is looked at from the start: there a low limit makes nothing easier."""
        if not self._open:
            return Horizon.all_of(0)
        least, _, program = self._open[0]
        assert isinstance(program, Program)
        is_dense_one = bool(program.choices) and is_dense(self._problem, program_scope(self._problem, program.choices))
        return Horizon.all_of(least) if is_dense_one else Horizon.of(least)

    def _look_farther(self) -> None:
        """Look beyond the horizon once nothing is open within it."""
        if self._least() >= self._horizon.limit:
            self._horizon, self._asked = self._horizon.beyond(self._least(), self._asked, self.proof.objective), 0

    def _dive(self) -> None:
        """Look far beyond the horizon for a better layout, now and then, while none is known that is near to it."""
        if self._horizon.is_near(self.proof.objective):
            return
        chosen = self._dives.next_in(self._opened, self._blocks)
        if chosen is None:
            return
        program, side = chosen
        limit = min(self.proof.objective, round(REACH * self._horizon.limit))
        block = block_of(self._problem, self._places_of(program), limit, side)
        if block is not None:
            self._take_state(self._ask(block, limit, min(DIVE_S, self._left_s)), program.floor)

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
        while self._is_near() and len(blocks) < self._budget.workers and not self._is_spent():
            bound, _, node = heapq.heappop(self._open)
            if isinstance(node, Block):
                blocks.append((bound, node))
            else:
                if node.floor == bound:  # else it was opened before
                    self._opened.append(node)
                    self._push_next(coming)
                self._open_program(node)
        return blocks

    def _is_near(self) -> bool:
        return self._has_next() and self._least() < self._limit

    def _open_program(self, program: Program) -> None:
        """Put its places within the limit into blocks; what lies beyond waits for the next horizon."""
        places, limit = self._places_of(program), self._limit
        if not places.there:
            self._better(tuple(None for _ in self._problem.rooms), bound=program.floor)
            return
        if self._explored < self._to_explore:
            self._explore(program, places)
            limit = self._limit
        leaves = places.leaves(limit)
        if limit < self.proof.objective:
            self._push(limit, program)
        if not leaves or self._try_places(program, places):
            return
        self._push_blocks(places, leaves)

    def _push_blocks(self, places: Places, leaves: Sequence[Leaf]) -> None:
        scope = scope_of(self._problem, places, leaves)
        is_whole = is_dense(self._problem, scope)
        for part in pieces_of(leaves) if is_whole else blocks_of(leaves, SIDES[0]):
            self._push(part[0].floor, Block(places, part, scope, is_whole))

    def _try_places(self, program: Program, places: Places) -> bool:
        """Settle a program by its places one after another, where these are few; whether they are."""
        tables = None if self._problem.rings else PlaceTables.of(places, self._limit)  # they know no rings
        if tables is None:
            return False
        tree = PlaceTree(self._problem, places, tables, self._is_spent)
        tree.run(self._limit)
        self._add_work(tree.work_s)
        if tree.best is not None:
            self._better(tree.best, bound=program.floor)
        if not tree.is_done:
            self._push(max(program.floor, tree.floor), program)
        return True

    def _explore(self, program: Program, places: Places) -> None:
        """Look for something better in a program by itself, for a limit to begin with."""
        self._explored += 1
        limit, asked = self.proof.objective, self._budget
        found = best_of_program(self._problem, places, limit, seed=asked.seed, stop=asked.stop, work_s=self._left_s)
        self._add_work(found.work_s)
        if found.state is not None:
            self._better(found.state, bound=program.floor)

    def _solve(self, threads: ThreadPoolExecutor, blocks: Sequence[tuple[int, Block]]) -> None:
        if self._is_spent():  # what opening them took
            for bound, block in blocks:
                self._push(bound, block)
            return
        asked = [(bound, left) for bound, block in blocks if (left := block.below(self._limit)).leaves]
        self._asked += len(asked)
        self._blocks += len(asked)
        jobs = [threads.submit(self._ask, block, self._limit, self._slice_s(block)) for _, block in asked]
        for (bound, block), job in zip(asked, jobs, strict=True):
            self._take(bound, block, job.result())

    def _ask(self, block: Block, limit: int, slice_s: float) -> Answer:
        """Ask for a layout of a block below a limit. Where trips are dense all of the linear relaxation is best."""
        scope = scope_of(self._problem, block.places, block.leaves, within=block.scope)
        effort = Effort(
            workers=1,
            deterministic_s=slice_s,
            wall_s=1e9,
            seed=1,
            linearization=2 if block.is_whole else 0,
            cutoff=limit if limit < FORBIDDEN else None,
            log=None if self._budget.log_file is None else self._budget.log,
        )
        return solve(build_model(self._problem, scope), effort, stop=self._budget.stop)

    def _slice_s(self, block: Block) -> float:
        """Deterministic time for a block. It is asked before any thread begins, so that it repeats."""
        return min(SLICE_S * 2.0**block.tries * (WHOLE_SLICES if block.is_whole else 1), self._left_s)

    def _take(self, bound: int, block: Block, answer: Answer) -> None:
        """What the solver said of a block: a better layout, that there is none, or not yet."""
        self._take_state(answer, bound)
        if answer.verdict in ("optimal", "infeasible"):
            return
        bound = max(bound, answer.bound or 0)
        for part in [block] if self._is_spent() else block.parts(self._limit):
            self._push(max(bound, part.leaves[0].floor), part)

    def _take_state(self, answer: Answer, bound: int) -> None:
        self._add_work(answer.work_s)
        if answer.state is not None:
            self._better(answer.state, counted=answer.objective, bound=bound)

    def _better(self, state: State, *, counted: int | None = None, bound: int = 0, is_new: bool = True) -> None:
        """Take a layout over where it is better. Raises SolverFault where counts contradict each other."""
        objective = modelled_value(self._problem, state)
        bound = max(bound, self.proof.bound if is_new else 0)
        if (counted is not None and counted != objective) or objective < bound:
            raise SolverFault(f"{state} counts {objective}, the solver has {counted}, a bound says {bound}", "")
        if objective < self.proof.objective:
            self.proof = replace(self.proof, state=state, objective=objective)
            if is_new:
                self._known(state)
