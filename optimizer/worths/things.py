"""What is asked about: each wished room at each size that has a worth of its own in the file."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from optimizer.brief import Brief, RoomWish
from optimizer.catalogue import rates

Path = tuple[str | int, ...]
ONE_WORTH: Final = ""
"""Size of a room that the catalogue sizes: it has one worth, that of its largest size; smaller ones follow it."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A room at one of its sizes, or at all of them where `size` is empty; `path` is where the scenario's document has
    its worth, in points.
    """

    room: str
    size: str
    worth: float
    path: Path

    @property
    def name(self) -> str:
        """What it is called, and known by."""
        return f"{self.room} ({self.size})" if self.size else self.room


def things_of(brief: Brief) -> tuple[Thing, ...]:
    """All things of a brief, rooms in the order of the file, sizes of one room from least worth to most."""
    return tuple(thing for index, room in enumerate(brief.rooms) for thing in _of_room(index, room))


def _of_room(index: int, room: RoomWish) -> Iterator[Thing]:
    path: Path = ("brief", "rooms", index)
    if not room.choices:
        worth = rates().worth_by_default if room.worth is None else room.worth
        yield Thing(room.name, ONE_WORTH, worth, (*path, "worth"))
    sizes = [
        Thing(room.name, choice.label, choice.worth, (*path, "choices", number, "worth"))
        for number, choice in enumerate(room.choices)
    ]
    yield from sorted(sizes, key=lambda thing: thing.worth)
