"""What an opened concept says beyond its verdict, in parts of which one is shown: the address names it."""

from collections.abc import Callable, Mapping

import streamlit as st

from ui.components.cost_table import cost_summary, cost_table
from ui.components.markup import Markup, element, figure_list, paragraph, show
from ui.shown import Shown
from ui.state import current_part, is_for_designer, show_part
from ui.view_models import Answer, Check, Figure, Sheet, answers

_ONE_LINE = 18
"""Characters of a figure that stay on one line."""


def concept_parts(told: Sheet, shown: Shown) -> None:
    """Show the part that is chosen: at first the broken rules where there are any, else what owners ask."""
    parts = _parts(told, shown)
    usual = next(iter(parts)) if all(check.is_kept for check in told.checks) else "Rules"
    named = current_part()
    st.session_state["part"] = named if named in parts else usual
    part = st.segmented_control(
        "More about this concept",
        [*parts],
        key="part",
        required=True,
        on_change=lambda: show_part(st.session_state["part"]),
        label_visibility="collapsed",
        wrap=True,
    )
    with st.container(key="concept_part"):
        parts[part or usual]()


def _parts(told: Sheet, shown: Shown) -> Mapping[str, Callable[[], None]]:
    """What can be shown, by its name; what may come later only where there is something."""
    parts: dict[str, Callable[[], None]] = {
        "What owners ask": lambda: _answers(_answers_of(shown)),
        "Rooms": lambda: _rooms(told),
        "Money": lambda: _costs(told),
    }
    if told.later:
        parts["Later"] = lambda: _later(told)
    return parts | {
        "Before you build": lambda: _cautions(told),
        "Rules": lambda: _rules(told),
        "All figures": lambda: _measured(told),
    }


def _answers_of(shown: Shown) -> tuple[Answer, ...]:
    return answers(shown.option, shown.result.option_set, shown.scenario, for_designer=is_for_designer())


def _answers(told: tuple[Answer, ...]) -> None:
    parts = (element("div", element("dt", each.question), element("dd", each.answer)) for each in told)
    show(element("dl", *parts, css="answers"))


def _measured(shown: Sheet) -> None:
    """Show all that was measured, by what it is about."""
    rows = []
    for group in shown.groups:
        rows.append(element("tr", element("th", group.heading, colspan="2", scope="rowgroup"), css="group"))
        rows += [_room_row(figure) for figure in group.figures]
    paragraph(shown.paragraph, css="lead")
    show(figure_list(shown.figures), element("table", element("tbody", *rows), css="sheet-table"))


def _rooms(shown: Sheet) -> None:
    """Show the rooms with their sizes, and what is left out, with why."""
    for figure in shown.left_out:
        show(element("p", element("strong", f"Without {figure.label}"), f": {figure.value}", css="without"))
    rows = [_room_row(figure) for figure in shown.rooms]
    show(element("table", element("tbody", *rows), css="sheet-table"))
    if shown.wishes_missed:
        paragraph(f"Wishes not kept: {'; '.join(shown.wishes_missed)}.")


def _room_row(figure: Figure) -> Markup:
    name = element("th", figure.label, element("small", figure.meaning), scope="row")
    # A name may be long: kept on one line it would leave no room for the label on a phone.
    return element("tr", name, element("td", figure.value, css="amount" if len(figure.value) <= _ONE_LINE else "words"))


def _costs(shown: Sheet) -> None:
    cost_summary(shown.cost)
    with st.expander("Every line, and the quantities behind it"):
        cost_table(shown.cost)


def _later(shown: Sheet) -> None:
    rows = [_room_row(figure) for figure in shown.later]
    show(element("table", element("tbody", *rows), css="sheet-table"))


def _rules(shown: Sheet) -> None:
    """Show the rules, broken ones first, and the proof."""
    broken = sum(not check.is_kept for check in shown.checks)
    paragraph(f"Checked again after the search: {f'{broken} broken' if broken else 'all kept'}.")
    in_order = sorted(shown.checks, key=lambda check: check.is_kept)
    show(element("div", shown.proof, css="proof"), element("ul", *map(_rule, in_order), css="rules"))


def _rule(check: Check) -> Markup:
    mark = element("span", "kept", css="kept") if check.is_kept else element("span", "broken", css="broken")
    return element("li", mark, element("span", f"{check.sentence} {check.words}".strip()))


def _cautions(shown: Sheet) -> None:
    if shown.cautions:
        show(element("div", *(element("p", caution) for caution in shown.cautions), css="caution"))
    if shown.permits:
        st.subheader("Permits and approvals to ask about", anchor=False)
        show(element("ul", *(element("li", permit) for permit in shown.permits)))
    if shown.remedies:
        st.subheader("Could be added", anchor=False)
        show(element("ul", *(element("li", remedy) for remedy in shown.remedies)))
