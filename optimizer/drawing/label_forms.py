"""Ways to write a room's label, from the fullest to the shortest, and how much room each takes."""

from collections.abc import Iterator, Sequence
from textwrap import wrap

from optimizer.drawing.marks import TYPE_FT, Box, Text
from optimizer.drawing.type_width import width_of
from optimizer.drawing.words import Units, area_text, short_name, size_text
from optimizer.layout import Placement
from optimizer.site import Point

LINE_STEP = 1.3
_NARROWER = (20, 14)  # letters a line of what ground is kept for
MARGIN_FT = 0.3
LARGE_MARGIN_FT = 0.8
LARGE_NAME_FT = (3.4, 1.8)
"""Greatest and least size of a name in a small picture [ft]."""
SMALL_MARGIN_FT, LEAST_SMALL_NAME_FT = 0.2, 1.4
"""The same of a small room: at 390 px still a name when enlarged, and at a desk 8 to 12 px high."""

Lines = tuple[tuple[str, str, float], ...]
"""Role, text and size [ft] of each line of a label."""


def forms(
    placement: Placement, units: Units, scale: float, *, is_measured: bool, purpose: Sequence[str] = ()
) -> Iterator[Lines]:
    """Forms of a label, the best first; the size is left to the dimension lines where they say it.

    `purpose` are lines that say what the ground is kept for; in a narrow room they are more and shorter.
    """
    name, area = short_name(placement.room), area_text(placement.area_sqft, units)
    size = size_text(placement, units)
    facts = ([area], []) if is_measured else ([f"{size}, {area}"], [size, area], [size], [])
    said = dict.fromkeys((tuple(purpose), *(tuple(wrap(" ".join(purpose), letters)) for letters in _NARROWER)))
    for below in facts:
        for lines in said:
            for head in ([name], name.split()):
                yield _lines(head, [*lines, *below], scale)


def names_alone(placement: Placement, scale: float) -> Iterator[Lines]:
    """Forms of a label that is no more than the name, on one line or a word a line."""
    name = short_name(placement.room)
    yield _lines([name], [], scale)
    yield _lines(name.split(), [], scale)


def _lines(name: Sequence[str], facts: Sequence[str], scale: float) -> Lines:
    head = (("room_name", line, TYPE_FT * scale) for line in name)
    return (*head, *(("room_size", line, TYPE_FT * scale) for line in facts))


def extent(lines: Lines) -> tuple[float, float]:
    """Width and height of a label [ft]."""
    width = max(width_of(text) * size for _, text, size in lines)
    return (width + 2 * MARGIN_FT, sum(size * LINE_STEP for *_, size in lines) + 2 * MARGIN_FT)


def set_lines(lines: Lines, centre: Point) -> tuple[tuple[Text, ...], Box]:
    """Set the lines one under another about a centre, and the box around them."""
    width, height = extent(lines)
    top = centre[1] + height / 2 - MARGIN_FT
    texts: list[Text] = []
    for role, text, size in lines:
        texts.append(Text(role, (centre[0], top - size * LINE_STEP / 2), text, size))
        top -= size * LINE_STEP
    bounds = (centre[0] - width / 2, centre[1] - height / 2, centre[0] + width / 2, centre[1] + height / 2)
    return (tuple(texts), bounds)


def large_name(placement: Placement) -> tuple[Text, ...]:
    """Write the name alone, a word a line, as large as fits its room, for small pictures; none if it would spill.

    In a small room, such as a nook for two chairs, it comes nearer to the edges and is smaller.
    """
    words = short_name(placement.room).split()
    most, least = LARGE_NAME_FT
    size = min(most, _fitting_ft(words, placement, LARGE_MARGIN_FT))
    if size < least:
        size = min(least, _fitting_ft(words, placement, SMALL_MARGIN_FT))
    if size < LEAST_SMALL_NAME_FT:
        return ()
    lines = tuple(("room_name_large", word, size) for word in words)
    return set_lines(lines, placement.centre)[0]


def _fitting_ft(words: Sequence[str], placement: Placement, margin_ft: float) -> float:
    """Greatest size of a name, a word a line, that leaves such a margin in its room [ft]."""
    longest = max(width_of(word) for word in words)
    return min(
        (placement.width_ft - 2 * margin_ft) / longest,
        (placement.depth_ft - 2 * margin_ft) / (len(words) * LINE_STEP),
    )
