"""Markup from words: whatever comes from a file is escaped here, and nowhere is it put on the page otherwise."""

import re
from base64 import b64encode
from collections.abc import Iterable
from html import escape
from typing import Final

import streamlit as st

from optimizer.errors import InputError
from ui.view_models import Figure

_MARKS: Final = re.compile(r"([\\`*_{}\[\]()<>#+\-.!|~$]|:(?=\S))")
"""What the page library takes for marks of its own in labels, titles and messages."""


class Markup(str):
    """Text that is markup already, made by `element`."""

    __slots__ = ()


def element(tag: str, *children: str, css: str = "", **attributes: str) -> Markup:
    """One element; children that are no Markup are escaped, as are the attributes."""
    named = {"class": css, **attributes} if css else attributes
    words = "".join(f' {name}="{escape(value)}"' for name, value in named.items())
    inner = "".join(child if isinstance(child, Markup) else escape(child) for child in children)
    return Markup(f"<{tag}{words}>{inner}</{tag}>")


def image(svg: str, *, words: str) -> Markup:
    """Show a drawing as a picture: inside one, no script runs and nothing is fetched. `words` say what it shows."""
    data = b64encode(svg.encode()).decode()
    return Markup(f'<img alt="{escape(words)}" src="data:image/svg+xml;base64,{data}">')


def show(*parts: Markup) -> None:
    """Put markup on the page."""
    st.html("".join(parts))


def paragraph(text: str, *, css: str = "quiet") -> None:
    """Put a paragraph of plain words on the page."""
    show(element("p", text, css=css))


def figure_list(figures: Iterable[Figure]) -> Markup:
    """Figures side by side, each with its label above and what it means below."""
    terms = (
        element("div", element("dt", figure.label), element("dd", figure.value, element("small", figure.meaning)))
        for figure in figures
    )
    return element("dl", *terms, css="figures")


def problem_list(said: InputError | Iterable[str]) -> None:
    """Put problems on the page, one a line: those of an input, or what was said."""
    problems = map(str, said.problems) if isinstance(said, InputError) else said
    show(element("ul", *(element("li", problem) for problem in problems), css="problems"))


def plain(text: str) -> str:
    """Give text for a label, title or message of the page library, in which nothing is taken for a mark."""
    return _MARKS.sub(r"\\\1", text)
