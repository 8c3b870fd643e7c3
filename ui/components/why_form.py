"""Ask why: a room is left out, not here, not of this size, not in the sun; the answer, and what would help."""

from typing import Final

import streamlit as st

from optimizer.catalogue import SizedRoom, sized_rooms
from optimizer.drawing.outlines import box_of
from optimizer.scenario import Scenario
from ui.components.markup import element, paragraph, plain, problem_list, show
from ui.components.search_progress import search_progress
from ui.components.search_start import USUAL_S, begin_search
from ui.components.ways_out import ways_out
from ui.questions import Question, questions_about
from ui.searches import Search, question_of
from ui.shown import Shown
from ui.state import (
    ask_about,
    asked_room,
    current_question,
    is_for_designer,
    searching,
    take_up_question,
)
from ui.store import Revision
from ui.view_models import Told, told, words_of

Area = tuple[float, float, float, float]
LONGER: Final = 3.0
"""So many times as long is asked again for what was not decided."""


def why_form(revision: Revision, scenario: Scenario, shown: Shown) -> Area | None:
    """Ask about a room of a concept and show the answer; return the ground that the question is about [ft]."""
    question, area = _asked(scenario, shown)
    asked = current_question(revision)
    is_running = asked is not None and asked.is_running
    if st.button("Ask", type="primary", key="ask", disabled=is_running):
        _ask(revision, question, shown.search, USUAL_S)
    if asked is not None and is_running:
        search_progress(asked.id, 0)
    elif asked is not None:
        _answered(revision, scenario, asked)
    return area


def _ask(revision: Revision, question: Question, of: Search, seconds: float) -> None:
    begin_search(lambda: searching().ask_why(revision, question, of, seconds=seconds), take_up_question)


def _asked(scenario: Scenario, shown: Shown) -> tuple[Question, Area | None]:
    rooms = {room.name: room for room in sized_rooms(scenario.brief)}
    room = rooms[_room(rooms, shown)]
    is_out = room.name in shown.option.left_out_rooms
    place = None if is_out else shown.option.layout.of(room.name)
    choices = [choice.label for choice in room.choices if not choice.is_later]
    wish = scenario.brief.room(room.name)
    assert wish is not None
    offered = questions_about(wish, choice=place.choice if place else None, choices=choices)
    kind = st.radio("Question", [*offered], format_func=offered.__getitem__, key=f"why_kind_{room.name}")
    own = None if place is None else box_of(place)
    if kind == "here":
        at, area = _corner(scenario, room, own)
        return Question(kind, room.name, shown.option.id, at=at), area
    if kind == "choice":
        others = [label for label in choices if place is None or label != place.choice]
        choice = st.selectbox("Size", others, format_func=plain, key=f"why_choice_{room.name}")
        return Question(kind, room.name, shown.option.id, choice=choice), own
    return Question(kind, room.name, shown.option.id), own


def _room(rooms: dict[str, SizedRoom], shown: Shown) -> str:
    """Let a room be chosen, those that are left out first."""
    out = shown.option.left_out_rooms
    names = sorted(rooms, key=lambda name: name not in out)
    named = asked_room()
    st.session_state["why_room"] = named if named in names else names[0]
    return str(
        st.selectbox(
            "About which room",
            names,
            format_func=lambda name: f"{plain(name)} (left out)" if name in out else plain(name),
            key="why_room",
            on_change=lambda: ask_about(st.session_state["why_room"]),
        )
    )


def _corner(scenario: Scenario, room: SizedRoom, own: Area | None) -> tuple[tuple[float, float], Area]:
    """Ask for a lower left corner in the file's unit, and give the ground that the room would take from there [ft]."""
    unit_ft = scenario.unit_ft
    xs, ys = zip(*scenario.site.boundary, strict=True)
    smallest = min(room.choices, key=lambda choice: choice.width_ft * choice.depth_ft)
    width, depth = (own[2] - own[0], own[3] - own[1]) if own else (smallest.width_ft, smallest.depth_ft)
    usual = own[:2] if own else (sum((min(xs), max(xs))) / 2, sum((min(ys), max(ys))) / 2)
    paragraph("Its lower left corner, by the numbers along the plan.")
    at = []
    for column, label, values, value in zip(st.columns(2), ("Across", "Up"), (xs, ys), usual, strict=True):
        least, most = min(values) / unit_ft, max(values) / unit_ft
        number = column.number_input(
            f"{label} ({scenario.units})", least, most, round(value / unit_ft, 1), 1.0, "%g", key=f"{label}_{room.name}"
        )
        at.append(float(number))
    x, y = at[0] * unit_ft, at[1] * unit_ft
    return (at[0], at[1]), (x, y, x + width, y + depth)


def _answered(revision: Revision, scenario: Scenario, asked: Search) -> None:
    document = asked.document()
    if document is None:
        st.error("The question has no answer. What was said:")
        problem_list(asked.said)
        return
    answer = told(document, words_of(scenario, for_designer=is_for_designer()))
    _told(answer)
    if not answer.is_answered:
        longer = asked.seconds * LONGER
        known = "That it cannot be is not proven" if answer.ways_out else "Not decided in this time"
        paragraph(f"{known}; ask again for longer.", css="lead")
        question, of = question_of(asked), searching().get(asked.record.start_from)
        if question is not None and of is not None and st.button(f"Ask again, for {longer:.0f} s", key="ask_longer"):
            _ask(revision, question, of, longer)
    earlier = searching().get(asked.record.start_from)
    ways_out(revision, answer.ways_out, asked_of=asked.record.revision_id, seconds=USUAL_S, start_from=earlier)


def _told(answer: Told) -> None:
    show(element("h3", answer.question), element("p", answer.answer, css="lead"))
    if answer.rules:
        several = len(answer.rules) > 1
        paragraph("What stands in the way, all of it together:" if several else "What stands in the way:")
        show(element("ul", *(element("li", rule) for rule in answer.rules), css="rules-why"))
