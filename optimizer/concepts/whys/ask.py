"""From a question to its answer: ask for it, look for a plan with it, else find out what is in the way."""

import threading
import time
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

from optimizer.brief import RuleId
from optimizer.concepts.case import Case
from optimizer.concepts.held import hold_words
from optimizer.concepts.option import Option, WayOut
from optimizer.concepts.whys.answers import Answer, above_the_ceiling, cannot_be, it_costs, unknown
from optimizer.concepts.whys.bindings import OF_THE_SET, Asked, bindings_of
from optimizer.concepts.whys.changes import Group, changes_of
from optimizer.concepts.whys.cores import Cores
from optimizer.concepts.whys.easier import easier
from optimizer.concepts.whys.here import Place, here, moved
from optimizer.concepts.whys.nothing import Told, told
from optimizer.concepts.whys.question import Question, refuse_unanswerable
from optimizer.concepts.whys.stands import told_of
from optimizer.concepts.whys.sunny import places_words, shade_words
from optimizer.concepts.whys.trying import MANY_TOURS, Found, Trial, tried
from optimizer.concepts.whys.ways_out import MOST_WAYS_OUT, Solved, WaysOut, solved_by
from optimizer.concepts.words import capital
from optimizer.events import Emit, Event, to_nobody
from optimizer.scenario.patch import Patch, patched

SEARCHED, ASKED_WHY, MOVED = 0.4, 0.6, 0.75
"""Shares of the time after which no plan with it is looked for any more, what is in the way must be known, and no other
place is looked for.
"""
_MOST_REFUSED: Final = 3
_FREE: Final = "With the other rooms free to move: "


@dataclass(frozen=True)
class Asking:
    """One question about a case: in a concept, if `option` is given; `known` are concepts of the same run."""

    case: Case
    question: Question
    seconds: float
    option: Option | None = None
    known: tuple[Option, ...] = ()
    emit: Emit = to_nobody


def answer(asking: Asking, *, stop: threading.Event) -> Answer:
    """The answer that can be found in the time. Raises InputError for a question about nothing that there is."""
    refuse_unanswerable(asking.case, asking.question, asking.option)
    return _Answering(asking, stop).answer()


class _Answering:
    """One question on its way to its answer."""

    def __init__(self, asking: Asking, stop: threading.Event) -> None:
        self._asking, self._stop, self._began = asking, stop, time.monotonic()
        self._case, self._question = asking.case, asking.question
        self._asked = asking.question.asked(asking.case)
        self._said: list[str] = []
        self._told_stage = ""
        self._rules: tuple[Told, ...] = ()
        self._ways: list[Solved] = []

    def answer(self) -> Answer:
        """All stages."""
        if self._question.clashing(self._case):
            return self._held_otherwise()
        if self._question.kind == "sun":
            self._tell_sun()
        if self._question.kind == "here" and self._is_settled_here():
            return self._answered()
        return self._asked_for()

    def _tell_sun(self) -> None:
        room, option = self._question.room, self._asking.option
        if option is not None:
            self._said.append(shade_words(self._case, option.layout, room))
        self._said.append(places_words(self._case, room))

    def _is_settled_here(self) -> bool:
        """Whether the place itself, or the concept with its rooms where they are, says all."""
        self._stage("trying the place itself")
        place = Place(self._case, self._question, self._asking.option, self._until(1.0), self._stop)
        found = here(place, is_barred=lambda: self._is_impossible(alone=True))
        self._said += found.said
        self._rules, self._ways = found.rules, list(found.ways)
        return found.is_settled

    def _asked_for(self) -> Answer:
        """Ask for it in the brief, with every room free to move."""
        self._stage("looking for a plan with it")
        asked = self._asked_case
        free = _FREE if self._said and self._question.kind == "here" else ""
        if self._has_it(asked):
            return self._answered()
        known = self._known(asked)
        if known is not None:
            option, found = known
            self._said.append(f"It fits: {option.title.lower()} has it, {it_costs(asked, found, self._asking.option)}")
            return self._fitting(found)
        if self._is_impossible():
            return self._in_the_way(asked, Trial(asked), free)
        trial = tried(asked, seconds=self._left(SEARCHED), stop=self._stop, tours=MANY_TOURS)
        if trial.best is not None:
            costs = it_costs(asked, trial.best, self._asking.option)
            self._said.append(f"{free}it fits: a plan with it was found and checked, {costs}")
            return self._fitting(trial.best)
        return self._in_the_way(asked, trial, free)

    def _has_it(self, asked: Case) -> bool:
        """Whether the concept in question has what is asked for, which is then the answer."""
        option = self._asking.option
        if option is None or option.findings or not asked.judged(option.layout).holds:
            return False
        self._said.append(f"{option.title} has it so already.")
        return True

    def _known(self, asked: Case) -> tuple[Option, Found] | None:
        """The best concept of the run that has what is asked for."""
        options = [option for option in self._asking.known if option is not self._asking.option and not option.findings]
        for option in sorted(options, key=lambda option: option.score):
            if option.layout.of(self._question.room) is not None:
                verdict = asked.judged(option.layout)
                if verdict.holds:
                    return option, Found(option.layout, verdict)
        return None

    def _fitting(self, found: Found) -> Answer:
        self._ways.insert(0, solved_by(self._case, self._asked, found))
        return self._answered()

    def _in_the_way(self, asked: Case, trial: Trial, free: str) -> Answer:
        self._stage("asking what is in the way")
        own = self._own()
        core = self._cores.core(own)
        refused = trial.most_refused(_MOST_REFUSED)
        if core is not None:
            bindings = core.bindings
            self._rules = told(bindings)
            self._said.append(free + cannot_be(asked, self._rules, is_least=core.is_least))
        else:
            rules = {rule for rule, _ in refused} or self._sums()
            bindings = tuple(one for one in bindings_of(asked, asked=own) if one.rule in rules and not one.is_asked)
            self._said.append(free + unknown(told_of(asked, refused)))
        if self._question.kind == "here" and not self._ways:
            self._ways += moved(Place(self._case, self._question, None, self._until(MOVED), self._stop))
        self._try_ways_out(self._case, easier(self._case, self._question))
        self._try_ways_out(asked, changes_of(asked, bindings), before=self._asked.patch)
        if core is None and self._ways:
            self._said.append(above_the_ceiling(asked, [one.found for one in self._ways]))
        return self._answered(is_answered=core is not None)

    def _sums(self) -> set[RuleId]:
        """What tours likely ran out of where no plan came as far as the judge: money where there is a ceiling."""
        return set(OF_THE_SET) if self._case.scenario.brief.budget.ceiling is None else {"budget"}

    def _held_otherwise(self) -> Answer:
        """A hold of the brief says otherwise; then what comes of the question once that is let go of."""
        brief, clashing = self._case.scenario.brief, self._question.clashing(self._case)
        words = [hold_words(self._case, hold) for hold in clashing]
        indices = sorted((brief.holds.index(hold) for hold in clashing), reverse=True)
        removed = tuple(("remove", f"/brief/holds/{index}", None) for index in indices)
        free = Case.of(patched(self._case.scenario, removed))
        found = _Answering(replace(self._asking, case=free, seconds=self._left(1.0)), self._stop).answer()
        let_go = f"let go of what is held: {'; '.join(words)}"
        return replace(
            found,
            answer=f"It is held otherwise: {'; '.join(words)}. What follows is without that hold. {found.answer}",
            rules=found.rules or tuple(("held", f"Held: {one}.", (self._question.room,)) for one in words),
            ways_out=tuple(WayOut(f"{let_go}; {way.text}", (*removed, *way.patch)) for way in found.ways_out),
        )

    def _try_ways_out(self, case: Case, groups: Iterable[Group], *, before: Patch = ()) -> None:
        self._stage("trying ways out")
        ways = WaysOut(case, until=self._until(1.0), stop=self._stop, before=before)
        self._ways += ways.solved(groups, most=MOST_WAYS_OUT - len(self._ways))

    @cached_property
    def _asked_case(self) -> Case:
        """The case with what is asked for in its brief."""
        return Case.of(patched(self._case.scenario, self._asked.patch))

    @cached_property
    def _cores(self) -> Cores:
        return Cores(self._asked_case, until=self._until(ASKED_WHY), stop=self._stop)

    def _is_impossible(self, *, alone: bool = False) -> bool:
        """Whether nothing keeps all of it, by two solves that are set up differently; or not even the room alone."""
        bindings = bindings_of(self._asked_case, asked=self._own())
        if alone:
            bindings = tuple(one for one in bindings if one.is_asked or not (one.required or one.rule in OF_THE_SET))
        return self._cores.fits_nothing(bindings)

    def _own(self) -> Asked:
        """What the question itself asks for."""
        holds = self._asked_case.scenario.brief.holds
        new = tuple(hold for hold in holds if hold not in self._case.scenario.brief.holds)
        return Asked(new, (self._question.room,), ("sun_least",) if self._question.kind == "sun" else ())

    def _answered(self, *, is_answered: bool = True) -> Answer:
        return Answer(
            self._question.words(self._case),
            " ".join(capital(said) for said in self._said if said),
            self._rules,
            tuple(one.way_out for one in self._ways),
            is_answered,
        )

    def _until(self, share: float) -> float:
        return self._began + share * self._asking.seconds

    def _left(self, share: float) -> float:
        return max(0.5, self._until(share) - time.monotonic())

    def _stage(self, stage: str) -> None:
        if stage != self._told_stage:
            self._asking.emit(Event("stage", {"stage": stage}))
        self._told_stage = stage
