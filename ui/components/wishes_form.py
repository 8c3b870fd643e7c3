"""Your yard: the limit, the guests, what each room is, what counts how much, the file; then search on."""

from collections.abc import Sequence
from decimal import Decimal
from typing import Final

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from optimizer.errors import InputError
from optimizer.scenario import Scenario, scenario_notes
from optimizer.worths import Thing
from ui.components.decisions import reason_asked
from ui.components.markup import element, paragraph, plain, problem_list, show
from ui.components.materials_form import materials_form
from ui.components.pictures import yard_picture
from ui.components.search_start import begin_search, seconds_asked
from ui.components.versions import versions
from ui.components.worths_form import worths_form
from ui.edits import (
    AMOUNTS,
    STANDING_NAMES,
    STANDINGS,
    WEIGHT_NAMES,
    Standing,
    Wanted,
    amount_words,
    changed,
    wanted_of,
    with_worths,
)
from ui.searches import Search
from ui.state import current_search, go_on_with, is_for_designer, searching, store, take_up_search, tell_once
from ui.store import Decision, Revision, Saved
from ui.view_models import all_wishes, capital, listed, scenario_summary, words_of
from ui.yards import scenario_of

_LIMIT_STEP: Final = 1000
_BESIDE: Final = (
    "Somebody else, or another tab, went on from the same version: {}. Yours stands beside it, and nothing is lost."
)


def wishes_form(revision: Revision, scenario: Scenario) -> None:
    """Show what is asked of a yard, with the yard beside it."""
    form, beside = st.columns([9, 7], gap="large")
    with form:
        limits, together = st.container(), st.container()
        text, what = _answers(revision, scenario, limits)
        asked = _asked(revision, scenario, text, what)
        with together:
            _all_wishes(asked)
        _missed(revision, scenario, text, what)
        _next(revision, text, what, asked)
    with beside:
        show(element("div", yard_picture(scenario), css="plan"))
        _facts(scenario)
        _file(revision, scenario)
        with st.expander("Versions of this yard"):
            versions(revision)


def _asked(revision: Revision, scenario: Scenario, text: str, what: str) -> Scenario | InputError:
    """The yard with the answers as they are, or what is wrong with it."""
    try:
        return scenario_of(revision, text, "your answers") if what else scenario
    except InputError as error:
        return error


def _all_wishes(asked: Scenario | InputError) -> None:
    """Say below the limit what all wishes cost together."""
    if isinstance(asked, Scenario):
        said, is_over = all_wishes(asked, for_designer=is_for_designer())
        paragraph(said, css="over" if is_over else "quiet")


def _answers(revision: Revision, scenario: Scenario, limits: DeltaGenerator) -> tuple[str, str]:
    """Ask, in `limits` for limit and guests, and return the text after the answers with what changed in words."""
    was = wanted_of(scenario.brief)
    key = str(revision.id)
    limit, usual, party = limits.columns(3)
    ceiling = limit.number_input(
        f"{_limit_name(scenario)} ({scenario.currency})",
        min_value=0,
        max_value=1_000_000_000,
        value=None if was.ceiling is None else int(was.ceiling),
        step=_LIMIT_STEP,
        key=f"ceiling_{key}",
        placeholder="none",
        help="The most that what is built now may cost, with a sum for surprises. Empty: none.",
    )
    everyday = usual.number_input("Guests on a usual day", 1, 1000, was.everyday, key=f"everyday_{key}")
    guests = party.number_input("Guests at a party", 1, 1000, was.party, key=f"party_{key}")
    standings = _rooms(scenario, was, key)
    levels, level = materials_form(scenario.brief, was, key)
    with st.expander("What counts how much"):
        weights = tuple((name, _weight(name, weight, key)) for name, weight in was.weights)
    same = was.ceiling is not None and ceiling == int(was.ceiling)
    wanted = Wanted(
        ceiling=was.ceiling if same else None if ceiling is None else Decimal(ceiling),
        everyday=int(everyday),
        party=int(guests),
        standings=standings,
        weights=weights,
        levels=levels,
        level=level,
    )
    return changed(scenario, wanted)


def _missed(revision: Revision, scenario: Scenario, text: str, what: str) -> None:
    """Ask what would be missed most; what is taken is saved with the other answers of the form."""

    def take(things: Sequence[Thing], worths: Sequence[float], changes: str) -> None:
        taken = with_worths(text, things, worths)
        if not _told(revision, taken):
            saved_as(revision, taken, "; ".join(filter(None, (what, changes))))
            st.rerun()

    with st.expander("What you would miss most"):
        worths_form(revision, scenario, take)


def _limit_name(scenario: Scenario) -> str:
    return capital(words_of(scenario, for_designer=is_for_designer()).term("ceiling"))


def _rooms(scenario: Scenario, was: Wanted, key: str) -> tuple[Standing, ...]:
    """Ask of each room whether it must be, is liked, or comes later."""
    st.subheader("Rooms", anchor=False)
    answers: list[Standing] = []
    with st.container(key="standings", gap=None):
        for index, (room, standing) in enumerate(zip(scenario.brief.rooms, was.standings, strict=True)):
            answer = st.segmented_control(
                plain(capital(room.name)),
                STANDINGS,
                default=standing,
                format_func=STANDING_NAMES.__getitem__,
                key=f"standing_{index}_{key}",
                required=True,
            )
            answers.append(answer or standing)
    return tuple(answers)


def _weight(name: str, weight: float, key: str) -> float:
    return float(
        st.segmented_control(
            capital(WEIGHT_NAMES[name]),
            sorted({*AMOUNTS, weight}),
            default=weight,
            format_func=amount_words,
            key=f"{name}_{key}",
            required=True,
        )
        or 0.0
    )


def _next(revision: Revision, text: str, what: str, asked: Scenario | InputError) -> None:
    """Say what changed, and offer to search or to save."""
    if isinstance(asked, InputError):
        st.error("So it cannot be searched. What is wrong:")
        problem_list(asked)
        return
    if what:
        paragraph(f"Changed: {what}.", css="lead")
    earlier = current_search(revision)
    goes_on = earlier is not None and st.checkbox(
        "Go on from the concepts that were found before",
        value=True,
        key="goes_on",
        help="They are mended where they must be.",
    )
    reason = reason_asked(f"wishes_{revision.id}") if what else ""
    seconds = seconds_asked()
    with st.container(horizontal=True):
        is_search = st.button("Find concepts", type="primary", key="find")
        is_save = st.button("Save without searching", key="save", disabled=not what)
    if is_search or is_save:
        saved = saved_as(revision, text, what, reason) if what else revision
        if is_save:
            st.rerun()
        search_from(saved, seconds, earlier if goes_on else None)


def _error_in(revision: Revision, text: str) -> InputError | None:
    try:
        scenario_of(revision, text, "your answers")
    except InputError as error:
        return error
    return None


def saved_as(revision: Revision, text: str, what: str, reason: str = "") -> Revision:
    """Save a further version and why it was made, go on with it, and say so where it stands beside another one."""
    saved: Saved = store().revisions.save(revision, text, what)
    store().decisions.add(Decision(revision.yard_id, saved.revision.id, saved.revision.what, reason))
    go_on_with(saved.revision)
    if saved.beside:
        tell_once(_BESIDE.format(listed([plain(other.what) for other in saved.beside])))
    return saved.revision


def search_from(revision: Revision, seconds: float, earlier: Search | None) -> None:
    """Search for concepts of a version, from those of an earlier search if one is given."""
    begin_search(lambda: searching().start(revision, seconds=seconds, start_from=earlier), take_up_search)


def _facts(scenario: Scenario) -> None:
    shown = scenario_summary(scenario, for_designer=is_for_designer())
    rows = (element("tr", element("th", label, scope="row"), element("td", text)) for label, text in shown.lines)
    with st.expander("The yard in words"):
        show(element("table", element("tbody", *rows), css="sheet-table facts"))
        notes = scenario_notes(scenario)
        show(element("ul", *(element("li", note) for note in notes), css="quiet"))


def _file(revision: Revision, scenario: Scenario) -> None:
    with st.expander("The file"):
        paragraph("All that is known of the yard. What you write here is read by the program before it counts.")
        text = st.text_area(
            "The file", scenario.text, height=320, key=f"file_{revision.id}", label_visibility="collapsed"
        )
        with st.container(horizontal=True):
            use = st.button("Save this text", key="save_text", disabled=text == scenario.text)
            st.download_button("Download", scenario.text, f"{slug(scenario.name)}.yaml", "text/yaml", on_click="ignore")
        if use and not _told(revision, text):
            saved_as(revision, text, "The file was changed")
            st.rerun()


def _told(revision: Revision, text: str) -> bool:
    """Whether the text has problems, which are then shown."""
    error = _error_in(revision, text)
    if error:
        st.error("This text cannot be used yet, line by line:")
        problem_list(error)
    return error is not None


def slug(name: str) -> str:
    """Name of a file that is made from a name of a yard."""
    return "-".join("".join(letter if letter.isalnum() else " " for letter in name.lower()).split()) or "yard"
