"""What you would miss most: two things at a time, what follows from the answers, and the worths that they make."""

from collections.abc import Callable, Sequence
from typing import Final

import streamlit as st

from optimizer.scenario import Scenario
from optimizer.worths import (
    HOWS,
    Answer,
    How,
    Thing,
    contradiction,
    decided,
    fitted,
    most_useful,
    things_of,
)
from ui.components.markup import element, paragraph, plain, show
from ui.edits import worth_changes
from ui.state import store
from ui.store import Revision

_BUTTONS: Final[dict[How, str]] = {
    "much_one": "{one}, much more",
    "one": "{one}",
    "same": "about the same",
    "other": "{other}",
    "much_other": "{other}, much more",
}
_ANSWERED: Final[dict[How, str]] = {
    "much_one": "{one} much more than {other}",
    "one": "{one} more than {other}",
    "same": "{one} and {other} about the same",
    "other": "{other} more than {one}",
    "much_other": "{other} much more than {one}",
}
Take = Callable[[Sequence[Thing], Sequence[float], str], None]


def worths_form(revision: Revision, scenario: Scenario, take: Take) -> None:
    """Ask about one pair at a time; `take` is given things, their worths and what changes, once a person takes them."""
    things = things_of(scenario.brief)
    answers = store().answers.of_revision(revision)
    paragraph(
        "Two things at a time: which would you miss more? From what you say follows how much each counts when not "
        "everything fits the limit."
    )
    worths = fitted(things, answers)
    if worths is None:
        _contradicted(revision, things, answers)
    else:
        _next_pair(revision, things, answers)
        _ranked(things, worths, answers, take)
    _said(revision, answers)


def _next_pair(revision: Revision, things: Sequence[Thing], answers: Sequence[Answer]) -> None:
    pair = most_useful(things, answers)
    if pair is None:
        paragraph("Nothing is left to ask: the order of all follows from what you said.", css="lead")
        return
    one, other = (thing.name for thing in pair)
    paragraph(f"Which would you miss more: {one}, or {other}?", css="lead")
    with st.container(key="pair", gap="small"):
        for how in HOWS:
            words = plain(_BUTTONS[how].format(one=one, other=other))
            st.button(
                words, key=f"miss_{how}", on_click=_give, args=(revision, Answer(one, other, how)), width="stretch"
            )


def _give(revision: Revision, answer: Answer) -> None:
    store().answers.give(revision, answer)


def _take_back(revision: Revision, answer: Answer) -> None:
    store().answers.take_back(revision, answer)


def _contradicted(revision: Revision, things: Sequence[Thing], answers: Sequence[Answer]) -> None:
    """Name the answers that cannot hold together, each with a way to take it back."""
    found = contradiction(things, answers)
    assert found is not None
    st.error(plain(f"These answers cannot hold together. {found.words} Take one of them back."))
    _listed(revision, tuple(dict.fromkeys(found.answers)), "instead")


def _said(revision: Revision, answers: Sequence[Answer]) -> None:
    if answers:
        st.markdown("**What you said**")
    _listed(revision, answers, "take_back")


def _listed(revision: Revision, answers: Sequence[Answer], key: str) -> None:
    for number, answer in enumerate(answers):
        with st.container(
            horizontal=True, vertical_alignment="center", horizontal_alignment="distribute", key=f"{key}_row_{number}"
        ):
            with st.container(width="content"):
                paragraph(_ANSWERED[answer.how].format(one=answer.one, other=answer.other), css="held")
            st.button("Take back", key=f"{key}_{number}", on_click=_take_back, args=(revision, answer))


def _ranked(things: Sequence[Thing], worths: Sequence[float], answers: Sequence[Answer], take: Take) -> None:
    """Show the order so far, most missed first, and offer to take it."""
    if not answers:
        return
    known, pairs = decided(things, answers)
    paragraph(f"What you would miss most comes first. Of {pairs} pairs, {known} follow from what you said.")
    order = sorted(zip(things, worths, strict=True), key=lambda one: -one[1])
    rows = (
        element("tr", element("th", thing.name, scope="row"), element("td", _points(thing, worth)))
        for thing, worth in order
    )
    show(element("table", element("tbody", *rows), css="sheet-table facts"))
    what = worth_changes(things, worths)
    if not what:
        paragraph("The file says the same already.")
    elif st.button("Take these", key="take_worths"):
        take(things, worths, what)


def _points(thing: Thing, worth: float) -> str:
    return f"{worth:g} points" if worth == thing.worth else f"{worth:g} points, was {thing.worth:g}"
