"""One room at one place: whether it can stand there at all, then whether it can in a concept as it is."""

import threading
from collections.abc import Callable
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


@dataclass(frozen=True, slots=True)
class Place:
    """What is asked about a place, and how long one may look for another one by the machine's clock."""

    case: Case
    question: Question
    option: Option | None
    until: float
    stop: threading.Event

    @property
    def near(self) -> Near:
        """The room and the corner."""
        assert self.question.at_ft is not None
        return Near(self.question.room, self.question.at_ft, self.until)


def here(place: Place, *, is_barred: Callable[[], bool]) -> Here:
    """Try the place with the room alone, then in the concept; `is_barred` asks the solver of the room alone, since what
    cannot be is said only where it agrees.
    """
    case, option, near = place.case, place.option, place.near
    alone = stands_at(case, Layout(()), near.room, near.at_ft, rules=ALONE)
    if (rules := in_the_way(alone)) and is_barred():
        said = cannot_stand(least_broken(alone), None)
        return _told(case, near, _nearest(place), said, told_of(case, rules), is_settled=True)
    if option is None:
        return Here(is_settled=False)
    stands = stands_at(case, option.layout, near.room, near.at_ft)
    if rules := in_the_way(stands):
        said = cannot_stand(least_broken(stands), option)
        found = nearest_beside(case, option.layout, near)
        return _told(case, near, found, said, told_of(case, rules), is_settled=False)
    return _fitting(case, place.question, option, stands)


def _nearest(place: Place) -> Found | None:
    if place.option is None:
        return nearest_of_any(place.case, place.near, stop=place.stop)
    return nearest_beside(place.case, place.option.layout, place.near)


def moved(place: Place) -> tuple[Solved, ...]:
    """A place near by that works, with all rooms free to move; none where none was found."""
    return _held_there(place.case, place.near, nearest_of_any(place.case, place.near, stop=place.stop))


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
