"""What can be handed over: plans, results, tables and the yard's own file; one by one, or all in one."""

import io
import zipfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Final

import streamlit as st

from optimizer.concepts.future_words import futures_by_name
from optimizer.results.decisions import DecisionRow, decisions_csv
from optimizer.results.estimate_table import estimate_table
from optimizer.results.price_table import price_table
from optimizer.results.revision import revision_note
from ui.components.decisions import decision_list
from ui.components.markup import Markup, element, paragraph, show
from ui.components.pictures import (
    DESIGNER,
    OWNER,
    future_plan_of,
    phase_plans_of,
    phase_strip_of,
    phases_of_concept,
    plan_of,
    small_picture,
)
from ui.components.wishes_form import slug
from ui.decided import decided_between
from ui.searches import Search
from ui.shown import Shown, concepts_of, name_of, shown_by
from ui.state import budgets_search, searching
from ui.store import Finalist
from ui.yards import prices_of

_SVG: Final = "image/svg+xml"
_KINDS: Final = {"json": "application/json", "csv": "text/csv", "svg": _SVG}
_LABELS: Final = {
    "options.json": "All concepts (JSON)",
    "options.csv": "All concepts (CSV)",
    "with-without.csv": "With and without each room (CSV)",
    "budgets.json": "Budgets (JSON)",
    "budgets.csv": "Budgets (CSV)",
    "budgets.svg": "Budgets (SVG)",
}
"""Files of searches that have a button of their own."""


def handover(
    search: Search, concepts: Sequence[Shown], kept: Sequence[Finalist], decided: Sequence[DecisionRow]
) -> None:
    """Offer everything there is of a yard; the finalists' plans, or the first three where nothing was kept yet."""
    chosen = _chosen(concepts, kept)
    st.subheader("Plans", anchor=False)
    paragraph(
        "Of your finalists."
        if kept
        else "Of the first three concepts. Keep finalists under Choose to have theirs here."
    )
    for number, (name, shown) in enumerate(chosen):
        _plans(name, shown, number)
    st.subheader("Results and tables", anchor=False)
    tables = _tables(search, budgets_search(search))
    with st.container(horizontal=True, key="tables"):
        for name in _LABELS:
            if name in tables:
                _file(name, tables[name])
        scenario = concepts[0].scenario
        st.download_button(
            "The yard's file", scenario.text, f"{slug(scenario.name)}.yaml", "text/yaml", on_click="ignore"
        )
    decision_list(decided)
    st.subheader("Everything in one", anchor=False)
    st.download_button(
        "All of it (ZIP)",
        data=lambda: _zip(tables, chosen, decided),
        file_name=f"{slug(scenario.name)}.zip",
        mime="application/zip",
        on_click="ignore",
        type="primary",
        key="zip",
    )


def _chosen(concepts: Sequence[Shown], kept: Sequence[Finalist]) -> list[tuple[str, Shown]]:
    """Names and concepts of the finalists that are there, else of the first three."""
    found = [(each.name, shown_by(name_of(each.search_id, each.concept), searching())) for each in kept]
    finalists = [(name, shown) for name, shown in found if shown is not None]
    return finalists or [(shown.option.title, shown) for shown in concepts[:3]]


def _plans(name: str, shown: Shown, number: int) -> None:
    with st.container(key=f"plans_{number}", horizontal=True, vertical_alignment="center"):
        show(element("div", small_picture(shown), _words(name, shown), css="line"))
        for audience, label in ((OWNER, "Owner's plan"), (DESIGNER, "Designer's plan")):
            st.download_button(
                f"{label} as SVG",
                data=_later(shown, audience == OWNER),
                file_name=_plan_name(shown, audience),
                mime=_SVG,
                on_click="ignore",
                key=f"{audience}_{number}",
            )
        for label, ending, mime, content in _papers(shown):
            st.download_button(
                label,
                data=content,
                file_name=f"{slug(shown.option.title)}-{ending}",
                mime=mime,
                on_click="ignore",
                key=f"{ending}_{number}",
            )


def _papers(shown: Shown) -> Iterator[tuple[str, str, str, Callable[[], str]]]:
    """Label, end of the name, type and content of what a concept has beside its plans, made when it is asked for."""
    yield "Estimate (CSV)", "estimate.csv", "text/csv", lambda: estimate_table(shown.scenario, shown.option)
    if len(phases_of_concept(shown)) > 1:
        yield "Phases (SVG)", "phases.svg", _SVG, lambda: phase_strip_of(shown, OWNER)


def _words(name: str, shown: Shown) -> Markup:
    title = () if name == shown.option.title else (element("p", shown.option.title, css="quiet"),)
    return element("div", element("strong", name), *title)


def _later(shown: Shown, is_owners: bool) -> Callable[[], str]:
    return lambda: plan_of(shown, OWNER if is_owners else DESIGNER)


def _plan_name(shown: Shown, audience: str) -> str:
    return f"{slug(shown.option.title)}-{audience}.svg"


def _tables(search: Search, budgets: Search | None) -> dict[str, bytes]:
    """Results, tables and the picture of budgets by name, as they were kept; plans are drawn anew."""
    found = (search,) if budgets is None else (search, budgets)
    names = {name: each for each in found for name in each.file_names if _is_table(name)}
    contents = ((name, each.file(name)) for name, each in names.items())
    return {name: content for name, content in contents if content is not None}


def _is_table(name: str) -> bool:
    return name.endswith((".json", ".csv")) or name == "budgets.svg"


def _file(name: str, content: bytes) -> None:
    mime = _KINDS[name.rpartition(".")[2]]
    st.download_button(_LABELS[name], content, name, mime, on_click="ignore", key=f"file_{name}")


def _zip(
    tables: Mapping[str, bytes], chosen: Sequence[tuple[str, Shown]], decided: Sequence[DecisionRow] = ()
) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as file:
        for name, content in tables.items():
            file.writestr(name, content)
        for number, (_, shown) in enumerate(chosen, start=1):
            for audience in (OWNER, DESIGNER):
                file.writestr(f"plans/{number}-{_plan_name(shown, audience)}", plan_of(shown, audience))
            for name, text in _more_of(shown):
                file.writestr(f"{number}-{slug(shown.option.title)}/{name}", text)
        if chosen:
            scenario = chosen[0][1].scenario
            file.writestr("yard.yaml", scenario.text)
            file.writestr("decisions.csv", decisions_csv(decided))
            if note := _note(chosen[0][1]):
                file.writestr("revision-note.txt", note)
            if prices_of(scenario) is not None:
                file.writestr("prices.csv", price_table(scenario.book))
    return packed.getvalue()


def _note(shown: Shown) -> str:
    """What became of the first concept of the search that this one's went on from, with what was decided in between;
    nothing where it began anew.
    """
    earlier = searching().get(shown.search.record.start_from)
    before = concepts_of(earlier) if earlier is not None else ()
    if not before:
        return ""
    return revision_note(shown.scenario, before[0].option, shown.option, decided_between(before[0], shown))


def _more_of(shown: Shown) -> Iterator[tuple[str, str]]:
    """Estimate of a concept, the plan after each of its phases, and of what may come later, for a designer."""
    yield "estimate.csv", estimate_table(shown.scenario, shown.option)
    for phase, plan in phase_plans_of(shown, DESIGNER).items():
        yield f"phase-{phase}.svg", plan
    for name, outlook in futures_by_name(shown.option).items():
        yield f"later-{slug(name)}.svg", future_plan_of(shown, outlook, DESIGNER, whole=True)
