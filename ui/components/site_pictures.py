"""Pictures of concepts, each made only when it is chosen: plan, ground, sun, sight, a section, 3-D.

One choice holds for all concepts, so that the next one opened, or one beside it, is shown in the same way.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any, Final

import streamlit as st

from optimizer.catalogue import sized_rooms
from optimizer.drawing.words import moment_text
from optimizer.layout import Placed, placed_of
from ui.components.markup import Markup, element, image, plain, show
from ui.components.pictures import DESIGNER, OWNER, large_plan, plan_of
from ui.shown import Shown
from ui.state import current_picture, is_for_designer, show_picture

if TYPE_CHECKING:
    from optimizer.drawing import Drawing

CHOICES: Final = ("Plan", "Ground", "Sun", "Sight", "Section", "3-D")
MOMENTS: Final[dict[str, datetime]] = {
    moment_text(when): when
    for month in (6, 9, 12)
    for hour in (9, 13, 17)
    for when in (datetime(2026, month, 21, hour),)  # noqa: DTZ001 - the yard's clock
}
FIGURE_HEIGHT_PX: Final = 460


@dataclass(frozen=True, slots=True)
class View:
    """What all concepts are shown in: the picture, what of it (window of sun, eyes, room of a section), and when."""

    picture: str
    of: str = ""
    when: str = ""


@dataclass(frozen=True, slots=True)
class _Concept:
    """What the pictures are made from."""

    shown: Shown

    @property
    def placed(self) -> Placed:
        return placed_of(sized_rooms(self.shown.scenario.brief), self.shown.option.layout)

    @property
    def levels(self) -> Mapping[str, float]:
        from optimizer.drawing.heights import graded_levels  # noqa: PLC0415

        return graded_levels(self.shown.scenario.site, self.placed, self.shown.option.appraisal.ways)

    def title(self, words: str) -> str:
        return f"{self.shown.option.title}: {words}"


def view_choice(concepts: Sequence[Shown]) -> View:
    """Show the row of pictures, and what a picture asks further; the plan at first."""
    named = current_picture()
    st.session_state["picture"] = named if named in CHOICES else "Plan"
    with st.container(horizontal=True, vertical_alignment="bottom", key="view_row"):
        picture = str(
            st.segmented_control(
                "Picture", CHOICES, key="picture", label_visibility="collapsed", required=True, on_change=_chosen
            )
        )
        return _asked(picture, [_Concept(shown) for shown in concepts])


def _chosen() -> None:
    picture = st.session_state["picture"]
    show_picture(None if picture == "Plan" else picture)


def _asked(picture: str, concepts: Sequence[_Concept]) -> View:
    if picture == "Sun":
        return View(picture, of=_sun_asked(concepts))
    if picture == "Sight":
        names = _each(viewer for concept in concepts for viewer in _viewers(concept))
        return View(picture, of=_select("Seen from", names, key="seen_from") if names else "")
    if picture == "Section":
        rooms = _each(place.room for concept in concepts for place in concept.shown.option.layout.placements)
        return View(picture, of=_select("Through", rooms, key="cut"), when=_moment(concepts[0]))
    return View(picture, when=_moment(concepts[0]) if picture == "3-D" else "")


def _sun_asked(concepts: Sequence[_Concept]) -> str:
    from optimizer.drawing.sun_map import summer_day, window_text  # noqa: PLC0415

    windows = _windows(concepts)
    wishes = {room.name for concept in concepts for room in concept.placed.wished if room.sun is not None}
    usual = summer_day(concepts[0].shown.scenario.site)
    names = [usual, *(name for name in windows if name != usual)]
    said = {name: (f"wish of {name}: " if name in wishes else "") + window_text(windows[name]) for name in names}
    return _select("Hours of direct sun", names, key="sun_of", words=said.__getitem__)


def _windows(concepts: Sequence[_Concept]) -> dict[str, Any]:
    from optimizer.drawing.sun_map import sun_windows  # noqa: PLC0415

    return {name: window for concept in concepts for name, window in sun_windows(concept.placed.wished).items()}


def _viewers(concept: _Concept) -> dict[str, Any]:
    from optimizer.drawing.sight_fan import viewers  # noqa: PLC0415

    return {viewer.name: viewer for viewer in viewers(concept.shown.scenario.site, concept.placed, concept.levels)}


def _each(names: Iterable[str]) -> list[str]:
    return [*dict.fromkeys(names)]


def _select(label: str, names: Sequence[str], *, key: str, words: Callable[[str], str] = str) -> str:
    if st.session_state.get(key) not in names:
        st.session_state[key] = names[0]
    return str(st.selectbox(label, names, format_func=words, key=key, label_visibility="collapsed", width=260))


def usual_moment(latitude: float) -> str:
    """Name of a summer's afternoon, half a year apart south of the equator."""
    return "21 June, 17:00" if latitude >= 0 else "21 December, 17:00"


def _moment(concept: _Concept) -> str:
    usual = usual_moment(concept.shown.scenario.site.place.latitude)
    return _select("Sun of", [usual, *(name for name in MOMENTS if name != usual)], key="moment")


def site_picture(shown: Shown, view: View) -> None:
    """Show a concept in a view."""
    concept = _Concept(shown)
    if view.picture == "Plan":
        show(large_plan(shown, DESIGNER if is_for_designer() else OWNER))
    elif view.picture == "3-D":
        _yard(concept, view)
    else:
        drawn = _drawing(concept, view)
        show(element("div", image(drawn[0], words=drawn[1]), css="plan") if drawn else _missing(view))


def enlarge(shown: Shown, view: View) -> None:
    """Show a concept's picture as large as the window."""
    st.dialog(plain(shown.option.title), width="large")(_enlarged)(shown, view)


def _enlarged(shown: Shown, view: View) -> None:
    if view.picture == "Plan":
        svg, words = plan_of(shown, DESIGNER if is_for_designer() else OWNER), f"Plan of {shown.option.title}"
        show(element("div", image(svg, words=words), css="plan whole"))
        return
    drawn = _drawing(_Concept(shown), view)
    show(element("div", image(drawn[0], words=drawn[1]), css="plan whole") if drawn else _missing(view))


def _missing(view: View) -> Markup:
    return element("p", f"There is no {view.of or 'such place'} in this concept.", css="quiet")


def _drawing(concept: _Concept, view: View) -> tuple[str, str] | None:
    """Give the drawing of a view as SVG with its words; None where the concept lacks what it is of."""
    drawn = _DRAWN[view.picture](concept, view)
    return None if drawn is None else _svg(f"{concept.shown.key}/{view}", drawn)


def _ground(concept: _Concept, _: View) -> "Callable[[], Drawing] | None":
    def drawn() -> "Drawing":
        from optimizer.drawing.contours import draw_ground  # noqa: PLC0415 - drawn only when chosen

        shown = concept.shown
        return draw_ground(shown.scenario, shown.option.layout, concept.levels, title=concept.title("ground"))

    return drawn


def _sun(concept: _Concept, view: View) -> "Callable[[], Drawing] | None":
    def drawn() -> "Drawing":
        from optimizer.drawing.sun_map import draw_sun_map  # noqa: PLC0415

        window, title = _windows([concept])[view.of], concept.title(f"sun, {view.of}")
        return draw_sun_map(concept.shown.scenario, concept.placed, window, title=title)

    return drawn if view.of in _windows([concept]) else None


def _sight(concept: _Concept, view: View) -> "Callable[[], Drawing] | None":
    def drawn() -> "Drawing":
        from optimizer.drawing.sight_fan import draw_sight  # noqa: PLC0415

        viewer, title = _viewers(concept)[view.of], concept.title(f"seen from {view.of}")
        return draw_sight(concept.shown.scenario, concept.placed, viewer, title=title)

    return drawn if view.of in _viewers(concept) else None


def _section(concept: _Concept, view: View) -> "Callable[[], Drawing] | None":
    def drawn() -> "Drawing":
        from optimizer.drawing.section import draw_section, line_through  # noqa: PLC0415

        scenario = concept.shown.scenario
        line = line_through(scenario.site, concept.shown.option.layout, view.of)
        title, when = concept.title(f"section through {view.of}"), MOMENTS[view.when]
        return draw_section(scenario, concept.placed, concept.levels, line, when=when, title=title)

    return drawn if concept.shown.option.layout.of(view.of) else None


_DRAWN: Final[dict[str, "Callable[[_Concept, View], Callable[[], Drawing] | None]"]] = {
    "Ground": _ground,
    "Sun": _sun,
    "Sight": _sight,
    "Section": _section,
}


def _yard(concept: _Concept, view: View) -> None:
    from optimizer.figures import TOOLBAR  # noqa: PLC0415

    figure = _figure(f"{concept.shown.key}/{view.when}", concept, MOMENTS[view.when])
    words = f"The yard of {concept.shown.option.title} in three dimensions with its shadows: {view.when}"
    with st.container(height=FIGURE_HEIGHT_PX, border=False, key=f"yard_frame_{concept.shown.name}"):
        st.plotly_chart(figure, height="stretch", config=TOOLBAR, key=f"yard_{concept.shown.name}", alt=words)


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
    shown = _concept.shown
    return yard_3d(shown.scenario, _concept.placed, _concept.levels, _when, legs=shown.option.appraisal.legs)
