"""The opened concept as a sheet: the plan and its verdict first, then answers, figures, money, rules and cautions."""

from typing import Final

import streamlit as st

from ui.components.cost_table import cost_summary, cost_table
from ui.components.markup import Markup, element, figure_list, paragraph, plain, show
from ui.components.site_pictures import enlarge, site_picture, view_choice
from ui.shown import Shown
from ui.state import ask_why, is_for_designer
from ui.view_models import Answer, Check, Deciding, Figure, Sheet, answers, sheet

_BESIDE_WORDS: Final = {"Plan", "Ground", "Sun", "Sight"}
"""Pictures that leave room for words beside them; the others are wide."""
_ONE_LINE: Final = 18
"""Characters of a figure that stay on one line."""


def concept_sheet(shown: Shown) -> None:
    """Show one concept in full: its plan and its verdict in one window, all else below."""
    told = sheet(shown.option, shown.scenario, for_designer=is_for_designer())
    with st.container(horizontal=True, vertical_alignment="bottom", key="picture_row"):
        view = view_choice((shown,))
        is_larger = view.picture != "3-D" and st.button("Enlarge", key="enlarge")
    if is_larger:
        enlarge(shown, view)
    with st.container(key="plan_and_verdict"):
        is_narrow = view.picture in _BESIDE_WORDS
        picture, verdict = st.columns([7, 5]) if is_narrow else (st.container(), st.container())
    with picture:
        site_picture(shown, view)
    with verdict, st.container(key="verdict"):
        is_kept = all(check.is_kept for check in told.checks)
        show(element("p", told.verdict, css="verdict" if is_kept else "verdict unkept"))
        paragraph(told.card.reason, css="lead")
        show(_deciding(told.deciding))
    _answers(answers(shown.option, shown.result.option_set, shown.scenario, for_designer=is_for_designer()))
    _left_out(told, shown)
    _rooms(told)
    _costs(told)
    _later(told)
    _cautions(told)
    _measured(told)
    _rules(told)


def _answers(told: tuple[Answer, ...]) -> None:
    st.subheader("What owners ask", anchor=False)
    parts = (element("div", element("dt", each.question), element("dd", each.answer)) for each in told)
    show(element("dl", *parts, css="answers"))


def _deciding(figures: tuple[Deciding, ...]) -> Markup:
    rows = (
        element(
            "div",
            element("dt", each.label),
            element("dd", element("b", each.value), *_grade(each), element("small", each.why)),
        )
        for each in figures
    )
    return element("dl", *rows, css="deciding")


def _grade(figure: Deciding) -> tuple[Markup, ...]:
    return (element("span", figure.grade, css=f"grade {figure.grade}"),) if figure.grade else ()


def _measured(shown: Sheet) -> None:
    """Show all that was measured, by what it is about, folded away."""
    rows = []
    for group in shown.groups:
        rows.append(element("tr", element("th", group.heading, colspan="2", scope="rowgroup"), css="group"))
        rows += [_room_row(figure) for figure in group.figures]
    with st.expander("All that was measured"):
        paragraph(shown.paragraph, css="lead")
        show(figure_list(shown.figures), element("table", element("tbody", *rows), css="sheet-table"))


def _rooms(shown: Sheet) -> None:
    st.subheader("Rooms", anchor=False)
    rows = [_room_row(figure) for figure in shown.rooms]
    show(element("table", element("tbody", *rows), css="sheet-table"))
    if shown.wishes_missed:
        paragraph(f"Wishes not kept: {'; '.join(shown.wishes_missed)}.")


def _left_out(told: Sheet, shown: Shown) -> None:
    """Name what is left out and why, each with a way to ask more."""
    if told.left_out:
        st.subheader("Left out", anchor=False)
    for number, figure in enumerate(told.left_out):
        with st.container(horizontal=True, vertical_alignment="center", key=f"left_out_{number}"):
            with st.container(width="content"):
                show(element("p", element("strong", figure.label), f": {figure.value}", css="without"))
            label = f"Ask why the {plain(figure.label)} is left out"
            st.button(label, key=f"ask_why_{number}", on_click=ask_why, args=(shown.name, figure.label))


def _room_row(figure: Figure) -> Markup:
    name = element("th", figure.label, element("small", figure.meaning), scope="row")
    # A name may be long: kept on one line it would leave no room for the label on a phone.
    return element("tr", name, element("td", figure.value, css="amount" if len(figure.value) <= _ONE_LINE else "words"))


def _costs(shown: Sheet) -> None:
    st.subheader("Where the money goes", anchor=False)
    cost_summary(shown.cost)
    with st.expander("Every line, and the quantities behind it"):
        cost_table(shown.cost)


def _later(shown: Sheet) -> None:
    if shown.later:
        st.subheader("What may come later", anchor=False)
        rows = [_room_row(figure) for figure in shown.later]
        show(element("table", element("tbody", *rows), css="sheet-table"))


def _rules(shown: Sheet) -> None:
    """Show the rules, broken ones first, and the proof; folded away while every rule is kept."""
    broken = sum(not check.is_kept for check in shown.checks)
    kept = "all kept" if not broken else f"{broken} broken"
    with st.expander(f"Rules, checked again after the search: {kept}", expanded=bool(broken)):
        show(element("div", shown.proof, css="proof"))
        show(
            element(
                "ul", *(_rule(check) for check in sorted(shown.checks, key=lambda check: check.is_kept)), css="rules"
            )
        )


def _rule(check: Check) -> Markup:
    mark = element("span", "kept", css="kept") if check.is_kept else element("span", "broken", css="broken")
    return element("li", mark, element("span", f"{check.sentence} {check.words}".strip()))


def _cautions(shown: Sheet) -> None:
    if shown.cautions:
        st.subheader("Before you build", anchor=False)
        show(element("div", *(element("p", caution) for caution in shown.cautions), css="caution"))
    if shown.permits:
        st.subheader("Permits and approvals to ask about", anchor=False)
        show(element("ul", *(element("li", permit) for permit in shown.permits)))
    if shown.remedies:
        st.subheader("Could be added", anchor=False)
        show(element("ul", *(element("li", remedy) for remedy in shown.remedies)))
