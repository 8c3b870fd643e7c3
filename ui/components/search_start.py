"""Beginning a search, or saying why not now."""

from collections.abc import Callable
from typing import Final

import streamlit as st

from ui.jobs import BusyError
from ui.searches import Search

SECONDS: Final = (10, 20, 60, 180)
USUAL_S: Final = 20.0


def begin_search(start: Callable[[], Search], take_up: Callable[[Search], None]) -> None:
    """Start a search and draw the page anew with it; say so where as many run as this computer may run."""
    try:
        take_up(start())
    except BusyError:
        st.warning("Other searches are running on this computer; try again when one of them has ended.")
    else:
        st.rerun()


def seconds_asked() -> float:
    """Ask how long a search may take [s]."""
    seconds = st.segmented_control(
        "Time to search",
        SECONDS,
        default=int(USUAL_S),
        format_func=lambda seconds: f"{seconds} s",
        key="seconds",
        required=True,
    )
    return float(seconds or USUAL_S)
