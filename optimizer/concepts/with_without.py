"""With and without: for each wished room and each larger size the best that was found with it, and without it."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from optimizer.catalogue import COVERED, SCREENED, SizedChoice, SizedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.option import Option, Side, WithWithout
from optimizer.concepts.reasons import Teller

_EXTRAS: Final = (COVERED, SCREENED)


def with_and_without(case: Case, shown: Sequence[Option], judged: Iterable[Option]) -> tuple[WithWithout, ...]:
    """One for each wished room that is not required, and for each size of a room but its smallest.

    `shown` are the concepts, `judged` all that was found to hold; a side is None where nothing was found. Without a
    size means: with a smaller one.
    """
    shown_layouts = {option.layout for option in shown}
    options = [*shown, *(option for option in judged if option.layout not in shown_layouts)]
    return tuple(pair for room in case.rooms for pair in _of_room(case, room, options))


def _of_room(case: Case, room: SizedRoom, options: Sequence[Option]) -> Iterator[WithWithout]:
    having = [option for option in options if option.layout.of(room.name) is not None]
    lacking = [option for option in options if option.layout.of(room.name) is None]
    if not room.required:
        yield _pair(case, room.name, None, having, lacking)
    for size in _larger(room):
        larger = [option for option in having if _size_of(option, room) == size.label]
        smaller = [option for option in having if _area(room, _size_of(option, room)) < _area(room, size.label)]
        yield _pair(case, room.name, size.label, larger, smaller)


def _pair(case: Case, room: str, size: str | None, have: Sequence[Option], lack: Sequence[Option]) -> WithWithout:
    one, other = (min(options, key=lambda option: option.score, default=None) for options in (have, lack))
    changes = ""
    if one is not None and other is not None:
        changes = Teller(case.scenario, case.book.currency).difference(one.layout, other.layout)
    return WithWithout(room, size, _side(one), _side(other), changes)


def _side(option: Option | None) -> Side | None:
    if option is None:
        return None
    appraisal = option.appraisal
    return Side(option.id or None, appraisal.cost.phase(1), appraisal.worth, appraisal.walking_ft, option.score)


def _larger(room: SizedRoom) -> list[SizedChoice]:
    """Sizes of a room without what is bought to them, the smallest left out."""
    plain = [choice for choice in room.choices if choice.label == _plain(choice.label)]
    least = min(_area(room, choice.label) for choice in plain)
    return [choice for choice in plain if _area(room, choice.label) > least]


def _size_of(option: Option, room: SizedRoom) -> str:
    placed = option.layout.of(room.name)
    assert placed is not None
    return _plain(placed.choice)


def _plain(label: str) -> str:
    for extra in _EXTRAS:
        label = label.replace(extra, "")
    return label


def _area(room: SizedRoom, label: str) -> float:
    choice = room.choice(label)
    return 0.0 if choice is None else choice.width_ft * choice.depth_ft
