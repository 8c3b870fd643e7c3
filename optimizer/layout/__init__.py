"""Where every chosen room stands: answers in feet, no opinions."""

from optimizer.layout.arrangement import Arrangement, arrangement_of, difference
from optimizer.layout.placement import Front, Layout, Placement

__all__ = ["Arrangement", "Front", "Layout", "Placement", "arrangement_of", "difference"]
