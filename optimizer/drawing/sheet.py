"""What stands below the plan: title, scale bar, north arrow, legend, cautions."""

import textwrap
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, cos, radians, sin
from typing import Final

from optimizer.drawing.inset import Inset
from optimizer.drawing.level_marks import ROLE as LEVEL_ROLE
from optimizer.drawing.level_marks import triangle
from optimizer.drawing.marks import Area, Box, Circle, Line, Mark, Text
from optimizer.drawing.notable_marks import FOCAL_ROLE, PINCH_ROLE, swatch
from optimizer.drawing.outlines import moved, ring_of_box
from optimizer.drawing.paving_marks import PAVING_WORDS
from optimizer.drawing.sheet_size import TYPE_SHARE
from optimizer.drawing.wall_marks import WALL_WORDS
from optimizer.drawing.words import FT_IN_M, Units
from optimizer.site import Point

CAUTION: Final = (
    "Concept sketch, not for construction. Gas, electricity, structure, drainage and water barriers:"
    " licensed professionals and local codes decide."
)
TITLE_FT, PLACE_FT, NOTE_FT, LEGEND_FT = 1.9, 1.0, 0.8, 0.8
LEGEND_COLUMN_FT = 16.2
_LETTER = 0.55  # mean width of a letter in a line of text, as a share of its size
LEGEND_WORDS: Final[dict[str, str]] = {
    "room.gathering": "gathering",
    "room.kitchen": "outdoor kitchen",
    "room.kitchen.later": "pad of a later kitchen",
    "room.fire": "fire",
    "room.nook": "nook",
    "room.pool": "pool deck",
    "furniture.water": "water",
    "pool_barrier": "pool barrier, closed",
    "pool_pad": "pool equipment",
    "room.reserve": "kept free for later",
    "room.reserve.gravel court": "gravel until later",
    "room.reserve.nook": "nook's ground until later",
    "room.arrival": "arrival",
    "room.lawn": "lawn",
    "room.bed": "planting bed",
    "room.storage": "storage",
    "room.play": "play",
    "furniture.seat wall": "seat wall",
    "furniture.bench": "bench",
    "path": "paved way",
    "door_zone": "landing and steps",
    "ground": "open ground",
    "grass": "grass",
    "bed": "planted",
    "mulch": "mulch, no digging",
    "bank": "bank, planted or left",
    **PAVING_WORDS,
    "keep_out": "keep-out",
    "setback": "setback for paving",
    **WALL_WORDS,
    "crown": "kept tree, crown",
    "root_zone": "root zone",
    "roof": "roof over",
    "new_roof": "new shade structure",
    "screen": "screen panel",
    "held": "held by you",
    "riser": "steps, one line per riser",
    "focal_point": "most ways meet here",
    "pinch": "narrowest place for a party",
    "utility": "Gas, Electric, Water, Drain",
    "level_mark": "level above the datum",
}

LINE_ROLES: Final = (
    "contour",
    "contour_strong",
    *WALL_WORDS,
    "pool_barrier",
    "future_barrier",
    "buried_line",
    "missed",
    "screen",
    "riser",
    "sun_ray",
    "section_fence",
    "section_boundary",
    "section_ground",
)
"""Roles that the legend shows as a line."""


@dataclass(frozen=True, slots=True)
class SheetStrip:
    """The marks and texts below the plan, and the bounds of the whole sheet."""

    marks: tuple[Mark, ...]
    texts: tuple[Text, ...]
    sheet_box: Box


def sheet_strip(
    plan_box: Box,
    words: Mapping[str, str],
    *,
    heading: tuple[str, str],
    cautions: Sequence[str],
    north_deg: float | None,
    units: Units,
    scale: float,
) -> SheetStrip:
    """Strip for a plan; `words` is its legend by role, `heading` its title and place.

    `north_deg` is the compass bearing of the plan's +y; None for a drawing that is no plan.
    """
    spare = max(0.0, scale / TYPE_SHARE - (plan_box[2] - plan_box[0])) / 2
    left, right, top = plan_box[0] - spare, plan_box[2] + spare, plan_box[1]
    edge, pad = (left + 2 * scale, right - 2 * scale), 2.0 * scale
    arrow, letters = (
        ((), ()) if north_deg is None else north_arrow((edge[1] - 3 * scale, top - 4.8 * scale), north_deg, 2.6 * scale)
    )
    bar, figures = scale_bar((edge[1] - 9 * scale, top - 4.8 * scale), units, scale)
    head_ft = figures[0].at[0] - 3 * scale - edge[0]
    head = _lines("title", [heading[0]], (edge[0], top - pad), TITLE_FT * scale, head_ft)
    place_line = _lines("place", [heading[1]], (edge[0], _foot(head, top) + 0.4 * scale), PLACE_FT * scale, head_ft)
    head_foot = min(_foot(place_line, top) - scale, top - 9.2 * scale)
    swatches, meanings, foot = legend(words, edge, head_foot, scale)
    notes = _lines("note", [CAUTION, *cautions], (edge[0], foot - scale), NOTE_FT * scale, edge[1] - edge[0])
    bottom = _foot(notes, foot) - pad / 2
    rule = Line("rule", ((edge[0], top - 0.4 * scale), (edge[1], top - 0.4 * scale)))
    texts = (*head, *place_line, *letters, *figures, *meanings, *notes)
    return SheetStrip((rule, *arrow, *bar, *swatches), texts, (left, bottom, right, plan_box[3]))


def with_inset(strip: SheetStrip, inset: Inset | None, scale: float) -> SheetStrip:
    """The strip with a small drawing below its last line."""
    if inset is None:
        return strip
    left, bottom, right, top = strip.sheet_box
    pad = 2.0 * scale
    there = inset.set_at((left + pad, bottom - inset.height_ft))
    box = (left, bottom - inset.height_ft - pad, max(right, left + inset.width_ft + 2 * pad), top)
    return SheetStrip((*strip.marks, *there.marks), (*strip.texts, *there.texts), box)


def words_in_use(words: Mapping[str, str], marks: Iterable[Mark]) -> dict[str, str]:
    """Words of the legend whose role a drawing has."""
    used = {mark.role for mark in marks}
    return {role: meaning for role, meaning in words.items() if role in used}


def north_arrow(centre: Point, plan_up_deg: float, radius_ft: float) -> tuple[tuple[Mark, ...], tuple[Text, ...]]:
    """Draw a needle to true north in a ring; `plan_up_deg` is the compass bearing of the plan's +y."""
    turn = radians(plan_up_deg)
    north, east = (-sin(turn), cos(turn)), (cos(turn), sin(turn))
    tip, tail = moved(centre, north, radius_ft), moved(centre, north, -0.75 * radius_ft)
    half = tuple(moved(tail, east, side * 0.32 * radius_ft) for side in (-1, 1))
    notch = moved(centre, north, -0.4 * radius_ft)
    marks = (
        Circle("north_ring", centre, radius_ft),
        Area("north_light", ((tip, half[0], notch),)),
        Area("north_dark", ((tip, notch, half[1]),)),
    )
    return marks, (Text("north", moved(centre, north, 1.3 * radius_ft), "N", 0.45 * radius_ft),)


def scale_bar(end: Point, units: Units, scale: float) -> tuple[tuple[Mark, ...], tuple[Text, ...]]:
    """Draw a bar of four equal parts up to a point, 20 ft or 6 m long, longer on large sheets."""
    part = (5.0 if units == "ft" else 1.5) * max(1, round(scale))
    unit_ft, (x, y) = (1.0 if units == "ft" else 1 / FT_IN_M), end
    ends = [x - part * unit_ft * step for step in (4, 3, 2, 1, 0)]
    marks = tuple(
        Area("bar_dark" if step % 2 == 0 else "bar_light", (ring_of_box((ends[step], y, ends[step + 1], y + 0.5)),))
        for step in range(4)
    )
    words = [f"{part * step:g}" for step in range(4)] + [f"{part * 4:g} {units}"]
    figures = zip(ends, words, strict=True)
    return marks, tuple(Text("scale", (at, y - 0.9 * scale), word, 0.8 * scale) for at, word in figures)


def legend(
    words: Mapping[str, str], edge: tuple[float, float], top: float, scale: float
) -> tuple[tuple[Mark, ...], tuple[Text, ...], float]:
    """Swatches and words of roles, column by column, and the height at which they end."""
    columns = max(1, int((edge[1] - edge[0]) / (LEGEND_COLUMN_FT * scale)))
    rows = ceil(len(words) / columns)
    step, marks, texts = 1.6 * scale, [], []
    for index, (role, meaning) in enumerate(words.items()):
        column, row = divmod(index, rows)
        x, y = edge[0] + column * (edge[1] - edge[0]) / columns, top - row * step
        marks.append(_swatch(role, (x, y - 1.1 * scale, x + 2.2 * scale, y)))
        texts.append(Text("legend", (x + 2.7 * scale, y - 0.55 * scale), meaning, LEGEND_FT * scale, anchor="start"))
    return tuple(marks), tuple(texts), top - rows * step


def _swatch(role: str, bounds: Box) -> Mark:
    x1, y1, x2, y2 = bounds
    if role in ("crown", "root_zone", "utility", "eye_here", "section_eye"):
        return Circle(role, ((x1 + x2) / 2, (y1 + y2) / 2), (y2 - y1) / 2)
    if role == LEVEL_ROLE:
        return triangle(((x1 + x2) / 2, (y1 + y2) / 2), y2 - y1)
    if role in (FOCAL_ROLE, PINCH_ROLE):
        return swatch(role, ((x1 + x2) / 2, (y1 + y2) / 2), (y2 - y1) / 2)
    if role in LINE_ROLES:
        return Line(role, ((x1, (y1 + y2) / 2), (x2, (y1 + y2) / 2)))
    return Area(role, (ring_of_box(bounds),))


def _lines(role: str, paragraphs: Sequence[str], at: Point, size_ft: float, width_ft: float) -> tuple[Text, ...]:
    """Paragraphs wrapped to a width, one line under another from a point down."""
    letters = max(12, int(width_ft / (_LETTER * size_ft)))
    lines = [line for paragraph in paragraphs for line in textwrap.wrap(paragraph, letters)]
    return tuple(
        Text(role, (at[0], at[1] - size_ft * (0.6 + 1.35 * row)), line, size_ft, anchor="start")
        for row, line in enumerate(lines)
    )


def _foot(texts: Sequence[Text], top: float) -> float:
    """Lower end of the last line, or the top where there is none."""
    return texts[-1].at[1] - texts[-1].size_ft if texts else top
