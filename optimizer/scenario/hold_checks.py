"""What must hold of holds: a room that exists, something held, areas in the yard, no two that contradict."""

from collections.abc import Iterator
from itertools import combinations_with_replacement
from typing import Final

from shapely import Point, Polygon

from optimizer.scenario.complaints import did_you_mean
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.hold_schema import HoldPart
from optimizer.scenario.names import room_names
from optimizer.scenario.rings import point_text, ring_fault
from optimizer.scenario.schema import ScenarioPart

_KEYS: Final = ("at", "within", "not_in", "front", "choice")
_AREAS: Final = ("within", "not_in")
_TOUCHES_FT: Final = 0.02
_LEAST_SQFT: Final = 0.01


def hold_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about holds."""
    boundary, rooms = scenario.site.boundary.corners, room_names(scenario)
    broken = ring_fault(boundary) is not None
    sound: list[tuple[Path, HoldPart]] = []
    for index, hold in enumerate(scenario.brief.holds):
        path: Path = ("brief", "holds", index)
        faults = [*_keys(hold, path, rooms), *_outlines(hold, path)]
        faults += () if faults or broken else _in_the_yard(hold, path, Polygon(boundary))
        yield from faults
        if not faults:
            sound.append((path, hold))
    for (_, first), (path, second) in combinations_with_replacement(sound, 2):
        if first.room == second.room:
            yield from _contradictions(first, second, path)


def _keys(hold: HoldPart, path: Path, rooms: frozenset[str]) -> Iterator[Complaint]:
    """Holds of no room, of nothing, or of a place and an area at once."""
    if hold.room not in rooms:
        advice = did_you_mean(hold.room, rooms, "name a room of the brief")
        yield Complaint((*path, "room"), "the name of a room", repr(hold.room), advice)
    if all(getattr(hold, key) is None for key in _KEYS):
        yield Complaint((*path, "room"), f"one of the keys {', '.join(_KEYS)}", "the room alone", "say what is held")
    for key in _AREAS:
        if hold.at is not None and getattr(hold, key) is not None:
            advice = "take one of the two away: the place says it all"
            yield Complaint((*path, key), "`at` or an area, not both", f"`at` and `{key}`", advice)


def _outlines(hold: HoldPart, path: Path) -> Iterator[Complaint]:
    """Areas whose corners go round no ground."""
    for key in _AREAS:
        ring = getattr(hold, key)
        if ring is not None and (fault := ring_fault(ring)):
            advice = "list the corners in order round the area, each once"
            yield Complaint((*path, key), "an outline that goes round some ground once", fault, advice)


def _in_the_yard(hold: HoldPart, path: Path, yard: Polygon) -> Iterator[Complaint]:
    """Places outside the yard, and areas of which nothing lies in it."""
    if hold.at is not None and yard.distance(Point(hold.at)) > _TOUCHES_FT:
        found = f"{point_text(hold.at)} ft, outside"
        yield Complaint((*path, "at"), "a corner inside the boundary", found, "check the digits and the unit")
    if hold.within is not None and not _meet(Polygon(hold.within), yard):
        advice = "check the digits and the unit"
        yield Complaint((*path, "within"), "an area inside the boundary", "one wholly outside", advice)


def _contradictions(first: HoldPart, second: HoldPart, path: Path) -> Iterator[Complaint]:
    """What two holds of one room say that cannot be so at once."""
    advice = "drop one of the two, or change it"
    for key in ("at", "front", "choice"):
        one, other = getattr(first, key), getattr(second, key)
        if None not in (one, other) and one != other:
            found = f"{_words(other)} after {_words(one)}"
            yield Complaint((*path, key), f"one `{key}` for {second.room}", found, advice)
    for holds in ((first, second), (second, first)):
        if fault := _shut_out(*holds):
            key = next(key for key in _KEYS if getattr(second, key) is not None)
            yield Complaint((*path, key), f"holds of {second.room} that can be kept together", fault, advice)
            return


def _shut_out(first: HoldPart, second: HoldPart) -> str | None:
    """Say how an area of the second hold rules out what the first one asks for."""
    area = None if second.within is None else Polygon(second.within)
    kept_out = None if second.not_in is None else Polygon(second.not_in)
    if first.at is not None:
        if area is not None and area.distance(Point(first.at)) > _TOUCHES_FT:
            return f"the place {point_text(first.at)} ft outside the area of `within`"
        if kept_out is not None and Point(first.at).within(kept_out.buffer(-_TOUCHES_FT)):
            return f"the place {point_text(first.at)} ft inside the area of `not_in`"
    if first.within is not None:
        wanted = Polygon(first.within)
        if area is not None and not _meet(wanted, area):
            return "two areas of `within` that share no ground"
        if kept_out is not None and wanted.difference(kept_out).area < _LEAST_SQFT:
            return "an area of `within` that lies in one of `not_in`"
    return None


def _meet(one: Polygon, other: Polygon) -> bool:
    return bool(one.intersection(other).area > _LEAST_SQFT)


def _words(value: object) -> str:
    return f"{point_text(value)} ft" if isinstance(value, tuple) else repr(value)
