"""Pictures of the opened concept, each made only when it is chosen: plan, ground, sun, sight, a section, 3-D."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any, Final

import streamlit as st

from optimizer.catalogue import sized_rooms
from optimizer.concepts import Option
from optimizer.layout import Placed, placed_of
from optimizer.scenario import Scenario
from ui.components.markup import Markup, element, image, paragraph, show
from ui.components.pictures import large_plan, owner_plan
from ui.jobs import Job

if TYPE_CHECKING:
    from optimizer.drawing import Drawing

CHOICES: Final = ("Plan", "Ground", "Sun", "Sight", "Section", "3-D")
MOMENTS: Final[dict[str, datetime]] = {
    f"{day.day} {day:%B}, {hour:02d}:00": day.replace(hour=hour)
    for day in (datetime(2026, 6, 21), datetime(2026, 9, 21), datetime(2026, 12, 21))  # noqa: DTZ001 - the yard's clock
    for hour in (9, 13, 17)
}
FIGURE_HEIGHT_PX: Final = 460


@dataclass(frozen=True, slots=True)
class _Concept:
    """What the pictures are made from; `key` names it for the cache."""

    key: str
    scenario: Scenario
    option: Option

    @property
    def placed(self) -> Placed:
        return placed_of(sized_rooms(self.scenario.brief), self.option.layout)

    @property
    def levels(self) -> Mapping[str, float]:
        from optimizer.drawing.heights import graded_levels  # noqa: PLC0415

        return graded_levels(self.scenario.site, self.placed, self.option.appraisal.ways)

    def title(self, words: str) -> str:
        return f"{self.option.title}: {words}"


def site_pictures(job: Job, scenario: Scenario, option: Option) -> None:
    """Show a row of choices and the picture that is chosen, the plan at first."""
    chosen = st.segmented_control(
        "Picture", CHOICES, default="Plan", key=f"picture_{option.id}", label_visibility="collapsed", required=True
    )
    concept = _Concept(f"{job.id}/{option.id}", scenario, option)
    shows = SHOWS.get(chosen or "Plan")
    if shows is None:
        _plan(job, concept)
    else:
        shows(concept)


def _plan(job: Job, concept: _Concept) -> None:
    """Show the owner's plan, or the designer's where that is asked for."""
    is_designers = st.toggle("Designer's plan: dimensions, levels and working marks", key=f"plan_{concept.option.id}")
    show(large_plan(job, concept.option) if is_designers else owner_plan(job, concept.scenario, concept.option))


def _ground(concept: _Concept) -> None:
    def drawn() -> "Drawing":
        from optimizer.drawing.contours import draw_ground  # noqa: PLC0415 - drawn only when chosen

        return draw_ground(concept.scenario, concept.option.layout, concept.levels, title=concept.title("ground"))

    show(_picture(concept, "ground", drawn))


def _sun(concept: _Concept) -> None:
    from optimizer.drawing.sun_map import draw_sun_map, summer_day, sun_windows, window_text  # noqa: PLC0415

    windows = sun_windows(concept.placed.wished)
    wishes = [room.name for room in concept.placed.wished if room.sun is not None]
    name = st.selectbox(
        "Hours of direct sun",
        [*windows],
        index=[*windows].index(summer_day(concept.scenario.site)),
        format_func=lambda name: (f"wish of {name}: " if name in wishes else "") + window_text(windows[name]),
        key=f"sun_of_{concept.option.id}",
    )
    title = concept.title(f"sun, {name}")
    show(
        _picture(
            concept,
            f"sun/{name}",
            lambda: draw_sun_map(concept.scenario, concept.placed, windows[name], title=title),
        )
    )


def _sight(concept: _Concept) -> None:
    from optimizer.drawing.sight_fan import draw_sight, viewers  # noqa: PLC0415

    known = {viewer.name: viewer for viewer in viewers(concept.scenario.site, concept.placed, concept.levels)}
    if not known:
        paragraph("Nobody looks into this yard: it has no rooms, doors, windows or neighbours' eyes.")
        return
    name = st.selectbox("Seen from", [*known], key=f"seen_from_{concept.option.id}")
    title = concept.title(f"seen from {name}")
    show(
        _picture(
            concept,
            f"sight/{name}",
            lambda: draw_sight(concept.scenario, concept.placed, known[name], title=title),
        )
    )


def _section(concept: _Concept) -> None:
    from optimizer.drawing.section import draw_section, line_through  # noqa: PLC0415

    layout = concept.option.layout
    with st.container(horizontal=True):
        room = st.selectbox("Through", [place.room for place in layout.placements], key=f"cut_{concept.option.id}")
        when = _moment(concept, "section")
    line = line_through(concept.scenario.site, layout, room)

    def drawn() -> "Drawing":
        title = concept.title(f"section through {room}")
        return draw_section(concept.scenario, concept.placed, concept.levels, line, when=MOMENTS[when], title=title)

    show(_picture(concept, f"section/{room}/{when}", drawn))


def _yard(concept: _Concept) -> None:
    from optimizer.figures import TOOLBAR  # noqa: PLC0415

    when = _moment(concept, "yard")
    figure = _figure(f"{concept.key}/{when}", concept, MOMENTS[when])
    words = f"The yard of {concept.option.title} in three dimensions with its shadows: {when}"
    with st.container(height=FIGURE_HEIGHT_PX, border=False, key="yard_frame"):
        st.plotly_chart(figure, height="stretch", config=TOOLBAR, key=f"yard_{concept.option.id}", alt=words)


SHOWS: Final[dict[str, Callable[[_Concept], None]]] = {
    "Ground": _ground,
    "Sun": _sun,
    "Sight": _sight,
    "Section": _section,
    "3-D": _yard,
}


def usual_moment(latitude: float) -> str:
    """Name of a summer's afternoon, half a year apart south of the equator."""
    return "21 June, 17:00" if latitude >= 0 else "21 December, 17:00"


def _moment(concept: _Concept, of: str) -> str:
    names = [*MOMENTS]
    usual = usual_moment(concept.scenario.site.place.latitude)
    return st.selectbox("Sun of", names, index=names.index(usual), key=f"{of}_moment_{concept.option.id}")


def _picture(concept: _Concept, of: str, drawn: Callable[[], "Drawing"]) -> Markup:
    """Give a drawing in the width there is, with its own words for who cannot see it."""
    svg, words = _svg(f"{concept.key}/{of}", drawn)
    return element("div", image(svg, words=words), css="plan")


# A picture takes up to a second and the page is run at every press; the first argument names the rest for the cache.
@st.cache_data(max_entries=200, show_spinner="Drawing")
def _svg(key: str, _drawn: Callable[[], "Drawing"]) -> tuple[str, str]:
    from optimizer.export import plan_svg  # noqa: PLC0415

    del key
    drawing = _drawn()
    return plan_svg(drawing), f"{drawing.title}. {drawing.description}"


@st.cache_resource(max_entries=20, show_spinner="Drawing")
def _figure(key: str, _concept: _Concept, _when: datetime) -> Any:
    from optimizer.figures import yard_3d  # noqa: PLC0415

    del key
    option = _concept.option
    legs = option.appraisal.legs
    return yard_3d(_concept.scenario, _concept.placed, _concept.levels, _when, legs=legs)
