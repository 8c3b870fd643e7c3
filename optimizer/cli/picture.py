"""One picture of a concept: what its ground, sun, sight, section or whole yard is like."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Final

from optimizer.catalogue import sized_rooms
from optimizer.concepts import Option
from optimizer.errors import InputError, Problem
from optimizer.layout import Placed, placed_of
from optimizer.results import read_result, write_whole
from optimizer.scenario import Scenario
from optimizer.site import Point
from optimizer.units import LENGTH_EXAMPLES, read_length_ft

if TYPE_CHECKING:
    from optimizer.drawing import Drawing

USUAL_MOMENT: Final = datetime(2026, 6, 21, 17)  # noqa: DTZ001 - the yard's own clock
KINDS: Final[dict[str, str]] = {"sun": ".svg", "ground": ".svg", "sight": ".svg", "section": ".svg", "yard": ".html"}
"""What a picture can be of, and how its file ends."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the call asks for, as it was typed."""

    of: str
    room: str | None = None
    on: str | None = None
    line: str | None = None


@dataclass(frozen=True, slots=True)
class _Concept:
    scenario: Scenario
    placed: Placed
    option: Option

    @property
    def levels(self) -> Mapping[str, float]:
        from optimizer.drawing.heights import graded_levels

        return graded_levels(self.scenario.site, self.placed, self.option.appraisal.ways)

    def title(self, words: str) -> str:
        return f"{self.option.title}: {words}"


def write_picture(result_path: Path, *, option_id: str, wanted: Wanted, out: Path) -> None:
    """Write a picture of a concept of a result to a file.

    Raises InputError for a picture, ending, concept, name, moment or line that cannot be, ResultError for a result that
    cannot be read, OutputError where the file cannot be written.
    """
    ending = KINDS.get(wanted.of)
    if ending is None:
        raise _wrong("a picture of " + ", ".join(KINDS), wanted.of, "--of", "name one of these")
    if out.suffix.lower() != ending:
        raise _wrong(f"a file that ends in {ending}", out.name, "--out", "change the ending")
    result = read_result(result_path)
    option = result.option(option_id)
    if option is None:
        known = ", ".join(option.id for option in result.option_set.options) or "none"
        raise _wrong(f"a concept of {result_path.name}", option_id, "--option", f"it has {known}")
    concept = _Concept(result.scenario, placed_of(sized_rooms(result.scenario.brief), option.layout), option)
    write_whole(out, _yard(concept, wanted) if wanted.of == "yard" else _svg(DRAWERS[wanted.of](concept, wanted)))


def _svg(drawing: "Drawing") -> str:
    from optimizer.export import plan_svg

    return plan_svg(drawing)


def _yard(concept: _Concept, wanted: Wanted) -> str:
    from optimizer.figures import figure_html, yard_3d

    moment = _moment(wanted.on)
    option = concept.option
    legs = option.appraisal.legs
    return figure_html(yard_3d(concept.scenario, concept.placed, concept.levels, moment, legs=legs))


def _ground(concept: _Concept, _: Wanted) -> "Drawing":
    from optimizer.drawing.contours import draw_ground

    return draw_ground(concept.scenario, concept.option.layout, concept.levels, title=concept.title("ground"))


def _sun(concept: _Concept, wanted: Wanted) -> "Drawing":
    from optimizer.drawing.sun_map import draw_sun_map, summer_day, sun_windows

    windows = sun_windows(concept.placed.wished)
    name = wanted.room or summer_day(concept.scenario.site)
    if name not in windows:
        raise _wrong("a room with a wish for sun or shade, or a day", name, "--room", f"there is {', '.join(windows)}")
    return draw_sun_map(concept.scenario, concept.placed, windows[name], title=concept.title(f"sun, {name}"))


def _sight(concept: _Concept, wanted: Wanted) -> "Drawing":
    from optimizer.drawing.sight_fan import draw_sight, viewers

    known = viewers(concept.scenario.site, concept.placed, concept.levels)
    viewer = next((viewer for viewer in known if viewer.name == (wanted.room or known[0].name)), None)
    if viewer is None:
        names = ", ".join(viewer.name for viewer in known)
        raise _wrong("a room, door, window or neighbour's eye", wanted.room or "", "--room", f"there is {names}")
    title = concept.title(f"seen from {viewer.name}")
    return draw_sight(concept.scenario, concept.placed, viewer, title=title)


def _section(concept: _Concept, wanted: Wanted) -> "Drawing":
    from optimizer.drawing.section import draw_section, line_through

    layout = concept.option.layout
    if wanted.room and layout.of(wanted.room) is None:
        placed = ", ".join(placement.room for placement in layout.placements)
        raise _wrong("a room that is placed", wanted.room, "--room", f"there is {placed}")
    scenario = concept.scenario
    line = read_line(wanted.line, scenario) if wanted.line else line_through(scenario.site, layout, wanted.room)
    return draw_section(
        scenario,
        concept.placed,
        concept.levels,
        line,
        when=_moment(wanted.on),
        title=concept.title("section"),
    )


DRAWERS: Final[dict[str, Callable[[_Concept, Wanted], "Drawing"]]] = {
    "sun": _sun,
    "ground": _ground,
    "sight": _sight,
    "section": _section,
}


def _moment(text: str | None) -> datetime:
    """Read a moment of the yard's own clock; 21 June at 17:00 where none is given."""
    if text is None:
        return USUAL_MOMENT
    # Nothing but day and time: other forms that Python reads would bring a time zone of their own.
    if re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d", text):
        try:
            return datetime.fromisoformat(text)
        except ValueError:
            pass
    raise _wrong("a moment such as 2026-06-21T17:00", text, "--on", "give day and time of the yard's own clock")


def read_line(text: str, scenario: Scenario) -> tuple[Point, Point]:
    """Read x1,y1,x2,y2 in the scenario's unit, or with units such as 12 ft 6 in or 3.8 m."""
    try:
        x1, y1, x2, y2 = (read_length_ft(part.strip(), unit_ft=scenario.unit_ft) for part in text.split(","))
    except ValueError:
        x1 = y1 = x2 = y2 = float("nan")
    # Within a mile of the origin, which also keeps out what is no number.
    if not all(abs(value) < 5280.0 for value in (x1, y1, x2, y2)) or abs(x2 - x1) + abs(y2 - y1) < 2.0:
        expected = f"x1,y1,x2,y2 on the plan, in {scenario.units} or with units"
        raise _wrong(expected, text, "--line", f"give two points at least 2 ft apart, each as {LENGTH_EXAMPLES}")
    return (x1, y1), (x2, y2)


def _wrong(expected: str, found: str, where: str, advice: str) -> InputError:
    return InputError((Problem(expected, repr(found), advice, where=where),))
