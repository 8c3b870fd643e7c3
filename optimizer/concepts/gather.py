"""Polish arrangements, let reality judge them, and keep what holds."""

import threading
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field

from optimizer.concepts.case import Case
from optimizer.events import Emit, Event
from optimizer.options import Option, Proof, cautions_for, permits_for
from optimizer.search import Board, Polished, State, layout_of, polish

WORKERS = 2
CENTS = 100


@dataclass
class Gathering:
    """What has been found so far: options with the states behind them, and what reality refused."""

    case: Case
    board: Board
    emit: Emit
    found: list[tuple[Option, Polished]] = field(default_factory=list)
    refused: list[str] = field(default_factory=list)
    tried: set[State] = field(default_factory=set)

    @property
    def options(self) -> list[Option]:
        """Options found, in the order of finding."""
        return [option for option, _ in self.found]

    @property
    def best(self) -> Polished | None:
        """The best by the model's objective."""
        return min((polished for _, polished in self.found), key=lambda p: p.objective, default=None)

    def take(self, states: Sequence[State], *, enough: int, stop: threading.Event) -> None:
        """Polish and judge states in order until enough are found; once stopped, only until one is.

        States go in batches of a fixed size, so that what is found does not depend on the clock.
        """
        fresh = [state for state in states if state not in self.tried]
        batch = 2 * WORKERS
        with ThreadPoolExecutor(WORKERS) as workers:
            for start in range(0, len(fresh), batch):
                if len(self.found) >= enough or (stop.is_set() and self.found):
                    return
                part = fresh[start : start + batch]
                self.tried.update(part)
                for polished in workers.map(lambda state: polish(self.board, state, stop=stop), part):
                    self._judge(polished)

    def _judge(self, polished: Polished) -> None:
        """Keep the option if no hard rule is broken. That the exact cost passes the ceiling is expected of some, and
        no defect; any other finding is one, and is kept with what repeats it.
        """
        layout = layout_of(self.board.instance, polished.state)
        judgement = self.case.judged(layout)
        appraisal = judgement.appraisal
        if judgement.findings:
            self.refused += [f"{f.rule}: {f.words}; at {layout}" for f in judgement.findings if f.rule != "budget"]
            return
        option = Option(
            id=f"found-{len(self.found)}",
            rank=0,
            score=judgement.score,
            losses=judgement.losses,
            reason="",
            layout=layout,
            left_out=self.case.left_out(layout, appraisal),
            appraisal=appraisal,
            findings=(),
            cautions=cautions_for(self.case.scenario, self.case.rooms, layout),
            permits=permits_for(self.case.scenario, self.case.rooms, layout, appraisal),
            proof=_proof(polished),
            differs_by=None,
        )
        self.found.append((option, polished))
        self._tell()

    def _tell(self) -> None:
        best = min(self.options, key=lambda option: option.score)
        words = f"{best.appraisal.cost.phase(1):,.0f} {self.case.book.currency}"
        self.emit(Event("option", {"found": len(self.found), "best": words}))


def _proof(polished: Polished) -> Proof:
    return Proof("proven" if polished.is_proven else "bounded", polished.objective / CENTS, polished.bound / CENTS)
