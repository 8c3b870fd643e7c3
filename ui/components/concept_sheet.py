"""The opened concept as a sheet: the plan first, then plain words, then figures, money, rules and cautions."""

from typing import Final

import streamlit as st

from optimizer.concepts import Option
from optimizer.results import Result
from ui.components.cost_table import cost_table
from ui.components.markup import Markup, element, paragraph, show
from ui.components.pictures import owner_svg
from ui.components.site_pictures import site_pictures
from ui.jobs import Job
from ui.view_models import Check, Figure, Sheet, sheet

_ONE_LINE: Final = 18
"""Characters of a figure that stay on one line."""


def concept_sheet(job: Job, result: Result, option: Option) -> None:
    """Show one concept in full."""
    shown = sheet(option, result.scenario)
    if shown.card.idea:
        paragraph(shown.card.idea, css="idea")
    site_pictures(job, result.scenario, option)
    paragraph(shown.paragraph, css="lead")
    show(element("div", shown.proof, css="proof"))
    _downloads(job, result, option)
    show(_figures(shown.figures))
    _groups(shown)
    _rooms(shown)
    _costs(shown)
    _later(shown)
    _rules(shown)
    _cautions(shown)


def _figures(figures: tuple[Figure, ...]) -> Markup:
    terms = (
        element("div", element("dt", figure.label), element("dd", figure.value, element("small", figure.meaning)))
        for figure in figures
    )
    return element("dl", *terms, css="figures")


def _groups(shown: Sheet) -> None:
    """Show what was measured, by what it is about."""
    st.subheader("What was measured", anchor=False)
    rows = []
    for group in shown.groups:
        rows.append(element("tr", element("th", group.heading, colspan="2", scope="rowgroup"), css="group"))
        rows += [_room_row(figure) for figure in group.figures]
    show(element("table", element("tbody", *rows), css="sheet-table"))


def _rooms(shown: Sheet) -> None:
    st.subheader("Rooms", anchor=False)
    rows = [_room_row(figure) for figure in (*shown.rooms, *_left_out(shown.left_out))]
    show(element("table", element("tbody", *rows), css="sheet-table"))
    if shown.wishes_missed:
        paragraph(f"Wishes not kept: {'; '.join(shown.wishes_missed)}.")


def _left_out(figures: tuple[Figure, ...]) -> tuple[Figure, ...]:
    return tuple(Figure(figure.label, "left out", figure.value) for figure in figures)


def _room_row(figure: Figure) -> Markup:
    name = element("th", figure.label, element("small", figure.meaning), scope="row")
    # A name may be long: kept on one line it would leave no room for the label on a phone.
    return element("tr", name, element("td", figure.value, css="amount" if len(figure.value) <= _ONE_LINE else "words"))


def _costs(shown: Sheet) -> None:
    st.subheader("Cost", anchor=False)
    cost_table(shown.cost)


def _later(shown: Sheet) -> None:
    if shown.later:
        st.subheader("What may come later", anchor=False)
        rows = [_room_row(figure) for figure in shown.later]
        show(element("table", element("tbody", *rows), css="sheet-table"))


def _rules(shown: Sheet) -> None:
    st.subheader("Rules, checked again after the search", anchor=False)
    show(element("ul", *(_rule(check) for check in shown.checks), css="rules"))


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


def _downloads(job: Job, result: Result, option: Option) -> None:
    with st.container(horizontal=True):
        st.download_button(
            "Owner's plan as SVG",
            data=lambda: owner_svg(job, result.scenario, option),
            file_name=f"{option.id}-owner.svg",
            mime="image/svg+xml",
            on_click="ignore",
        )
        st.download_button(
            "Designer's plan as SVG",
            data=lambda: job.plan_svg(option.id) or "",
            file_name=f"{option.id}.svg",
            mime="image/svg+xml",
            on_click="ignore",
        )
        st.download_button(
            "All concepts as JSON",
            data=job.result_path.read_bytes,
            file_name="options.json",
            mime="application/json",
            on_click="ignore",
        )
