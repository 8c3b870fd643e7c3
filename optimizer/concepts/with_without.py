"""With and without: for each wished room and each larger size the best that was found with it, and without it."""

from collections.abc import Iterable, Iterator, Sequence

from optimizer.catalogue import SizedChoice, SizedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.option import Option, Side, WithWithout
from optimizer.concepts.reasons import Teller
from optimizer.concepts.walked import trip_words, walked_by_both


def with_and_without(case: Case, shown: Sequence[Option], judged: Iterable[Option]) -> tuple[WithWithout, ...]:
    """One for each wished room that is not required, and for each size of a room but its smallest.

    `shown` are the concepts, `judged` all that was found to hold; a side is None where nothing was found. Without a
    size means: with a smaller one; a room that only has its pad and stubs is not there yet.
    """
    shown_layouts = {option.layout for option in shown}
    options = [*shown, *(option for option in judged if option.layout not in shown_layouts)]
    return tuple(pair for room in case.rooms for pair in _of_room(case, room, options))


def _of_room(case: Case, room: SizedRoom, options: Sequence[Option]) -> Iterator[WithWithout]:
    having = [option for option in options if option.has(room.name)]
    lacking = [option for option in options if not option.has(room.name)]
    if not room.required:
        yield _pair(case, room.name, None, having, lacking)
    for size in _larger(room):
        larger = [option for option in having if _choice_of(option, room).size == size.label]
        smaller = [option for option in having if _choice_of(option, room).area_sqft < size.area_sqft]
        yield _pair(case, room.name, size.label, larger, smaller)


def _pair(case: Case, room: str, size: str | None, have: Sequence[Option], lack: Sequence[Option]) -> WithWithout:
    one, other = (min(options, key=lambda option: option.score, default=None) for options in (have, lack))
    sides = _side(one), _side(other)
    if one is None or other is None:
        return WithWithout(room, size, *sides, changes="")
    walked = walked_by_both(case.scenario.brief, one, other)
    return WithWithout(
        room,
        size,
        *sides,
        changes=Teller(case.scenario, case.book.currency).difference(one.layout, other.layout),
        more_walking_ft=walked.first_ft - walked.second_ft,
        trips_only_with=tuple(trip_words([trip]) for trip in walked.only_first),
        trips_only_without=tuple(trip_words([trip]) for trip in walked.only_second),
    )


def _side(option: Option | None) -> Side | None:
    if option is None:
        return None
    appraisal = option.appraisal
    return Side(option.id or None, appraisal.cost.phase(1), appraisal.worth, appraisal.walking_ft, option.score)


def _larger(room: SizedRoom) -> list[SizedChoice]:
    """Sizes of a room, the smallest left out."""
    least = min(size.area_sqft for size in room.sizes)
    return [size for size in room.sizes if size.area_sqft > least]


def _choice_of(option: Option, room: SizedRoom) -> SizedChoice:
    placed = option.layout.of(room.name)
    choice = None if placed is None else room.choice(placed.choice)
    assert choice is not None
    return choice
