"""Proofs by CP-SAT: of one arrangement, of the whole problem, and that nothing fits."""

from optimizer.engine.prover.branch_and_bound import BranchAndBound
from optimizer.engine.prover.polish import ArrangementProof, polish, unproven
from optimizer.engine.prover.proof import Budget, WholeProof
from optimizer.engine.prover.solve import Answer, SolverFault
from optimizer.engine.prover.whole import anything_fits

__all__ = [
    "Answer",
    "ArrangementProof",
    "BranchAndBound",
    "Budget",
    "SolverFault",
    "WholeProof",
    "anything_fits",
    "polish",
    "unproven",
]
