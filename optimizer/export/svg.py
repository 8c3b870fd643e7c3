"""A drawing as SVG: one user unit is one foot of the ground, width and height are true to scale on paper."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final
from zlib import crc32

from optimizer.drawing import Area, Box, Circle, Dimension, Drawing, Line, Mark, Text
from optimizer.export.looks import Hatch, Look
from optimizer.export.palette import HATCHES, LETTERS, PAPER, look_of
from optimizer.export.svg_text import number, safe_text

EIGHTH_INCH_TO_FOOT: Final = 1 / 8
"""Paper inches to a foot of the ground: 1/8 in = 1 ft."""
ONE_TO_HUNDRED: Final = 12 / 100
"""Paper inches to a foot of the ground at 1:100."""
PAGE_PT: Final = 792
"""Line weights are in points on a sheet that is put onto paper 11 in wide: as heavy to a reader whatever the yard."""
THUMBNAIL_WIDTH_PX = 320
_SMALL_PICTURE_WEIGHT = 1.7
_SMALL_SKIPS: Final = (
    "furniture",
    "side",
    "plant",
    "field",
    "accent",
    "border_course",
    "cap",
    "terrace_border",
    "leader",
    "level_mark",
    "setback",
    "root_zone",
    "utility",
    "swing",
)
_BASELINE = 0.35
"""How far the baseline lies under the middle of a line of text, as a share of its size."""


@dataclass(frozen=True, slots=True)
class _Pen:
    """What turns roles into attributes: feet to a point of line weight, and the prefix of this picture's ids."""

    ft_per_pt: float
    prefix: str

    def style(self, look: Look) -> str:
        """Attributes of fill and line."""
        dash = (
            f' stroke-dasharray="{" ".join(number(d * self.ft_per_pt) for d in look.dash_pt)}"' if look.dash_pt else ""
        )
        line = (
            f' stroke="{look.line}" stroke-width="{number(look.weight_pt * self.ft_per_pt)}"{dash}' if look.line else ""
        )
        return f'fill="{look.fill or "none"}"{line}' + (f' fill-opacity="{look.opacity:g}"' if look.opacity < 1 else "")


def plan_svg(drawing: Drawing, *, scale: float | None = None) -> str:
    """Write the whole sheet.

    `scale` is paper inches to a foot of the ground, with line weights for that paper: by default 1/8, or 1:100 for a
    drawing in metres, with weights for a sheet that is put onto a page.
    """
    inches = scale or (ONE_TO_HUNDRED if drawing.metric else EIGHTH_INCH_TO_FOOT)
    x1, y1, x2, y2 = drawing.sheet_box
    size = f'width="{number((x2 - x1) * inches)}in" height="{number((y2 - y1) * inches)}in"'
    pen = _Pen(1 / (72 * scale) if scale else (x2 - x1) / PAGE_PT, _prefix(drawing, "p"))
    texts = [text for text in drawing.texts if text.role != "room_name_large"]
    body = [
        *(part for mark in (*drawing.marks, *drawing.key) for part in _mark(mark, pen)),
        *(part for dimension in drawing.dimensions for part in _dimension(dimension, pen)),
        *(_text(text) for text in texts),
    ]
    return _document(drawing, drawing.sheet_box, size, pen, body)


def thumbnail_svg(drawing: Drawing, *, width_px: int = THUMBNAIL_WIDTH_PX) -> str:
    """Write the plan alone for a small picture: no dimensions, furniture or sheet, heavier lines, large room names."""
    x1, y1, x2, y2 = drawing.plan_box
    size = f'width="{width_px}" height="{number(width_px * (y2 - y1) / (x2 - x1))}"'
    pen = _Pen(_SMALL_PICTURE_WEIGHT * (x2 - x1) / (width_px * 3), _prefix(drawing, "t"))
    body = [
        *(part for mark in drawing.marks if mark.role.split(".")[0] not in _SMALL_SKIPS for part in _mark(mark, pen)),
        *(_text(text) for text in drawing.texts if text.role == "room_name_large"),
    ]
    return _document(drawing, drawing.plan_box, size, pen, body)


def strip_svg(drawings: Sequence[Drawing], *, width_px: int = 2 * THUMBNAIL_WIDTH_PX) -> str:
    """Small plans side by side, each under its title."""
    gap, letters = width_px / 20, width_px / 26
    x1, y1, x2, y2 = drawings[0].plan_box
    high = width_px * (y2 - y1) / (x2 - x1)
    width, height = gap + len(drawings) * (width_px + gap), high + 2 * gap + letters
    family, parts = LETTERS["title"].family, list[str]()
    for number_of, drawing in enumerate(drawings):
        left = gap + number_of * (width_px + gap)
        place = f'<svg x="{number(left)}" y="{number(gap + letters)}" '
        at = f'x="{number(left)}" y="{number(gap)}" font-size="{number(letters)}" font-family="{family}"'
        parts.append(f"<text {at}>{safe_text(drawing.title)}</text>")
        parts.append(thumbnail_svg(drawing, width_px=width_px).replace("<svg ", place, 1))
    size = f'width="{number(width)}" height="{number(height)}" viewBox="0 0 {number(width)} {number(height)}"'
    paper = f'<rect width="{number(width)}" height="{number(height)}" fill="{PAPER}"/>'
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>\n{paper}\n' + "\n".join(parts) + "</svg>\n"


def _prefix(drawing: Drawing, detail: str) -> str:
    """Ids of one picture may not meet those of another on the same page."""
    return f"{detail}{crc32((drawing.title + drawing.description).encode('utf-8', 'replace')):08x}"


def _document(drawing: Drawing, box: Box, size: str, pen: _Pen, body: list[str]) -> str:
    x1, y1, x2, y2 = box
    view = " ".join(number(value) for value in (x1, -y2, x2 - x1, y2 - y1))
    paper = f'x="{number(x1)}" y="{number(-y2)}" width="{number(x2 - x1)}" height="{number(y2 - y1)}" fill="{PAPER}"'
    title, words = f"{pen.prefix}-title", f"{pen.prefix}-desc"
    head = f'{size} viewBox="{view}" role="img" aria-labelledby="{title} {words}"'
    drawn = "".join(body)
    patterns = [_pattern(name, hatch, pen) for name, hatch in HATCHES.items() if f"{pen.prefix}-{name})" in drawn]
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {head}>',
        f'<title id="{title}">{safe_text(drawing.title)}</title>',
        f'<desc id="{words}">{safe_text(drawing.description)}</desc>',
        f"<defs>{''.join(patterns)}</defs>",
        f"<rect {paper}/>",
        *body,
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _pattern(name: str, hatch: Hatch, pen: _Pen) -> str:
    turn = f' patternTransform="rotate({number(hatch.turn_deg)})"' if hatch.turn_deg else ""
    return (
        f'<pattern id="{pen.prefix}-{name}" patternUnits="userSpaceOnUse" width="{number(hatch.width_ft)}"'
        f' height="{number(hatch.height_ft)}"{turn}><path d="{hatch.path}" fill="none" stroke="{hatch.line}"'
        f' stroke-width="{number(hatch.weight_pt * pen.ft_per_pt)}" stroke-linecap="round"/></pattern>'
    )


def _mark(mark: Mark, pen: _Pen) -> Iterator[str]:
    """Yield an element for the look of a mark, and one over it for its hatch; the role stays readable as the class."""
    look, element = look_of(mark.role), _element(mark)
    if look.fill or look.line:
        yield element(f'class="{safe_text(mark.role)}" {pen.style(look)}')
    if look.hatch:
        yield element(f'fill="url(#{pen.prefix}-{look.hatch})"')


def _element(mark: Mark) -> Callable[[str], str]:
    match mark:
        case Circle(centre=(x, y), radius_ft=radius_ft):
            shape = f'<circle cx="{number(x)}" cy="{number(-y)}" r="{number(radius_ft)}" {{}}/>'
        case Line(points=points):
            shape = f'<path d="{_path(points)}" stroke-linejoin="round" {{}}/>'
        case Area(rings=rings):
            shape = f'<path d="{"".join(_path(ring) + "Z" for ring in rings)}" fill-rule="evenodd" {{}}/>'
    return shape.format


def _path(points: tuple[tuple[float, float], ...]) -> str:
    return "M" + "L".join(f"{number(x)} {number(-y)}" for x, y in points)


def _dimension(dimension: Dimension, pen: _Pen) -> Iterator[str]:
    """Yield the line, extension lines where it is set off, slanting ticks, and the figure."""
    ends, reach = dimension.line, dimension.size_ft * 0.4
    if dimension.offset_ft:
        for foot, end in zip((dimension.start, dimension.end), ends, strict=True):
            yield from _mark(Line("dimension", (foot, end)), pen)
    yield from _mark(Line("dimension", ends), pen)
    for x, y in ends:
        yield from _mark(Line("dimension_tick", ((x - reach, y - reach), (x + reach, y + reach))), pen)
    yield _text(dimension.label)


def _text(text: Text) -> str:
    letters, (x, y) = LETTERS[text.role], text.at
    turn = f' transform="rotate({number(-text.turn_deg)} {number(x)} {number(-y)})"' if text.turn_deg else ""
    style = ' font-style="italic"' if letters.italic else ""
    halo = (
        f' paint-order="stroke" stroke="{letters.halo}" stroke-width="{number(text.size_ft * 0.22)}"'
        f' stroke-linejoin="round" stroke-opacity="0.8"'
        if letters.halo
        else ""
    )
    return (
        f'<text class="{text.role}" x="{number(x)}" y="{number(-y + _BASELINE * text.size_ft)}"'
        f' font-size="{number(text.size_ft)}" font-family="{letters.family}" font-weight="{letters.weight}"{style}'
        f' text-anchor="{text.anchor}" fill="{letters.fill}"{halo}{turn}>{safe_text(text.text)}</text>'
    )
