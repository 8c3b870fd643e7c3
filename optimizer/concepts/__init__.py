"""Concepts: layouts with their figures and proofs, ranked by the exact figures and told apart by idea.

Here are the data and what is said of them; `concepts/run.py`, which needs the solver, is imported by who runs it.
"""

from optimizer.concepts.cautions import cautions_for
from optimizer.concepts.idea_words import idea_of
from optimizer.concepts.money_words import AIM, about_words, aim_words, beyond_aim, expected_words, level_words
from optimizer.concepts.option import (
    ASKED_BY,
    NOT_ASKED,
    Conflict,
    DiffersBy,
    Idea,
    LeftOut,
    Option,
    OptionSet,
    Proof,
    ProofStatus,
    Remedy,
    SearchRecord,
    SearchStatus,
    Side,
    WayOut,
    WithWithout,
)
from optimizer.concepts.permits import permits_for
from optimizer.concepts.ranking import LEAST_DIFFERENCE, ranked
from optimizer.concepts.reasons import Teller
from optimizer.concepts.remedies import remedies_for
from optimizer.concepts.score import Losses, losses_of

__all__ = [
    "AIM",
    "ASKED_BY",
    "LEAST_DIFFERENCE",
    "NOT_ASKED",
    "Conflict",
    "DiffersBy",
    "Idea",
    "LeftOut",
    "Losses",
    "Option",
    "OptionSet",
    "Proof",
    "ProofStatus",
    "Remedy",
    "SearchRecord",
    "SearchStatus",
    "Side",
    "Teller",
    "WayOut",
    "WithWithout",
    "about_words",
    "aim_words",
    "beyond_aim",
    "cautions_for",
    "expected_words",
    "idea_of",
    "level_words",
    "losses_of",
    "permits_for",
    "ranked",
    "remedies_for",
]
