"""Hold here: a room stays where it is, keeps within or out of an area, opens to a side, or is of a choice."""

from typing import Final, Literal

import streamlit as st

from optimizer.concepts.words import choice_words
from optimizer.drawing.outlines import box_of
from optimizer.errors import InputError
from optimizer.layout import Placement
from optimizer.scenario import Scenario
from ui.components.decisions import reason_asked
from ui.components.held_ground import held_ground
from ui.components.improve_form import improve_form
from ui.components.markup import paragraph, plain, problem_list, show
from ui.components.phase_strip import phase_strip
from ui.components.pictures import area_picture, phases_of_concept
from ui.components.search_start import seconds_asked
from ui.components.why_form import why_form
from ui.components.wishes_form import saved_as, search_from
from ui.edits import SIDES, Held, hold_as_it_stands, hold_words, keep_out, of_area, with_hold, without_hold
from ui.shown import Shown
from ui.state import HoldingPart, holding_part, look_at_part
from ui.store import Revision
from ui.view_models import capital, words_of
from ui.yards import scenario_of

_ROUND_FT: Final = 4.0
"""How much larger than the room an area is at first, on each side [ft]."""
Area = tuple[float, float, float, float]
How = Literal["place", "front", "choice", "not_here", "within", "not_in"]
PART_NAMES: Final[dict[HoldingPart, str]] = {
    "hold": "Hold a room",
    "ask": "Ask why",
    "later": "What may come later",
    "phases": "Phase by phase",
}
HOWS: Final[dict[How, str]] = {
    "place": "stays exactly here",
    "front": "keeps the side it opens to",
    "choice": "keeps its size and equipment",
    "not_here": "shall not stand here",
    "within": "lies within an area",
    "not_in": "keeps out of an area",
}


def hold_form(revision: Revision, scenario: Scenario, shown: Shown) -> None:
    """Hold rooms of a concept, ask about them, or look at what may come later: one of these at a time."""
    part = _part(shown)
    if part == "later":
        held_ground(shown)
    elif part == "phases":
        phase_strip(shown)
    else:
        _on_the_plan(revision, scenario, shown, asks=part == "ask")


def _part(shown: Shown) -> HoldingPart:
    """Let one part be chosen; what may come later, and phases, only of a concept that has them."""
    has: dict[HoldingPart, bool] = {
        "later": bool(shown.option.futures),
        "phases": len(phases_of_concept(shown)) > 1,
    }
    names = {part: name for part, name in PART_NAMES.items() if has.get(part, True)}
    named = holding_part()
    st.session_state["holding"] = named if named in names else "hold"
    with st.container(horizontal=True, vertical_alignment="center", key="holding_row"):
        part = st.segmented_control(
            "What to do",
            [*names],
            format_func=names.__getitem__,
            key="holding",
            required=True,
            on_change=lambda: look_at_part(st.session_state["holding"]),
            label_visibility="collapsed",
            wrap=True,
        )
        money = words_of(shown.scenario).money(shown.option.appraisal.cost.phase(1))
        paragraph(f"{shown.option.title}, {money}", css="of-concept")
    return part or "hold"


def _on_the_plan(revision: Revision, scenario: Scenario, shown: Shown, *, asks: bool) -> None:
    """Ask for what is held or asked, beside the plan; what is decided becomes a further version."""
    form, plan = st.columns([7, 9], gap="large")
    with form:
        improve_form(revision, shown)
        area = why_form(revision, scenario, shown) if asks else _hold(revision, scenario, shown)
    with plan:
        show(area_picture(shown, area))
        paragraph(f"The numbers along the sides are in {scenario.units}, from the corner that the file counts from.")


def _hold(revision: Revision, scenario: Scenario, shown: Shown) -> Area | None:
    _what_is_held(revision, scenario)
    st.subheader(f"Hold a room of {plain(shown.option.title)}", anchor=False)
    held, area = _asked(scenario, shown)
    _next(revision, scenario, shown, held)
    return area


def _what_is_held(revision: Revision, scenario: Scenario) -> None:
    st.subheader("Held in this version", anchor=False)
    words = hold_words(scenario)
    if not words:
        paragraph("Nothing yet. What is held here, every concept of the next search keeps.")
    for index, said in enumerate(words):
        with st.container(
            horizontal=True, vertical_alignment="center", horizontal_alignment="distribute", key=f"held_{index}"
        ):
            with st.container(width="content"):
                paragraph(capital(said), css="held")
            st.button("Let go", key=f"let_go_{index}", on_click=_let_go, args=(revision, scenario, index))


def _let_go(revision: Revision, scenario: Scenario, index: int) -> None:
    saved_as(revision, *without_hold(scenario, index))


def _asked(scenario: Scenario, shown: Shown) -> tuple[Held, Area | None]:
    """Ask which room is held and how; the area that this is about, if any [ft]."""
    places = {place.room: place for place in shown.option.layout.placements}
    name = st.selectbox("Room", [*places], key="held_room")
    place = places[name]
    how: How = st.radio("What is decided", [*HOWS], format_func=lambda how: _how_words(how, place), key="held_how")
    if how in {"within", "not_in"}:
        area = _area(scenario, place)
        return of_area(name, area, scenario, inside=how == "within"), area
    own = box_of(place)
    if how == "not_here":
        return keep_out(place, scenario), own
    parts = {"at": how == "place", "front": how == "front", "choice": how == "choice"}
    return hold_as_it_stands(place, scenario, **parts), own


def _how_words(how: How, place: Placement) -> str:
    if how == "choice":
        size = choice_words(place.choice)
        return f"{HOWS[how]}: {plain(size)}" if size else HOWS[how]
    return f"{HOWS[how]}: the {SIDES[place.front]} of the plan" if how == "front" else HOWS[how]


def _area(scenario: Scenario, place: Placement) -> Area:
    """Ask for an area in the file's unit: two ends across, two ends up."""
    unit_ft = scenario.unit_ft
    xs, ys = zip(*scenario.site.boundary, strict=True)
    ends = []
    for label, values, low, high in (
        (f"Across ({scenario.units})", xs, place.x_ft, place.right_ft),
        (f"Up ({scenario.units})", ys, place.y_ft, place.top_ft),
    ):
        least, most = round(min(values) / unit_ft), round(max(values) / unit_ft)
        usual = (max(least, round((low - _ROUND_FT) / unit_ft)), min(most, round((high + _ROUND_FT) / unit_ft)))
        ends.append(st.slider(label, least, most, usual, key=f"area_{label}_{place.room}"))
    (left, right), (bottom, top) = ends
    return (left * unit_ft, bottom * unit_ft, max(right, left + 1) * unit_ft, max(top, bottom + 1) * unit_ft)


def _next(revision: Revision, scenario: Scenario, shown: Shown, held: Held) -> None:
    text, what = with_hold(scenario, held)
    try:
        scenario_of(revision, text, "what is held")
    except InputError as error:
        st.error("So it cannot be held. What is in the way:")
        problem_list(error)
        return
    reason = reason_asked(f"hold_{revision.id}")
    seconds = seconds_asked()
    with st.container(horizontal=True):
        is_search = st.button("Hold, and search again", type="primary", key="hold_search")
        is_hold = st.button("Hold", key="hold")
    if is_search or is_hold:
        saved = saved_as(revision, text, what, reason)
        if is_hold:
            st.rerun()
        search_from(saved, seconds, shown.search)
