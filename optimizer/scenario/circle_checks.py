"""What must hold of rooms that are circles: as wide as deep, no edge that touches or grows, neither roof nor screen."""

from collections.abc import Iterator
from typing import Final

from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.schema import BriefPart, RoomPart, ScenarioPart
from optimizer.scenario.sketch_schema import SketchedRoomPart

_EVEN_FT: Final = 1e-6
_WHY_NOT: Final = {
    "grow": "a circle has no edge to put on a line",
    "cover": "no fire stands under a roof",
    "screen": "a screen stands along straight sides",
}
"""Keys that say nothing of a circle."""


def circle_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about circles: in the wishes, in the relations, and in sketches."""
    circles = {room.name for room in scenario.brief.rooms if room.shape == "circle"}
    for index, room in enumerate(scenario.brief.rooms):
        if room.name in circles:
            yield from _of_wish(room, ("brief", "rooms", index))
    yield from _touching(scenario.brief, circles)
    for number, sketch in enumerate(scenario.sketches):
        for place, drawn in enumerate(sketch.rooms):
            if drawn.room in circles:
                yield from _uneven(drawn, ("sketches", number, "rooms", place))


def _of_wish(room: RoomPart, path: Path) -> Iterator[Complaint]:
    for key, why in _WHY_NOT.items():
        if getattr(room, key):
            advice = f"take it away: {why}"
            yield Complaint((*path, key), f"no `{key}` in a circle", f"it in {room.name}", advice)
    for index, choice in enumerate(room.choices):
        if choice.width is not None and choice.depth is not None and abs(choice.width - choice.depth) > _EVEN_FT:
            found = f"{choice.width:.4g} by {choice.depth:.4g} ft in {choice.label!r}"
            yield _not_across(found, (*path, "choices", index, "depth"))


def _uneven(drawn: SketchedRoomPart, path: Path) -> Iterator[Complaint]:
    if abs(drawn.width - drawn.depth) > _EVEN_FT:
        yield _not_across(f"{drawn.width:.4g} by {drawn.depth:.4g} ft", (*path, "depth"))


def _not_across(found: str, path: Path) -> Complaint:
    advice = "give the distance across the circle twice, or take `shape: circle` away"
    return Complaint(path, "a width and a depth that are equal in a circle", found, advice)


def _touching(brief: BriefPart, circles: set[str]) -> Iterator[Complaint]:
    """Relations that would have a circle share an edge."""
    for index, relation in enumerate(brief.relations):
        if relation.kind == "touching":
            for name in (name for name in relation.between if name in circles):
                advice = "use kind: near with a small `within`, or take `shape: circle` away"
                path: Path = ("brief", "relations", index, "kind")
                yield Complaint(path, "edges that can touch", f"{name}, a circle, which has none", advice)
