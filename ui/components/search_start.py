"""Beginning a search, or saying why not now."""

from collections.abc import Callable

import streamlit as st

from ui.jobs import BusyError, Job


def begin_search(start: Callable[[], Job], take_up: Callable[[Job], None]) -> None:
    """Start a search and draw the page anew with it; say so where as many run as this computer may run."""
    try:
        take_up(start())
    except BusyError:
        st.warning("Other searches are running on this computer; try again when one of them has ended.")
    else:
        st.rerun()
