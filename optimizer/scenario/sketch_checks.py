"""What must hold of sketches, so that they can be measured: names once, rooms of the brief, each in the yard."""

from collections.abc import Iterator
from math import hypot

from shapely import Polygon, box

from optimizer.scenario.complaints import did_you_mean
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.names import room_names
from optimizer.scenario.rings import point_text, ring_fault
from optimizer.scenario.schema import ScenarioPart
from optimizer.scenario.sketch_schema import SketchedRoomPart, SketchPart


def sketch_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about sketches."""
    boundary, known, seen = scenario.site.boundary.corners, room_names(scenario), set[str]()
    yard = None if ring_fault(boundary) else Polygon(boundary)
    for index, sketch in enumerate(scenario.sketches):
        path: Path = ("sketches", index)
        if sketch.name in seen:
            yield Complaint((*path, "name"), "a name of its own for each sketch", repr(sketch.name), "rename one")
        seen.add(sketch.name)
        yield from _rooms(sketch, path, known)
        for place, room in enumerate(sketch.rooms):
            if yard is not None:
                yield from _in_the_yard(room, (*path, "rooms", place), yard)


def _rooms(sketch: SketchPart, path: Path, known: frozenset[str]) -> Iterator[Complaint]:
    """Rooms that the brief does not know, and rooms that are drawn twice."""
    drawn: set[str] = set()
    for index, room in enumerate(sketch.rooms):
        place = (*path, "rooms", index, "room")
        if room.room not in known:
            advice = did_you_mean(room.room, known, "name a room of the brief")
            yield Complaint(place, "the name of a room", repr(room.room), advice)
        if room.room in drawn:
            yield Complaint(place, "each room once", f"{room.room!r} a second time", "take one of the two away")
        drawn.add(room.room)


def _in_the_yard(room: SketchedRoomPart, path: Path, yard: Polygon) -> Iterator[Complaint]:
    """Rooms that are longer than the yard, or of which nothing lies in it."""
    left, low, right, top = yard.bounds
    for key in ("width", "depth"):
        length_ft, most_ft = getattr(room, key), hypot(right - left, top - low)
        if length_ft > most_ft:
            found = f"{length_ft:,.0f} ft in a yard of {most_ft:,.0f} ft from corner to corner"
            yield Complaint((*path, key), "a size that the yard can hold", found, "check the digits and the unit")
            return
    x, y = room.at
    if not yard.intersection(box(x, y, x + room.width, y + room.depth)).area > 0:
        found = f"{room.room} at {point_text(room.at)} ft, wholly outside"
        yield Complaint((*path, "at"), "a room in the yard", found, "check the digits and the unit")
