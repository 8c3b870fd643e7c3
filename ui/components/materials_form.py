"""Your yard: the materials that are compared for the ground, and those that the concepts are made in."""

from typing import Final

import streamlit as st

from optimizer.brief import Brief, FinishLevel
from optimizer.catalogue import palette_of, usual_level, usual_levels
from ui.components.markup import paragraph, plain
from ui.edits import Wanted
from ui.view_models import capital, listed

_FIRST: Final = "good"
"""Level that concepts are made in at first, where it is among those that are compared."""


def materials_form(brief: Brief, was: Wanted, key: str) -> tuple[tuple[str, ...], str | None]:
    """Ask which levels are compared, and in which concepts are made; nothing where the file has a field of its own."""
    if not was.levels and brief.finish.field is not None:
        return was.levels, was.level
    st.subheader("Materials", anchor=False)
    known = _known(brief)
    compared = st.pills(
        "Materials of the ground to compare",
        [*known],
        selection_mode="multi",
        default=was.levels,
        format_func=lambda name: plain(capital(name)),
        key=f"levels_{key}",
        help="What each budget buys chooses between them: better materials, or one more room. Every concept says what "
        "it would cost in each.",
    )
    paragraph(f"{capital(listed([_named(level) for level in known.values()]))}.", css="quiet")
    levels = tuple(name for name in known if name in compared)
    return levels, _level(levels, was, key) if levels else None


def _level(levels: tuple[str, ...], was: Wanted, key: str) -> str | None:
    """Ask which of the levels concepts are made in."""
    usual = _FIRST if _FIRST in levels else levels[0]
    first = was.level if was.level in levels or levels == was.levels else usual
    chosen: str | None = st.segmented_control(
        "Make the concepts in",
        levels,
        default=first,
        format_func=lambda name: plain(capital(name)),
        key=f"level_{'_'.join(levels)}_{key}",
        required=first is not None,
    )
    return chosen


def _known(brief: Brief) -> dict[str, FinishLevel]:
    """Levels by name, in the order of the file, and then the usual ones that it has not."""
    usual = [level for name in usual_levels() if (level := usual_level(name)) is not None]
    own = {level.name: level for level in brief.finish_levels}
    return {**own, **{level.name: level for level in usual if level.name not in own}}


def _named(level: FinishLevel) -> str:
    return f"{level.name} is {palette_of(level.finish).field.material}"
