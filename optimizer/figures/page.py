"""A figure as a page that stands alone: everything in one file, nothing asked of the outside."""

from typing import Any, Final

import plotly.graph_objects as go

TOOLBAR: Final[dict[str, Any]] = {"displaylogo": False, "modeBarButtonsToRemove": ["sendChartToCloud"]}
"""The figure's own buttons, without the one that would send it away."""


def figure_html(figure: go.Figure) -> str:
    """Write a figure as one HTML page of about 5 MB that works offline."""
    return str(figure.to_html(include_plotlyjs=True, full_html=True, config=TOOLBAR))
