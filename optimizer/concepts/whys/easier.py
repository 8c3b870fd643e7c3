"""Less of what was asked for: another size, fewer hours of sun."""

from collections.abc import Iterator
from typing import Final

from optimizer.catalogue import SizedChoice
from optimizer.concepts.case import Case
from optimizer.concepts.whys.changes import Change, Group
from optimizer.concepts.whys.question import Question, hold_added

_HOURS: Final = (0.8, 0.6, 0.4, 0.2)
"""Shares of the hours that are wished for."""


def easier(case: Case, question: Question) -> Iterator[Group]:
    """A group of changes that ask for less, the most first; none where there is no less."""
    if question.kind == "larger":
        yield tuple(_size(case, question.room, choice.label) for choice in _smaller(case, question))
    if question.kind == "sun":
        yield tuple(_hours(case, question.room, share) for share in _HOURS)


def _smaller(case: Case, question: Question) -> list[SizedChoice]:
    """Smaller choices of the room without any extra to buy, the largest first."""
    room = next(room for room in case.rooms if room.name == question.room)
    asked = next(choice for choice in room.choices if choice.label == question.choice)
    smaller = [size for size in room.sizes if size.area_sqft < asked.area_sqft]
    return sorted(smaller, key=lambda size: -size.area_sqft)


def _size(case: Case, room: str, label: str) -> Change:
    return Change(f"take the {room} as {label}", (hold_added(case, {"room": room, "choice": label}),))


def _hours(case: Case, name: str, share: float) -> Change:
    index, wish = next((i, room.sun) for i, room in enumerate(case.scenario.brief.rooms) if room.name == name)
    assert wish is not None
    hours = round(share * wish.wished_h, 1)
    asked = (("add", f"/brief/rooms/{index}/sun/least", hours), ("add", f"/brief/rooms/{index}/required", True))
    return Change(f"be content with {hours:g} h of {wish.want} for the {name}", asked)
