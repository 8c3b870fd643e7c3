"""Quantities as an estimator counts them: what each priced line consists of, and what comes beside rooms and ways."""

from optimizer.quantities.extras import POOR_ACCESS, RETURN, Extra, extra_charges, extras_of, later_phases, poor_access
from optimizer.quantities.figures import BuildUp, Figure, build_up, figure
from optimizer.quantities.machine_way import hard_to_reach, is_closed_to_machines, way_ft
from optimizer.quantities.part import Counted, Line, Part
from optimizer.quantities.paving import layer_cuyd
from optimizer.quantities.services import nearest_start, run_ft
from optimizer.quantities.take_off import parts_of

__all__ = [
    "POOR_ACCESS",
    "RETURN",
    "BuildUp",
    "Counted",
    "Extra",
    "Figure",
    "Line",
    "Part",
    "build_up",
    "extra_charges",
    "extras_of",
    "figure",
    "hard_to_reach",
    "is_closed_to_machines",
    "later_phases",
    "layer_cuyd",
    "nearest_start",
    "parts_of",
    "poor_access",
    "run_ft",
    "way_ft",
]
