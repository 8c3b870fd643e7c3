"""What must hold of the wished rooms: names once, one worth, no key of another kind."""

from collections.abc import Iterator, Mapping
from typing import Final

from optimizer.brief import RoomKind
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.names import named_things
from optimizer.scenario.schema import RoomPart, ScenarioPart

_ONLY_IN: Final[Mapping[str, RoomKind]] = {
    "equipment": "kitchen",
    "bar_seats": "kitchen",
    "futures": "reserve",
    "fuel": "fire",
}


def room_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about names and rooms."""
    yield from _repeated_names(scenario)
    for index, room in enumerate(scenario.brief.rooms):
        path: Path = ("brief", "rooms", index)
        yield from _worth(room, path)
        yield from _keys_of_the_kind(room, path)
        yield from _repeated_labels(room, path)


def _repeated_names(scenario: ScenarioPart) -> Iterator[Complaint]:
    """Names given to two things, between which a relation could not tell."""
    seen: set[str] = set()
    for name, path in named_things(scenario):
        if name in seen:
            yield Complaint(
                path, "a name of its own for everything", f"{name!r} a second time", "rename one of the two"
            )
        seen.add(name)


def _worth(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """Refuse a worth of the room where each choice has its own."""
    if room.choices and room.worth is not None:
        advice = "take it away here, or take the choices away"
        yield Complaint((*path, "worth"), "a worth on each choice only", f"one on {room.name} too", advice)


def _keys_of_the_kind(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """No key that says nothing for the room's kind."""
    for key, kind in _ONLY_IN.items():
        if getattr(room, key) and room.kind != kind:
            found = f"it in {room.name}, a {room.kind}"
            yield Complaint((*path, key), f"`{key}` in a {kind} only", found, "take it away or correct the kind")


def _repeated_labels(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """Labels given to two choices of a room."""
    seen: set[str] = set()
    for index, choice in enumerate(room.choices):
        if choice.label in seen:
            place = (*path, "choices", index, "label")
            yield Complaint(place, "a label of its own for each choice", f"{choice.label!r} again", "rename one")
        seen.add(choice.label)
