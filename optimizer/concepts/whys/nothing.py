"""Why nothing fits: what cannot be kept together, from which nothing can be let go, and ways out that were tried."""

import threading
import time
from collections.abc import Iterator, Sequence
from typing import Final

from optimizer.concepts.case import Case
from optimizer.concepts.held import why_not_held
from optimizer.concepts.option import Conflict
from optimizer.concepts.whys.bindings import Binding, bindings_of
from optimizer.concepts.whys.changes import changes_of
from optimizer.concepts.whys.cores import Cores
from optimizer.concepts.whys.trying import placeless_rooms
from optimizer.concepts.whys.ways_out import WaysOut
from optimizer.concepts.whys.words import above_ceiling, sentence
from optimizer.engine.problem import Problem

Told = tuple[str, str, tuple[str, ...]]
"""A rule that would have to give: its id, its sentence, and the rooms that it speaks of."""
ASKED_FOR: Final = 0.5
"""Share of the time for finding out what is to blame; ways out have the rest."""


def why_nothing(case: Case, problem: Problem, *, seconds: float, stop: threading.Event) -> Conflict:
    """What cannot be kept together where nothing fits, and changes with which layouts were really found."""
    began = time.monotonic()
    core = Cores(case, until=began + ASKED_FOR * seconds, stop=stop).core()
    bindings = bindings_of(case) if core is None else core.bindings
    ways_out = WaysOut(case, until=began + seconds, stop=stop).solved(changes_of(case, bindings))
    placeless = placeless_rooms(problem)
    return Conflict(
        () if core is None else told(core.bindings, placeless),
        _words(case, placeless, core is not None and core.is_least),
        tuple(one.way_out for one in ways_out),
    )


def conflict_again(case: Case, problem: Problem, conflict: Conflict) -> Iterator[str]:
    """What is said of why nothing fits, and is not so: words, and rules that bind nobody. Nothing is solved: whether
    these rules suffice is not asked.
    """
    placeless = placeless_rooms(problem)
    if conflict.words not in {_words(case, placeless, is_least) for is_least in (False, True)}:
        yield f"why nothing fits is not so: {conflict.words!r}"
    known = told(bindings_of(case), placeless)
    yield from (f"{rule[1]!r} is not what binds in this yard" for rule in conflict.rules if rule not in known)


def told(bindings: Sequence[Binding], rooms: Sequence[str] = ()) -> tuple[Told, ...]:
    """Bindings as rules; one that binds every room is told of these."""
    return tuple((one.rule, one.sentence, one.rooms or tuple(rooms)) for one in bindings)


def _words(case: Case, placeless: Sequence[str], is_least: bool) -> str:
    reasons = [why_not_held(case, name) or _fits_nowhere(case, name) for name in placeless]
    if (dearer := above_ceiling(case)) is not None:
        reasons.append(sentence(dearer))
    if reasons:
        return " ".join(reasons)
    if is_least:
        return "The required rooms cannot all stand in this yard; one of these would have to give."
    return "The required rooms cannot all stand in this yard; what is to blame takes longer to find out."


def _fits_nowhere(case: Case, name: str) -> str:
    where = "as it is held" if case.scenario.brief.holds_of(name) else "in this yard"
    return f"The {name} fits nowhere {where}, whatever the other rooms do."
