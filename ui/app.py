"""The frame of the page: its name, its icon, its looks, and the page itself."""

from pathlib import Path

import streamlit as st

from ui.components import page_style
from ui.steps import yard_page

st.set_page_config(
    page_title="Outdoor room concepts",
    page_icon=str(Path(__file__).parent / "assets" / "icon.png"),
    layout="wide",
    initial_sidebar_state="collapsed",
)
page_style()
st.navigation([st.Page(yard_page, title="Concepts", default=True)], position="hidden").run()
