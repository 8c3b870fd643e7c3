"""The independent check: every hard rule in real geometry, from the scenario, the sized rooms and the placements."""

from optimizer.check.case import CheckCase
from optimizer.check.checks import (
    CHECKS,
    OF_WAYS,
    STAGES,
    all_findings,
    check_layout,
    first_findings,
    fits,
    wishes_missed,
)
from optimizer.check.finding import Finding
from optimizer.check.sight import lookers_of
from optimizer.check.views import seen_shares

__all__ = [
    "CHECKS",
    "OF_WAYS",
    "STAGES",
    "CheckCase",
    "Finding",
    "all_findings",
    "check_layout",
    "first_findings",
    "fits",
    "lookers_of",
    "seen_shares",
    "wishes_missed",
]
