"""The start: choose a scenario, see what was read of it, and let the search begin."""

from collections.abc import Mapping
from pathlib import Path
from typing import Final

import streamlit as st

from optimizer.errors import ScenarioError
from optimizer.scenario import Scenario, load_scenario, read_scenario, scenario_notes
from ui.components.markup import element, paragraph, problem_list, show
from ui.components.pictures import yard_picture
from ui.components.search_start import begin_search
from ui.state import job_table, scenario_argument, take_up
from ui.view_models import scenario_summary

LARGEST_BYTES: Final = 1_000_000
_DEMONSTRATIONS: Final = Path(__file__).parents[2] / "scenarios"
_OWN_FILE: Final = "A file of mine"
_SECONDS: Final = (10, 20, 60, 180)


def scenario_choice() -> None:
    """Show the start; the search that it starts becomes the one of this session."""
    left, right = st.columns([5, 11], gap="large")
    try:
        with left:
            scenario = _chosen()
    except ScenarioError as error:
        with right:
            _problems(error)
        return
    if scenario is None:
        return
    with right:
        about, picture = st.columns([3, 2], gap="large")
    with about:
        _summary(scenario)
        _start(scenario)
        _details(scenario)
    with picture:
        show(element("div", yard_picture(scenario), css="plan"))


def _chosen() -> Scenario | None:
    st.subheader("Which yard?", anchor=False)
    files = _files()
    name = st.radio("Scenario", [*files, _OWN_FILE], label_visibility="collapsed", key="scenario_name")
    paragraph("Demonstration yards, with their families and prices, are invented.")
    return _uploaded() if name == _OWN_FILE else load_scenario(files[name])


def _problems(error: ScenarioError) -> None:
    count = len(error.problems)
    st.error(f"This scenario cannot be used yet: {count} problem{'' if count == 1 else 's'}, line by line.")
    problem_list(tuple(str(problem) for problem in error.problems))


def _files() -> Mapping[str, Path]:
    given = scenario_argument()
    demonstrations = {path.stem.replace("-", " ").title(): path for path in sorted(_DEMONSTRATIONS.glob("*.yaml"))}
    return {f"Given: {given.name}": given, **demonstrations} if given else demonstrations


def _uploaded() -> Scenario | None:
    file = st.file_uploader(
        "Scenario file (YAML or JSON, at most 1 MB)", type=["yaml", "yml", "json"], max_upload_size=1
    )
    if file is None:
        return None
    if file.size > LARGEST_BYTES:
        st.error(
            f"Expected a file of at most 1 MB, found {file.size / 1e6:.1f} MB; take out what does not belong in it."
        )
        return None
    try:
        return read_scenario(file.getvalue().decode("utf-8-sig"), file.name)
    except UnicodeDecodeError:
        st.error("Expected text in UTF-8, found something else; save the file as UTF-8 text.")
        return None


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
    seconds = st.segmented_control(
        "Time to search", _SECONDS, default=20, format_func=lambda seconds: f"{seconds} s", key="seconds", required=True
    )
    if st.button("Find concepts", type="primary", key="find"):
        begin_search(lambda: job_table().start(scenario.text, seconds=float(seconds or 20)), take_up)
