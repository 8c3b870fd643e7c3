"""Let reality judge what was found, keep what holds, and polish what will be shown."""

import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field, replace

from optimizer.concepts.case import Case, Verdict
from optimizer.events import Emit, Event
from optimizer.layout import Layout
from optimizer.options import Option, Proof, cautions_for, permits_for
from optimizer.search import Board, Polished, State, layout_of, polish, unpolished

WORKERS = 2
CENTS = 100


@dataclass(frozen=True, slots=True)
class Find:
    """An option with the state behind it."""

    option: Option
    polished: Polished
    is_final: bool
    """Whether the solver has had its turn."""


@dataclass
class Gathering:
    """What has been found so far, by layout, and what reality refused."""

    case: Case
    board: Board
    emit: Emit
    found: dict[Layout, Find] = field(default_factory=dict)
    refused: list[str] = field(default_factory=list)
    tried: set[State] = field(default_factory=set)

    @property
    def options(self) -> list[Option]:
        """Options found, in the order of finding."""
        return [find.option for find in self.found.values()]

    @property
    def best(self) -> Polished | None:
        """The best by the model's objective."""
        return min((find.polished for find in self.found.values()), key=lambda p: p.objective, default=None)

    def take(self, states: Sequence[State], *, enough: int, stop: threading.Event) -> None:
        """Judge states in order until enough are found; once stopped, only until one is.

        Most that reality refuses it refuses polished too: these are polished last, if the others are not enough.
        """
        put_off: list[State] = []
        for state in states:
            if self._is_enough(enough, stop):
                return
            if state not in self.tried:
                self.tried.add(state)
                if not self._keep(unpolished(self.board, state), is_final=False):
                    put_off.append(state)
        for polished in self._each_polished(put_off, stop):
            self._keep(polished, is_final=True)
            if self._is_enough(enough, stop):
                return

    def polish(self, shown: Sequence[Option], *, stop: threading.Event) -> bool:
        """Move the rooms of these options to the best of their arrangement, where reality agrees and the exact score
        is no worse; whether there was anything left to polish.
        """
        left = [self.found[option.layout] for option in shown if not self.found[option.layout].is_final]
        for find, polished in zip(left, self._each_polished([f.polished.state for f in left], stop), strict=False):
            self._refine(find, polished)
        return bool(left) and not stop.is_set()

    def _is_enough(self, enough: int, stop: threading.Event) -> bool:
        return len(self.found) >= enough or (stop.is_set() and bool(self.found))

    def _each_polished(self, states: Sequence[State], stop: threading.Event) -> Iterator[Polished]:
        """States polished in batches of a fixed size, so that what is found does not depend on the clock."""
        batch = 2 * WORKERS
        with ThreadPoolExecutor(WORKERS) as workers:
            for start in range(0, len(states), batch):
                if stop.is_set() and self.found:
                    return
                part = states[start : start + batch]
                yield from workers.map(lambda state: polish(self.board, state, stop=stop), part)

    def _keep(self, polished: Polished, *, is_final: bool) -> bool:
        """Keep the option if no hard rule is broken; whether it was. That the exact cost passes the ceiling is expected
        of some, and no defect; any other finding is one, and is kept with what repeats it.
        """
        layout = layout_of(self.board.instance, polished.state)
        verdict = self.case.judged(layout)
        if verdict.findings:
            self.refused += [f"{f.rule}: {f.words}; at {layout}" for f in verdict.findings if f.rule != "budget"]
            return False
        self.found[layout] = Find(self._option(layout, verdict, polished), polished, is_final)
        self._tell()
        return True

    def _refine(self, find: Find, polished: Polished) -> None:
        """Put the polished layout in the place of a find, or with the find what was proven of its arrangement."""
        was = find.option
        layout = layout_of(self.board.instance, polished.state)
        if layout != was.layout:
            verdict = self.case.judged(layout)
            if not verdict.findings and verdict.score <= was.score:
                del self.found[was.layout]
                self.found[layout] = Find(self._option(layout, verdict, polished), polished, is_final=True)
                return
            polished = unpolished(self.board, find.polished.state, bound=polished.bound)
        self.found[was.layout] = Find(replace(was, proof=_proof(polished)), polished, is_final=True)

    def _option(self, layout: Layout, verdict: Verdict, polished: Polished) -> Option:
        scenario, placed = self.case.scenario, self.case.placed(layout)
        return Option(
            id="",
            rank=0,
            score=verdict.score,
            losses=verdict.losses,
            reason="",
            layout=layout,
            left_out=self.case.left_out(layout, verdict.measured),
            appraisal=verdict.measured,
            findings=(),
            cautions=cautions_for(scenario, placed),
            permits=permits_for(scenario, placed, verdict.measured),
            proof=_proof(polished),
            differs_by=None,
        )

    def _tell(self) -> None:
        best = min(self.options, key=lambda option: option.score)
        words = f"{best.appraisal.cost.phase(1):,.0f} {self.case.book.currency}"
        self.emit(Event("option", {"found": len(self.found), "best": words}))


def _proof(polished: Polished) -> Proof:
    return Proof("proven" if polished.is_proven else "bounded", polished.objective / CENTS, polished.bound / CENTS)
