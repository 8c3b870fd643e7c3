"""Figures that can be turned: the yard in three dimensions. The only folder that knows the figure library."""

from optimizer.figures.page import TOOLBAR, figure_html
from optimizer.figures.yard import yard_3d

__all__ = ["TOOLBAR", "figure_html", "yard_3d"]
