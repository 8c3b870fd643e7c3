"""What a result says of rooms left out, and of with and without, told again by the concepts that it shows.

What was found and is not shown cannot be told again: of it only what the shown concepts contradict is named.
"""

from collections.abc import Iterator, Sequence
from typing import Final

from optimizer.concepts.case import Case
from optimizer.concepts.option import NOT_ASKED, LeftOut, Option, Side, WithWithout
from optimizer.concepts.whys.left_out import NOT_FOUND, NOT_SHOWN, explained
from optimizer.concepts.with_without import with_and_without
from optimizer.engine.problem import Problem

_EVEN: Final = 0.01


def left_out_again(case: Case, problem: Problem, concepts: Sequence[Option]) -> Iterator[str]:
    """Rooms of which it is not so why they are left out."""
    for option, fresh in zip(concepts, explained(case, problem, concepts, ()), strict=True):
        told = {left.room: left for left in fresh.left_out}
        for left in option.left_out:
            if (found := told.get(left.room)) is None or not _is_so(left, found):
                yield f"{option.id}: why the {left.room} is left out is not so: {left.why!r}"


def _is_so(left: LeftOut, found: LeftOut) -> bool:
    if left.why == NOT_ASKED or left == found:
        return True
    return found.why.endswith(NOT_FOUND) and NOT_SHOWN in left.why


def with_without_again(case: Case, concepts: Sequence[Option], pairs: Sequence[WithWithout]) -> Iterator[str]:
    """Sides that a shown concept would fill better, pairs that there are not, and those that are missing."""
    found = {(pair.room, pair.size): pair for pair in with_and_without(case, concepts, ())}
    told = {(pair.room, pair.size): pair for pair in pairs}
    if pairs and (len(told) != len(pairs) or told.keys() != found.keys()):
        yield "with_without does not have each wished room and each larger size once"
    for key, pair in told.items():
        if key in found:
            yield from _of_pair(pair, found[key])


def _of_pair(told: WithWithout, found: WithWithout) -> Iterator[str]:
    name = told.room if told.size is None else f"{told.room} as {told.size}"
    for key in ("with_it", "without_it"):
        if (words := _of_side(getattr(told, key), getattr(found, key))) is not None:
            yield f"with_without of {name}: {key} {words}"
    are_shown = all(side is None or side.concept is not None for side in (told.with_it, told.without_it))
    if not are_shown:
        return
    if told.changes != found.changes:
        yield f"with_without of {name}: the changes are not those between its concepts"
    if not _walks_as(told, found):
        yield f"with_without of {name}: the walking is not that of the trips that both of its concepts have"


def _walks_as(told: WithWithout, found: WithWithout) -> bool:
    """Whether a pair has the walking and the trips that are found; one of before they were told has none."""
    if told.more_walking_ft is None or found.more_walking_ft is None:
        return told.more_walking_ft is None and not (told.trips_only_with or told.trips_only_without)
    of_trips = (told.trips_only_with, told.trips_only_without) == (found.trips_only_with, found.trips_only_without)
    return of_trips and abs(told.more_walking_ft - found.more_walking_ft) <= _EVEN


def _of_side(told: Side | None, shown: Side | None) -> str | None:
    """What is not so of a side, by the best shown concept that would fill it."""
    if told is None:
        return None if shown is None else f"is empty, and {shown.concept} would fill it"
    if shown is not None and told.score > shown.score + _EVEN:
        return f"is worse than {shown.concept}"
    if told.concept is None:
        return None
    if shown is None or told.concept != shown.concept:
        return f"is not {told.concept}"
    return None if _has_figures_of(told, shown) else f"is not as {told.concept}"


def _has_figures_of(told: Side, shown: Side) -> bool:
    """Whether a side has the figures of the concept that it names, the cost to the cent."""
    pairs = ((told.worth, shown.worth), (told.walking_ft, shown.walking_ft), (told.score, shown.score))
    return told.cost == shown.cost and all(abs(one - other) <= _EVEN for one, other in pairs)
