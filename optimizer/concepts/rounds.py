"""The search in rounds: explore, let the judge look at what was found, learn from what it says, polish, and again.

A round is the same whatever the clock says: what the judge was given in one round is learned at the end of the next,
in the order in which it was given. So more rounds never find less, and a number of rounds repeats exactly.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Final

from optimizer.check import OF_WAYS
from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import CENTS, Find, Gathering
from optimizer.concepts.growth import Grown
from optimizer.concepts.picking import Picker
from optimizer.concepts.whole import Whole
from optimizer.concepts.workers import Pending, Workers, hurry
from optimizer.engine.explorer import Explorer, Residuals, Tour
from optimizer.engine.ideas import IdeaGrounds
from optimizer.engine.portfolio import Purse, first_tours, tour_of
from optimizer.engine.problem import State, is_whole, layout_of, modelled_value
from optimizer.engine.problem.alike import Archive
from optimizer.engine.prover import ArrangementProof, unproven
from optimizer.layout import Layout

JUDGED, MOST_JUDGED, GROWN = 3, 8, 1
"""Layouts judged and settled concepts grown in a round of one tour: few, so that what the judge says is soon learned.
While none with every room holds, as many more as were last refused before any way was laid: that takes little time.
"""
POLISHED_EVERY: Final = 4
"""One arrangement is polished in each so many rounds: its model takes as long as many layouts that are judged."""
GROWN_S: Final = 0.15
"""About how long one concept's rooms take to grow."""
FIRST_JUDGED, FIRST_TRIES = 3, 6
"""Layouts judged after the first short tour, and so many such tours at most until a layout holds."""
FAR_SEED: Final = 100_000
"""Between the seeds of the first tours, so that none is the beginning of a later tour."""
LEARNED_FROM: Final = 6
"""So many judged layouts are needed before anything is learned of places."""
TOLD: Final = 12
"""Of so many of the best the one of the least objective is told to the proof of the whole."""
STARTS: Final = 6
"""So many of the best layouts are starts of further tours."""


@dataclass
class Rounds:
    """The search of one yard. `stop` ends it between two steps."""

    gathering: Gathering
    explorer: Explorer
    workers: Workers
    whole: Whole
    seed: int
    count: int
    stop: Clock
    turn: int = 0
    _soon_refused: int = 0
    _judged: list[tuple[ArrangementProof, Pending[Verdict]]] = field(default_factory=list)
    _polishing: list[tuple[Find, Pending[ArrangementProof]]] = field(default_factory=list)
    _polished: list[tuple[Find, ArrangementProof, Pending[Verdict]]] = field(default_factory=list)
    _growing: list[tuple[Find, Pending[Grown]]] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Begin with nothing known."""
        problem = self.gathering.problem
        self._purse, self._residuals = Purse(problem), Residuals(problem)
        self._known = Archive(problem, self.gathering.case.diagonal_ft)
        self._ideas = IdeaGrounds(problem)
        self._picker = Picker(self.explorer, self._purse, self._known)

    def first(self, starts: Sequence[State], mended: Sequence[State] = ()) -> None:
        """Something to show soon: what is known already, then short tours, and the few best of them judged here; again,
        with what was learned, while none holds.

        `mended` are parts of known layouts; of what a tour makes of them each time the best is judged at once, until
        one holds.
        """
        self._judge_here(self._found(starts))
        for tour in first_tours(self.seed, (*starts, *mended), self._purse.set_aside(0)):
            self._run(tour)
            if mended and not self.gathering.finds:
                self._judge_here(self._picker.best())
        self._judge_picked()
        for turn in range(1, FIRST_TRIES):
            if self.gathering.finds or self.stop.is_set():
                break
            for tour in first_tours(self.seed + turn * FAR_SEED, (), self._purse.set_aside(turn)):
                self._run(tour)
            self._judge_picked()
        if not (self.stop.is_set() and self.gathering.finds):
            self._tell_whole()

    def _run(self, tour: Tour) -> None:
        self.explorer.run(tour, stop=self.stop)
        self._purse.is_tight |= not self.explorer.pool.best

    def _judge_picked(self) -> None:
        """One after another, so that each refusal keeps the next from the same place."""
        for _ in range(FIRST_JUDGED):
            self._judge_here(self._picker.best())

    def _judge_here(self, states: Sequence[State]) -> None:
        for state in states:
            if self.stop.is_set() and self.gathering.finds:
                return
            verdict = self.gathering.case.judged(layout_of(self.gathering.problem, state))
            self._learn(unproven(self.explorer.board, state), verdict)

    def run_one(self) -> None:
        """One round."""
        problem = self.gathering.problem
        found = self._found(self.whole.found())
        picked = self._begin((*found, *self._picker.pick(self._to_judge)))
        self._soon_refused = 0
        polished = int((self.turn + 1) % POLISHED_EVERY == 0)
        polishing, growing = self._begin_polishing(polished), self._begin_growing(GROWN)
        best, met = self.gathering.best_states(STARTS), self.gathering.ideas_met
        self._run(tour_of(problem, self.turn, seed=self.seed, purse=self._purse, best=best, ideas=self._ideas, met=met))
        self._take_in()
        self._judged, self._polishing, self._growing = picked, polishing, growing
        self.turn += 1
        self._tell_whole()

    @property
    def _to_judge(self) -> int:
        """How many layouts are judged next."""
        has_whole = any(is_whole(self.gathering.problem, find.proof.state) for find in self.gathering.finds.values())
        return JUDGED if has_whole else min(MOST_JUDGED, JUDGED + self._soon_refused)

    def polish_one(self) -> None:
        """A round in which nothing new is looked for."""
        judged = self._begin(self._found(self.whole.found()))
        count = 2 * (self.workers.count + 1)
        polishing, growing = self._begin_polishing(count), self._begin_growing(count)
        self._take_in()
        self._judged, self._polishing, self._growing = judged, polishing, growing

    def finish(self) -> None:
        """Take in what the judge still has, and what the whole model found; then let grow what will be shown."""
        self._judged += self._begin(self._found(self.whole.finish()))
        while self._is_under_way:
            self._take_in()
            self._judged, self._polishing, self._growing = [], [], []
        # Nothing comes of polishing any more: what it has not reached is settled, too. The time for it was spared.
        self._growing = self._begin_growing(self.count, is_last=True)
        self._take_in()
        self._growing = []

    @property
    def growing_s(self) -> float:
        """About how long it takes to let grow what would be shown now."""
        return GROWN_S * len(self.gathering.ungrown(self.gathering.chosen(self.count))) / (self.workers.count + 1)

    @property
    def is_settled(self) -> bool:
        """Whether all that would be shown has been polished and grown, and nothing is under way."""
        if self._is_under_way:
            return False
        chosen = self.gathering.chosen(self.count)
        return not (self.gathering.unproven(chosen) or self.gathering.ungrown(chosen))

    @property
    def _is_under_way(self) -> bool:
        return bool(self._judged or self._polishing or self._polished or self._growing)

    def proven_set(self) -> frozenset[Layout]:
        """Layouts that would be shown, where each of them is proven the best of its arrangement; else none."""
        chosen = self.gathering.chosen(self.count)
        proven = all(option.proof is not None and option.proof.arrangement == "proven" for option in chosen)
        return frozenset(option.layout for option in chosen) if proven else frozenset()

    def _found(self, states: Sequence[State]) -> list[State]:
        """Those of the proof's layouts that the judge has not seen."""
        new = [state for state in dict.fromkeys(states) if state not in self._picker.seen]
        self._picker.seen.update(new)
        return new

    def _tell_whole(self) -> None:
        """Let the proof of the whole begin, or go on, from the layout of the least objective."""
        ranked = self.explorer.pool.ranked()[:TOLD]
        if ranked:
            best = min((s for _, s in ranked), key=lambda s: modelled_value(self.gathering.problem, s))
            self.whole.begin(best, beside=self.workers.count > 0)

    def _begin(self, states: Sequence[State]) -> list[tuple[ArrangementProof, Pending[Verdict]]]:
        layouts = [layout_of(self.gathering.problem, state) for state in states]
        pending = self.workers.judge(layouts)
        return [(unproven(self.explorer.board, s), p) for s, p in zip(states, pending, strict=True)]

    def _begin_polishing(self, count: int) -> list[tuple[Find, Pending[ArrangementProof]]]:
        finds = [find for find, _ in self._polishing] + [find for find, _, _ in self._polished]
        under_way = {find.option.layout for find in finds}
        left = self.gathering.unproven(self.gathering.chosen(self.count))
        finds = [find for find in left if find.option.layout not in under_way][:count]
        pending = self.workers.polish([find.proof.state for find in finds], stop=self.stop)
        return list(zip(finds, pending, strict=True))

    def _begin_growing(self, count: int, *, is_last: bool = False) -> list[tuple[Find, Pending[Grown]]]:
        under_way = {find.option.layout for find, _ in self._growing}
        left = self.gathering.ungrown(self.gathering.chosen(self.count))
        settled_finds = (find for find in left if find.is_final or is_last)
        finds = [find for find in settled_finds if find.option.layout not in under_way][:count]
        settled = [Grown(find.option.layout, Verdict((), find.option.appraisal, find.option.losses)) for find in finds]
        stop = self.stop.without_limit if is_last else self.stop
        return list(zip(finds, self.workers.grow(settled, stop=stop), strict=True))

    def _take_in(self) -> None:
        """What was begun in the round before: verdicts are learned, polished layouts given to the judge."""
        hurry([*(p for _, p in self._judged), *(p for _, p in self._polishing), *(p for _, p in self._growing)])
        for grown_find, growing in self._growing:
            self.gathering.grow(grown_find, growing.result())
        for proof, pending in self._judged:
            verdict = pending.result()
            self._soon_refused += is_soon_refused(verdict)
            self._learn(proof, verdict)
        for find, proof, pending in self._polished:
            self.gathering.refine(find, proof, pending.result())
        self._polished = []
        for find, polished in self._polishing:
            proof = polished.result()
            if proof.state == find.proof.state:
                self.gathering.prove(find, proof)
            else:
                (pending,) = self.workers.judge([layout_of(self.gathering.problem, proof.state)])
                self._polished.append((find, proof, pending))
        if len(self._residuals.cents) >= LEARNED_FROM:
            self.explorer.board.learn(self._residuals.tables())

    def _learn(self, proof: ArrangementProof, verdict: Verdict) -> None:
        """Keep what holds; remember what was refused and why, and what the exact figures add."""
        state = proof.state
        if self.gathering.keep(proof, verdict):
            self._known.add(state)
            self._residuals.learn(state, CENTS * verdict.score - self.explorer.counted(state))
        learn_refusals(self.explorer, state, verdict)
        learn_cost(self.gathering.case, self._purse, state, verdict)


def is_soon_refused(verdict: Verdict) -> bool:
    """Whether a layout was refused before its ways were laid."""
    return not verdict.holds and OF_WAYS.isdisjoint(finding.rule for finding in verdict.findings)


def learn_refusals(explorer: Explorer, state: State, verdict: Verdict) -> None:
    """Let an explorer keep off what was refused; that the ceiling is passed forbids no place."""
    problem = explorer.board.problem
    for finding in verdict.findings:
        if finding.rule != "budget":
            blamed = tuple(i for i, room in enumerate(problem.rooms) if room.name in finding.rooms)
            explorer.refusals.learn(problem, state, blamed)


def learn_cost(case: Case, purse: Purse, state: State, verdict: Verdict) -> None:
    """Let a purse know what ways cost, by the exact cost of phase 1 without the fixed charges; nothing of a layout that
    was refused unpriced.
    """
    budget, ceiling = purse.problem.budget, case.scenario.brief.budget.ceiling
    cost = None if ceiling is None else verdict.phase_1(ceiling)
    if budget is not None and budget.most is not None and cost is not None and ceiling is not None:
        purse.learn(state, budget.most + round(CENTS * (cost - ceiling)))
