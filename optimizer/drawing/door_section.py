"""A small section at the main garden door: floor, landing, steps, and the room or ground that one steps onto."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from optimizer.brief import Brief
from optimizer.drawing.inset import Inset, moved_mark
from optimizer.drawing.level_marks import triangle
from optimizer.drawing.marks import TYPE_FT, Area, Line, Mark, Text
from optimizer.drawing.outlines import moved, ring_of_box
from optimizer.drawing.section_parts import SLAB_FT, Cut
from optimizer.drawing.words import Units, length_text, level_text, short_name
from optimizer.fields import BUILT_UP_FT, LANDING_FT, TREAD_FT, ground_of, risers, stepped_out_ft
from optimizer.fields.terraces import garden_doors
from optimizer.layout import Layout, footprint
from optimizer.site import Building, Door, Point, Site

_INSIDE_FT: Final = 3.0
_OUTSIDE_FT: Final = 15.0
_DOOR_FT: Final = 3.0  # of the door's height are drawn, no more
_EARTH_FT: Final = 1.2
_ENLARGED: Final = 2.0  # against the plan: a riser is no wider than a line there
_STEP_FT: Final = 0.5
_ABOVE_FT: Final = 3.2  # over the drawing, for its two lines of words


@dataclass(frozen=True, slots=True)
class _Landing:
    """Heights at a door [ft above the datum], how many risers lie between them, and what one steps onto."""

    floor_ft: float
    foot_ft: float
    risers: int
    room: str | None

    @property
    def end_ft(self) -> float:
        """How far the lowest riser stands off the wall."""
        return stepped_out_ft(self.risers)

    def words(self, door: str, units: Units) -> tuple[str, str]:
        """Two lines: where it is, and what it shows."""
        onto = f"{short_name(self.room) if self.room else 'ground'} {level_text(self.foot_ft, units)}"
        each = length_text((self.floor_ft - self.foot_ft) / self.risers, units) if self.risers else ""
        steps = f"{self.risers} risers of {each}" if self.risers else "no step"
        return (
            f"Section at the {short_name(door)}, at twice the scale of the plan",
            f"floor {level_text(self.floor_ft, units)}, {steps}, {onto}",
        )


def door_section(
    site: Site, brief: Brief, layout: Layout, levels: Mapping[str, float], *, units: Units, scale: float
) -> Inset | None:
    """The section, lower left corner at (0, 0); None without a used door, its floor, or levels of the ground."""
    door = next(iter(garden_doors(site, brief)), None)
    building = next((b for b in site.buildings if door in b.doors), None)
    if door is None or building is None or building.floor_z_ft is None or not ground_of(site).is_known:
        return None
    cut = Cut(site, door.at, moved(door.at, door.outward, _OUTSIDE_FT))
    landing = _landing(cut, building, door, layout, levels)
    marks = tuple(_marks(cut, landing, layout, levels))
    lowest = min(z for mark in marks for _, z in _points(mark))
    factor = _ENLARGED

    def placed(point: Point) -> Point:
        return (factor * (point[0] + _INSIDE_FT), factor * (point[1] - lowest))

    height = placed((0.0, landing.floor_ft + _DOOR_FT))[1]
    size = TYPE_FT * scale
    rows = ((_ABOVE_FT - 0.8 - 1.35 * row) * scale for row in range(2))
    texts = [
        Text("legend", (0.0, height + up), line, size, anchor="start")
        for up, line in zip(rows, landing.words(door.name, units), strict=True)
    ]
    heights = [triangle(_above(placed((at, z)), size), size) for at, z in _shown(landing)]
    drawn = (*(moved_mark(mark, placed) for mark in marks), *heights)
    return Inset(drawn, tuple(texts), factor * (_INSIDE_FT + _OUTSIDE_FT), height + _ABOVE_FT * scale)


def _landing(cut: Cut, building: Building, door: Door, layout: Layout, levels: Mapping[str, float]) -> _Landing:
    assert building.floor_z_ft is not None
    count = risers(cut.site, building, door)
    end_ft = stepped_out_ft(count)
    met = [room for start, _, room in _rooms(cut, layout, levels) if start <= end_ft + BUILT_UP_FT]
    foot_ft = levels[met[0]] if met else cut.ground(end_ft)[0]
    return _Landing(building.floor_z_ft, foot_ft, count, met[0] if met else None)


def _rooms(cut: Cut, layout: Layout, levels: Mapping[str, float]) -> list[tuple[float, float, str]]:
    """Start, end and name of the paved rooms along the section."""
    paved = [place for place in layout.placements if place.room in levels]
    return sorted((*span, place.room) for place in paved for span in cut.spans(footprint(place)))


def _marks(cut: Cut, landing: _Landing, layout: Layout, levels: Mapping[str, float]) -> Iterator[Mark]:
    """In feet out from the wall, and above the datum."""
    floor, end = landing.floor_ft, landing.end_ft
    along = [*np.arange(0.0, _OUTSIDE_FT, _STEP_FT), _OUTSIDE_FT]
    ground = tuple(zip(map(float, along), cut.ground(*along), strict=True))
    depth = min(floor, landing.foot_ft, *(z for _, z in ground)) - _EARTH_FT
    # What one steps onto is built up to the lowest tread.
    rooms = [(min(a, end) if r == landing.room else a, b, r) for a, b, r in _rooms(cut, layout, levels)]
    beyond = tuple((s, next((levels[r] for a, b, r in rooms if a <= s <= b), z)) for s, z in ground if s >= end)
    stairs = tuple(_stairs(landing))
    surface = ((0.0, floor), *stairs, *beyond)
    yield Area("section_earth", ((*surface, (_OUTSIDE_FT, depth), (0.0, depth)),))
    yield Area(
        "section_room", (((0.0, floor), *stairs, (end, landing.foot_ft - SLAB_FT), (0.0, landing.foot_ft - SLAB_FT)),)
    )
    for start, stop, room in rooms:
        if start >= end - BUILT_UP_FT:
            yield Area("section_room", (ring_of_box((start, levels[room] - SLAB_FT, stop, levels[room])),))
    yield Line("section_ground", ground)
    yield Area("section_building", (ring_of_box((-_INSIDE_FT, depth, 0.0, floor)),))
    yield Line("door", ((0.0, floor), (0.0, floor + _DOOR_FT)))


def _stairs(landing: _Landing) -> Iterator[Point]:
    """Edges of landing and treads, from the landing's end down."""
    count = max(1, landing.risers)
    rise = (landing.floor_ft - landing.foot_ft) / count
    for step in range(count):
        at = LANDING_FT + step * TREAD_FT
        yield at, landing.floor_ft - step * rise
        yield at, landing.floor_ft - (step + 1) * rise


def _shown(landing: _Landing) -> tuple[Point, Point]:
    """Where the two heights are marked."""
    return (-_INSIDE_FT / 2, landing.floor_ft), (landing.end_ft + 1.0, landing.foot_ft)


def _above(at: Point, size_ft: float) -> Point:
    return (at[0], at[1] + 0.4 * size_ft)


def _points(mark: Mark) -> tuple[Point, ...]:
    if isinstance(mark, Area):
        return mark.rings[0]
    return mark.points if isinstance(mark, Line) else (mark.centre,)
