"""What must hold of the wished rooms: names once, one worth, no key of another kind."""

from collections.abc import Iterator, Mapping
from itertools import product
from math import hypot
from typing import Final

from optimizer.brief import RoomKind
from optimizer.catalogue import comes_later, ground_sqft, kind_rules
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.names import named_things
from optimizer.scenario.pool_checks import pool_complaints
from optimizer.scenario.schema import ChoicePart, RoomPart, ScenarioPart

_ONLY_IN: Final[Mapping[str, RoomKind]] = {
    "equipment": "kitchen",
    "bar_seats": "kitchen",
    "futures": "reserve",
    "interim": "reserve",
    "water": "pool",
    "deck": "pool",
    "fuel": "fire",
    "shape": "fire",
}

_SEAT_SQFT: Final = 4.0
"""A chair and the feet of who sits on it, the least that a seat can take; common practice, no source."""


def room_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about names and rooms."""
    yield from _repeated_names(scenario)
    xs, ys = zip(*scenario.site.boundary.corners, strict=True)
    yard_ft = hypot(max(xs) - min(xs), max(ys) - min(ys))
    for index, room in enumerate(scenario.brief.rooms):
        path: Path = ("brief", "rooms", index)
        yield from _worth(room, path)
        yield from _keys_of_the_kind(room, path)
        yield from _grows_in_vain(room, path)
        yield from _equipped_twice(room, path)
        yield from _interim(room, path, scenario)
        yield from _waits(room, path)
        yield from _labels(room, path)
        yield from _sizes(room, path, yard_ft)
        yield from pool_complaints(room, path)


def _interim(room: RoomPart, path: Path, scenario: ScenarioPart) -> Iterator[Complaint]:
    """Refuse an interim use of ground that is built on at once, and the ground of a nook where none is wished."""
    if room.interim is not None and room.kind == "reserve" and room.phase == 1:
        advice = "give the room a later `phase`, or take `interim` away"
        yield Complaint((*path, "interim"), "a reserve of a later phase", f"{room.name} in phase 1", advice)
    elif room.interim == "nook" and all(other.kind != "nook" for other in scenario.brief.rooms):
        yield Complaint((*path, "interim"), "a nook in the brief", "none", "write lawn or gravel court, or wish a nook")


def _waits(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """Refuse an open phase where the phase is given, and of ground that is held for later anyway."""
    if room.may_wait and (room.phase > 1 or room.kind == "reserve"):
        expected = "`may_wait` only in a room of phase 1 that is no reserve"
        found = f"it in {room.name}, a {room.kind} of phase {room.phase}"
        yield Complaint((*path, "may_wait"), expected, found, "take it away, or take `phase` away")


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
    """No key that says nothing for the room's kind, in the room or in one of its choices."""
    parts = [(room, path), *((choice, (*path, "choices", n)) for n, choice in enumerate(room.choices))]
    for (part, place), (key, kind) in product(parts, _ONLY_IN.items()):
        if getattr(part, key, None) and room.kind != kind:
            found = f"it in {room.name}, a {room.kind}"
            yield Complaint((*place, key), f"`{key}` in a {kind} only", found, "take it away or correct the kind")


def _grows_in_vain(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """Refuse growth of what never grows: ground held for later, and a shed."""
    if room.grow and not kind_rules(room.kind).grows:
        found = f"{room.grow:g} in {room.name}, a {room.kind}"
        yield Complaint((*path, "grow"), f"no `grow` in a {room.kind}, which keeps its size", found, "take it away")


def _equipped_twice(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """Refuse equipment of the room where each choice has its own."""
    for key in ("equipment", "bar_seats"):
        if getattr(room, key) and any(choice.equipment for choice in room.choices):
            advice = "take it away here, or from the choices"
            yield Complaint((*path, key), f"`{key}` in each choice only", f"it in {room.name} too", advice)


def _labels(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """Labels given to two choices of a room, and those by which a room that comes later is known."""
    seen: set[str] = set()
    for index, choice in enumerate(room.choices):
        place = (*path, "choices", index, "label")
        if comes_later(choice.label):
            found = f"{choice.label!r}, which says of a room that it comes later"
            yield Complaint(place, "a label of your own", found, "rename it")
        if choice.label in seen:
            yield Complaint(place, "a label of its own for each choice", f"{choice.label!r} again", "rename one")
        seen.add(choice.label)


def _unsized(choice: ChoicePart, path: Path) -> Iterator[Complaint]:
    """Refuse a choice with half a size, or with none and nothing that it could be sized from."""
    missing = "width" if choice.width is None else "depth"
    is_half = (choice.width is None) != (choice.depth is None)
    if is_half or not (choice.equipment or choice.water):
        found = f"no {missing} in {choice.label!r}"
        yield Complaint((*path, "label"), "a width and a depth in each choice", found, f"add `{missing}`")


def _sizes(room: RoomPart, path: Path, yard_ft: float) -> Iterator[Complaint]:
    """Choices longer than the yard, and choices whose seats could not even be set down in them."""
    for index, choice in enumerate(room.choices):
        place = (*path, "choices", index)
        if choice.width is None or choice.depth is None:
            yield from _unsized(choice, place)
            continue
        longest = max(choice.width, choice.depth)
        if longest > yard_ft:
            key = "width" if choice.width == longest else "depth"
            found = f"{longest:,.0f} ft in a yard of {yard_ft:,.0f} ft from corner to corner"
            yield Complaint((*place, key), "a size that the yard can hold", found, "check the digits and the unit")
        ground = ground_sqft(room.shape or "rectangle", choice.width, choice.depth)
        if choice.seats * _SEAT_SQFT > ground:
            found = f"{choice.seats} seats on {ground:.3g} sq ft"
            advice = "give fewer seats, or a larger size"
            yield Complaint((*place, "seats"), f"at least {_SEAT_SQFT:g} sq ft for each seat", found, advice)
