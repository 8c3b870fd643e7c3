"""One run of the main job: search, judge every layout in real geometry, measure it, rank what holds."""

import math
import threading
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from itertools import zip_longest

from optimizer.appraisal import Appraisal, appraise, sun_of
from optimizer.catalogue import PriceBook, SizedRoom, book_for, fixed_price, room_price, sized_rooms
from optimizer.check import Finding, check_layout, wishes_missed
from optimizer.events import Emit, Event
from optimizer.instance import Instance, build_instance, worth_rate
from optimizer.layout import Layout
from optimizer.options import (
    Conflict,
    LeftOut,
    Option,
    OptionSet,
    Proof,
    SearchRecord,
    cautions_for,
    losses_of,
    ranked,
    reason_for,
)
from optimizer.scenario import Scenario
from optimizer.search import (
    Answer,
    Board,
    Polished,
    State,
    anything_fits,
    board_of,
    bound_over_all,
    layout_of,
    polish,
    run_tours,
)

WORKERS = 2
TRIED_A_CONCEPT, ENOUGH_A_CONCEPT = 8, 1.5
"""Arrangements polished at most, and found at most, for each concept wanted: some are refused, some are alike."""
CENTS = 100


@dataclass(frozen=True)
class ConceptRun:
    """Everything that a run needs; `run` does it."""

    scenario: Scenario
    rooms: tuple[SizedRoom, ...]
    book: PriceBook
    count: int
    seconds: float
    seed: int
    repeatable: bool

    @classmethod
    def of(
        cls, scenario: Scenario, count: int | None, seconds: float, seed: int | None, repeatable: bool
    ) -> "ConceptRun":
        """A run with what the call leaves open taken from the scenario."""
        wanted = scenario.brief.options
        return cls(
            scenario,
            sized_rooms(scenario.brief),
            book_for(scenario.currency),
            wanted.count if count is None else count,
            seconds,
            wanted.seed if seed is None else seed,
            repeatable,
        )

    def run(self, *, emit: Emit, stop: threading.Event, started: float) -> OptionSet:
        """Search until the set is full or time is up."""
        emit(Event("stage", {"stage": "reading the yard"}))
        instance = build_instance(self.scenario, self.rooms, self.book)
        board = board_of(instance)
        emit(Event("stage", {"stage": "exploring"}))
        clock = _Deadline(stop, None if self.repeatable else started + self.seconds)
        pool = run_tours(board, seed=self.seed, stop=clock, on_best=lambda _value, _state: None)
        if not pool.best:
            return self._nothing(instance, emit, stop, started)
        emit(Event("stage", {"stage": "polishing"}))
        found, refused = self._judged(board, pool.ranked(), emit, clock)
        if not found:
            return self._record([], refused, None, len(pool.seen), stop, started)
        best = min(found, key=lambda entry: entry[1].objective)[1]
        answer = self._bound(instance, best, emit, clock, started)
        options = [option for option, _ in found]
        return self._record(options, refused, (best, answer), len(pool.seen), stop, started)

    def _judged(
        self, board: Board, states: list[tuple[int, State]], emit: Emit, clock: threading.Event
    ) -> tuple[list[tuple[Option, Polished]], list[str]]:
        found: list[tuple[Option, Polished]] = []
        refused: list[str] = []
        chosen = _varied(states, self.count * TRIED_A_CONCEPT)
        with ThreadPoolExecutor(WORKERS) as workers:
            for start in range(0, len(chosen), self.count):
                if clock.is_set() or len(found) >= self.count * ENOUGH_A_CONCEPT:
                    break
                batch = chosen[start : start + self.count]
                for polished in workers.map(lambda state: polish(board, state, stop=clock), batch):
                    self._keep(board, polished, found, refused, emit)
        return found, refused

    def _keep(
        self,
        board: Board,
        polished: Polished,
        found: list[tuple[Option, Polished]],
        refused: list[str],
        emit: Emit,
    ) -> None:
        layout = layout_of(board.instance, polished.state)
        findings, appraisal = self._judge(layout)
        if findings:
            refused += [f"{finding.rule}: {finding.words}" for finding in findings if finding.rule != "budget"]
            return
        found.append((self._option(layout, appraisal, polished, len(found)), polished))
        cost = appraisal.cost.phase(1)
        emit(Event("option", {"found": len(found), "best": f"{cost:,.0f} {self.book.currency}"}))

    def _judge(self, layout: Layout) -> tuple[tuple[Finding, ...], Appraisal]:
        appraisal = measured(self.scenario, self.rooms, self.book, layout)
        cost = appraisal.cost.phase(1)
        return check_layout(self.scenario, self.rooms, layout, phase_1_cost=cost), appraisal

    def _option(self, layout: Layout, appraisal: Appraisal, polished: Polished, number: int) -> Option:
        losses = exact_losses(self.scenario, self.rooms, layout, appraisal)
        proof = Proof("proven" if polished.is_proven else "bounded", polished.objective / CENTS, polished.bound / CENTS)
        return Option(
            id=f"found-{number}",
            rank=0,
            score=sum(loss for _, loss in losses),
            losses=losses,
            reason="",
            layout=layout,
            left_out=self._left_out(layout, appraisal),
            appraisal=appraisal,
            findings=(),
            cautions=cautions_for(self.scenario, self.rooms, layout),
            proof=proof,
            differs_by=None,
        )

    def _left_out(self, layout: Layout, appraisal: Appraisal) -> tuple[LeftOut, ...]:
        ceiling, budget = self.scenario.brief.budget.ceiling, self.scenario.brief.budget
        result = []
        for room in self.rooms:
            if layout.of(room.name) is None:
                least = min(room_price(c, room, self.book) for c in room.choices) * (1 + budget.contingency)
                over = ceiling is not None and appraisal.cost.phase(1) + least > ceiling
                why = (
                    f"at least {least:,.0f} more would pass the ceiling"
                    if over
                    else "it costs more than it is worth here"
                )
                result.append(LeftOut(room.name, why))
        return tuple(result)

    def _bound(
        self, instance: Instance, best: Polished, emit: Emit, clock: threading.Event, started: float
    ) -> Answer | None:
        left = self.seconds - (time.monotonic() - started)
        if self.repeatable or left < 1 or clock.is_set():
            return None
        emit(Event("stage", {"stage": "bounding"}))
        answer = bound_over_all(instance, best.state, seconds=left, stop=clock)
        if answer.bound is not None:
            emit(Event("bound", {"objective": best.objective / CENTS, "bound": answer.bound / CENTS}))
        return answer

    def _record(
        self,
        options: Sequence[Option],
        refused: Sequence[str],
        best: tuple[Polished, Answer | None] | None,
        seen: int,
        stop: threading.Event,
        started: float,
    ) -> OptionSet:
        objective = None if best is None else best[0].objective / CENTS
        bound = None if best is None or best[1] is None or best[1].bound is None else best[1].bound / CENTS
        if objective is not None and bound is not None:
            bound = min(bound, objective)
        proven = objective is not None and bound is not None and bound >= objective - 0.005
        chosen = ranked(options, count=self.count, diagonal_ft=diagonal_ft(self.scenario), say=reason_for)
        record = SearchRecord(
            status="undecided" if best is None else "proven" if proven else "bounded",
            objective=objective,
            bound=bound,
            terms=chosen[0].losses if chosen else (),
            seconds=round(time.monotonic() - started, 2),
            seed=self.seed,
            repeatable=self.repeatable,
            stopped=stop.is_set(),
            arrangements_seen=seen,
            refused=tuple(refused),
        )
        return OptionSet(chosen, record)

    def _nothing(self, instance: Instance, emit: Emit, stop: threading.Event, started: float) -> OptionSet:
        emit(Event("stage", {"stage": "asking whether anything fits"}))
        conflict = self._plain_conflict(instance)
        answer = anything_fits(instance, seconds=self.seconds, stop=stop) if conflict is None else None
        nothing = conflict is not None or (answer is not None and answer.verdict == "infeasible")
        if nothing and conflict is None:
            conflict = Conflict((), "The required rooms cannot all stand in this yard under its rules and relations.")
        record = SearchRecord(
            status="nothing_fits" if nothing else "undecided",
            objective=None,
            bound=None,
            terms=(),
            seconds=round(time.monotonic() - started, 2),
            seed=self.seed,
            repeatable=self.repeatable,
            stopped=stop.is_set(),
            arrangements_seen=0,
        )
        return OptionSet((), record, conflict)

    def _plain_conflict(self, instance: Instance) -> Conflict | None:
        """A reason that needs no search: the budget is below the floor, or a required room has no place."""
        from optimizer.brief import RULES  # noqa: PLC0415

        required = [room for room in self.rooms if room.required]
        budget = self.scenario.brief.budget
        floor = fixed_price(self.scenario.brief, self.book)
        floor += sum(min(room_price(c, room, self.book) for c in room.choices) for room in required)
        floor *= 1 + budget.contingency
        if budget.ceiling is not None and floor > budget.ceiling:
            words = (
                f"What is required costs at least {floor:,.0f} with fixed work; the ceiling is {budget.ceiling:,.0f}."
            )
            names = tuple(room.name for room in required)
            return Conflict((("budget", RULES["budget"].sentence, names),), words)
        for room in instance.rooms:
            if room.required and not any(cells.any() for cells in room.allowed):
                words = f"The {room.name} fits nowhere in this yard, whatever the other rooms do."
                return Conflict((("inside_setbacks", RULES["inside_setbacks"].sentence, (room.name,)),), words)
        return None


class _Deadline(threading.Event):
    """Set when a person asks to stop, or when the time is up."""

    def __init__(self, stop: threading.Event, until: float | None) -> None:
        super().__init__()
        self._stop, self._until = stop, until

    def is_set(self) -> bool:
        late = self._until is not None and time.monotonic() > self._until
        return late or self._stop.is_set()


def _varied(states: list[tuple[int, State]], count: int) -> tuple[State, ...]:
    """The best states, those with every room and those without in turn."""
    whole = [state for _, state in states if None not in state]
    rest = [state for _, state in states if None in state]
    mixed = [state for pair in zip_longest(whole, rest) for state in pair if state is not None]
    return tuple(mixed[:count])


def measured(scenario: Scenario, rooms: tuple[SizedRoom, ...], book: PriceBook, layout: Layout) -> Appraisal:
    """Exact figures of a layout, sun and missed wishes included."""
    missed = wishes_missed(scenario, rooms, layout)
    return appraise(
        scenario,
        rooms,
        book,
        layout,
        sun_h=sun_of(scenario, rooms, layout),
        wishes_missed=tuple(f"{r.between[0]} {r.kind.replace('_', ' ')} {r.between[1]}" for r in missed),
    )


def exact_losses(
    scenario: Scenario, rooms: tuple[SizedRoom, ...], layout: Layout, appraisal: Appraisal
) -> tuple[tuple[str, float], ...]:
    """Named losses of a layout with its exact figures, in money."""
    missed = wishes_missed(scenario, rooms, layout)
    return losses_of(
        scenario,
        rooms,
        layout,
        appraisal,
        worth_rate=worth_rate(scenario, rooms),
        wish_weights=sum(relation.wish or 0.0 for relation in missed),
    )


def fresh_option(scenario: Scenario, rooms: tuple[SizedRoom, ...], book: PriceBook, option: Option) -> Option:
    """The option's layout, checked and measured anew."""
    appraisal = measured(scenario, rooms, book, option.layout)
    losses = exact_losses(scenario, rooms, option.layout, appraisal)
    findings = check_layout(scenario, rooms, option.layout, phase_1_cost=appraisal.cost.phase(1))
    return replace(
        option,
        appraisal=appraisal,
        losses=losses,
        score=sum(loss for _, loss in losses),
        findings=findings,
        cautions=cautions_for(scenario, rooms, option.layout),
    )


def diagonal_ft(scenario: Scenario) -> float:
    """Diagonal of the yard's bounding box [ft]."""
    xs, ys = zip(*scenario.site.boundary, strict=True)
    return math.hypot(max(xs) - min(xs), max(ys) - min(ys))


__all__ = ["ConceptRun", "exact_losses", "fresh_option", "measured"]
