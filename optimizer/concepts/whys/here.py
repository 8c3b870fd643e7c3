"""One room at one place: whether it can stand there at all, then whether it can in a concept as it is."""

import threading
from dataclasses import dataclass
from typing import Final

from optimizer.brief import RuleId
from optimizer.concepts.case import Case
from optimizer.concepts.held import BY_ITSELF
from optimizer.concepts.option import Option
from optimizer.concepts.whys.answers import cannot_stand, elsewhere, stands_there
from optimizer.concepts.whys.nearest import Near, moved_to, nearest_beside, nearest_of_any
from optimizer.concepts.whys.nothing import Told
from optimizer.concepts.whys.question import Question
from optimizer.concepts.whys.stands import Stand, in_the_way, least_broken, stands_at, told_of
from optimizer.concepts.whys.trying import Found
from optimizer.concepts.whys.ways_out import Solved, holds_with, solved_by
from optimizer.layout import Layout

ALONE: Final[tuple[RuleId, ...]] = tuple(rule for rule in BY_ITSELF if rule not in {"sun_least", "out_of_view"})
"""Rules that a room breaks at a place whatever else stands: shade and what hides it may come from other rooms."""


@dataclass(frozen=True, slots=True)
class Here:
    """What is known of the place; `is_settled` where nothing that the other rooms may do would change it."""

    is_settled: bool
    said: tuple[str, ...] = ()
    rules: tuple[Told, ...] = ()
    ways: tuple[Solved, ...] = ()


def here(case: Case, question: Question, option: Option | None, *, until: float, stop: threading.Event) -> Here:
    """Try the place with the room alone, then in the concept."""
    at_ft, near = question.at_ft, Near(question.room, question.at_ft or (0.0, 0.0), until)
    assert at_ft is not None
    alone = stands_at(case, Layout(()), question.room, at_ft, rules=ALONE)
    if rules := in_the_way(alone):
        found = _nearest(case, option, near, stop)
        said = cannot_stand(least_broken(alone), None)
        return _told(case, near, found, said, told_of(case, rules), is_settled=True)
    if option is None:
        return Here(is_settled=False)
    stands = stands_at(case, option.layout, question.room, at_ft)
    if rules := in_the_way(stands):
        found = nearest_beside(case, option.layout, near)
        said = cannot_stand(least_broken(stands), option)
        return _told(case, near, found, said, told_of(case, rules), is_settled=False)
    return _fitting(case, question, option, stands)


def _nearest(case: Case, option: Option | None, near: Near, stop: threading.Event) -> Found | None:
    if option is None:
        return nearest_of_any(case, near, stop=stop)
    return nearest_beside(case, option.layout, near)


def moved(case: Case, question: Question, *, until: float, stop: threading.Event) -> tuple[Solved, ...]:
    """A place near by that works, with all rooms free to move; none where none was found."""
    assert question.at_ft is not None
    near = Near(question.room, question.at_ft, until)
    return _held_there(case, near, nearest_of_any(case, near, stop=stop))


def _held_there(case: Case, near: Near, found: Found | None) -> tuple[Solved, ...]:
    change = None if found is None else moved_to(case, near, found)
    if found is None or change is None or not holds_with(case, change, found):
        return ()
    return (solved_by(case, change, found),)


def _told(case: Case, near: Near, found: Found | None, said: str, rules: tuple[Told, ...], *, is_settled: bool) -> Here:
    ways = _held_there(case, near, found)
    placed = None if found is None else found.layout.of(near.room)
    words = () if not ways or placed is None else (elsewhere(case, (placed.x_ft, placed.y_ft), near.room),)
    return Here(is_settled, (said, *words), rules, ways)


def _fitting(case: Case, question: Question, option: Option, stands: tuple[Stand, ...]) -> Here:
    """The best of the stands that break nothing."""
    judged = [(stand, case.judged(stand.layout)) for stand in stands if not stand.findings]
    stand, verdict = min(judged, key=lambda one: one[1].score)
    found = Found(stand.layout, verdict)
    way = solved_by(case, question.asked(case), found)
    return Here(is_settled=True, said=(stands_there(case, stand, found, option),), ways=(way,))
