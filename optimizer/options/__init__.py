"""Options: layouts with their figures and proofs, ranked by the exact figures and told apart by idea."""

from optimizer.options.cautions import cautions_for
from optimizer.options.option import (
    Conflict,
    DiffersBy,
    LeftOut,
    Option,
    OptionSet,
    Proof,
    ProofStatus,
    Remedy,
    SearchRecord,
    SearchStatus,
    WayOut,
)
from optimizer.options.permits import permits_for
from optimizer.options.ranking import LEAST_DIFFERENCE, ranked
from optimizer.options.reasons import reason_for
from optimizer.options.remedies import remedies_for
from optimizer.options.score import Losses, losses_of

__all__ = [
    "LEAST_DIFFERENCE",
    "Conflict",
    "DiffersBy",
    "LeftOut",
    "Losses",
    "Option",
    "OptionSet",
    "Proof",
    "ProofStatus",
    "Remedy",
    "SearchRecord",
    "SearchStatus",
    "WayOut",
    "cautions_for",
    "losses_of",
    "permits_for",
    "ranked",
    "reason_for",
    "remedies_for",
]
