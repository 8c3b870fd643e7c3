"""The start: open a yard from a file, a result, or from the work that is kept; then search, or change it first."""

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import Final

import streamlit as st

from optimizer.drawing.words import moment_text
from optimizer.errors import InputError
from optimizer.results import result_of
from optimizer.scenario import Scenario, load_scenario, read_scenario, scenario_notes
from ui.components.markup import element, paragraph, plain, problem_list, show
from ui.components.pictures import yard_picture
from ui.components.search_start import begin_search, seconds_asked
from ui.searches import Search
from ui.state import scenario_argument, searching, store, take_up, take_up_search
from ui.store import Revision, Yard
from ui.view_models import scenario_summary
from ui.yards import named_prices, prices_of, read_with_prices

LARGEST_BYTES: Final = 1_000_000
LARGEST_RESULT_BYTES: Final = 5_000_000
_DEMONSTRATIONS: Final = Path(__file__).parents[2] / "scenarios"
_OWN_FILE: Final = "A file of mine"
_RESULT: Final = "A result of an earlier search"
MOST_KEPT: Final = 12


def scenario_choice() -> None:
    """Show the start; what is opened becomes the yard of this page."""
    left, right = st.columns([5, 11], gap="large")
    try:
        with left:
            scenario = _chosen()
            _kept()
    except InputError as error:
        with right:
            _problems(error)
        return
    if scenario is not None:
        about, picture = right.columns([3, 2], gap="large")
        with about:
            _summary(scenario)
            _start(scenario)
            _details(scenario)
        with picture:
            show(element("div", yard_picture(scenario), css="plan"))


def _chosen() -> Scenario | None:
    st.subheader("Which yard?", anchor=False)
    files = _files()
    name = st.radio("Scenario", [*files, _OWN_FILE, _RESULT], label_visibility="collapsed", key="scenario_name")
    paragraph("Demonstration yards, with their families and prices, are invented.")
    if name == _RESULT:
        _open_result()
        return None
    return _uploaded() if name == _OWN_FILE else load_scenario(files[name])


def _files() -> Mapping[str, Path]:
    given = scenario_argument()
    demonstrations = {path.stem.replace("-", " ").title(): path for path in sorted(_DEMONSTRATIONS.glob("*.yaml"))}
    return {f"Given: {given.name}": given, **demonstrations} if given else demonstrations


def _kept() -> None:
    """Show the yards that were worked on, the last one first."""
    yards = store().revisions.yards()
    if yards:
        st.subheader("Go on with", anchor=False)
        with st.container(key="kept_yards", gap=None):
            for yard in yards[:MOST_KEPT]:
                revision_id = yard.newest_id
                st.button(
                    _kept_words(yard), key=f"kept_{revision_id}", on_click=_go_on, args=(revision_id,), type="tertiary"
                )


def _kept_words(yard: Yard) -> str:
    changed = moment_words(yard.changed_at)
    versions = f"{yard.versions} versions, " if yard.versions > 1 else ""
    return f"{plain(yard.name)} ({versions}{changed})"


def moment_words(seconds: float) -> str:
    """Say a moment, in seconds since 1970, by the clock of this computer."""
    return moment_text(datetime.fromtimestamp(seconds))  # noqa: DTZ006


def _go_on(revision_id: int) -> None:
    revision = store().revisions.get(revision_id)
    if revision is not None:
        take_up(revision, "choose" if searching().newest(revision) else "yard")


def _problems(error: InputError) -> None:
    count = len(error.problems)
    st.error(f"This file cannot be used yet: {count} problem{'' if count == 1 else 's'}, line by line.")
    problem_list(error)


def _uploaded() -> Scenario | None:
    data = _upload("Scenario file (YAML or JSON, at most 1 MB)", ["yaml", "yml", "json"], LARGEST_BYTES)
    if data is None:
        return None
    book = _upload("Price book, if it has its own (CSV, YAML or JSON)", ["csv", "yaml", "yml", "json"], LARGEST_BYTES)
    try:
        text, name = _text(data)
        named = named_prices(text, name)
        if book is not None:
            return read_with_prices(text, name, *_text(book))
        if named is None:
            return read_scenario(text, name)
    except UnicodeDecodeError:
        st.error("Expected text in UTF-8, found something else; save the file as UTF-8 text.")
        return None
    paragraph(f"{name} has prices of its own, in {named}. Add that file as well.", css="lead")
    return None


def _text(data: tuple[bytes, str]) -> tuple[str, str]:
    """Text and name of a file."""
    content, name = data
    return content.decode("utf-8-sig").replace("\r\n", "\n"), name


def _open_result() -> None:
    data = _upload("Result (options.json, at most 5 MB)", ["json"], LARGEST_RESULT_BYTES)
    if data is None:
        return
    content, name = data
    result = result_of(content, name)
    count = len(result.option_set.concepts)
    paragraph(f"{result.scenario.name}: {count} concept{'' if count == 1 else 's'}.", css="lead")
    if st.button("Open this result", type="primary", key="open_result"):
        revision = _opened(result.scenario)
        search = searching().opened(revision, content)
        take_up(revision)
        take_up_search(search)
        st.rerun()


def _upload(label: str, kinds: list[str], most: int) -> tuple[bytes, str] | None:
    file = st.file_uploader(label, type=kinds, max_upload_size=most // 1_000_000)
    if file is None:
        return None
    if file.size > most:
        found = f"{file.size / 1e6:.1f} MB"
        st.error(
            f"Expected a file of at most {most // 1_000_000} MB, found {found}; take out what does not belong in it."
        )
        return None
    return file.getvalue(), file.name


def _summary(scenario: Scenario) -> None:
    shown = scenario_summary(scenario)
    show(element("h2", shown.name, css="name"))
    rows = (element("tr", element("th", label, scope="row"), element("td", text)) for label, text in shown.lines)
    show(element("table", element("tbody", *rows), css="sheet-table facts"))


def _details(scenario: Scenario) -> None:
    notes = scenario_notes(scenario)
    if notes:
        with st.expander("What to know of this file"):
            show(element("ul", *(element("li", note) for note in notes), css="quiet"))
    with st.expander("The file as read"):
        st.code(scenario.text, language="yaml", height=320)


def _start(scenario: Scenario) -> None:
    seconds = seconds_asked()
    with st.container(horizontal=True):
        is_search = st.button("Find concepts", type="primary", key="find")
        st.button("Change wishes first", key="open_yard", on_click=_change_first, args=(scenario,))
    if is_search:
        revision = _opened(scenario)
        begin_search(lambda: searching().start(revision, seconds=seconds), lambda found: _taken_up(revision, found))


def _change_first(scenario: Scenario) -> None:
    take_up(_opened(scenario))


def _taken_up(revision: Revision, found: Search) -> None:
    take_up(revision)
    take_up_search(found)


def _opened(scenario: Scenario) -> Revision:
    return store().revisions.open(scenario.name, scenario.text, prices_of(scenario))
