"""The looks of the page, over those of the theme."""

from pathlib import Path
from typing import Final

import streamlit as st

_STYLE: Final = Path(__file__).parents[1] / "assets" / "page.css"


def page_style() -> None:
    """Put the page's style sheet in place."""
    st.html(_STYLE)
