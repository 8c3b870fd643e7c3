"""Options: layouts with their figures and proofs, ranked by the exact figures and told apart by idea."""

from optimizer.options.option import (
    Conflict,
    DiffersBy,
    LeftOut,
    Option,
    OptionSet,
    Proof,
    ProofStatus,
    SearchRecord,
    SearchStatus,
)
from optimizer.options.ranking import ranked
from optimizer.options.reasons import cautions_for, reason_for
from optimizer.options.score import losses_of

__all__ = [
    "Conflict",
    "DiffersBy",
    "LeftOut",
    "Option",
    "OptionSet",
    "Proof",
    "ProofStatus",
    "SearchRecord",
    "SearchStatus",
    "cautions_for",
    "losses_of",
    "ranked",
    "reason_for",
]
