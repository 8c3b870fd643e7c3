"""What was found so far: layouts that hold with their exact figures, and what the judge refused."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from optimizer.concepts.case import Case, Verdict
from optimizer.concepts.growth import Grown
from optimizer.concepts.leading import NEAR_BEST
from optimizer.concepts.option import Option, Proof, ProofStatus
from optimizer.concepts.ranking import Comparison, in_words, ranked
from optimizer.concepts.reasons import Teller
from optimizer.engine.problem import Problem, State, layout_of
from optimizer.engine.prover import ArrangementProof
from optimizer.events import Emit, Event
from optimizer.layout import Layout

CENTS: Final = 100


@dataclass(frozen=True, slots=True)
class Find:
    """An option with the state behind it, and what is proven of its arrangement."""

    option: Option
    proof: ArrangementProof
    is_final: bool = False
    """Whether the solver has had its turn."""
    has_grown: bool = False
    """Whether its rooms were let grow to lines, if only to find that none should."""


@dataclass
class Gathering:
    """Finds by layout before any room grew. `refused` holds findings by rule but the ceiling, and what repeats it."""

    case: Case
    problem: Problem
    emit: Emit
    finds: dict[Layout, Find] = field(default_factory=dict)
    refused: dict[str, list[str]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """What is compared again and again, round by round, is worked out once."""
        self._comparison = Comparison(self.case.diagonal_ft, self.problem.context.pose.layout)

    @property
    def options(self) -> list[Option]:
        """Options found, in the order of finding."""
        return [find.option for find in self.finds.values()]

    def best_states(self, count: int) -> tuple[State, ...]:
        """States of the best options by the exact score."""
        best = sorted(self.finds.values(), key=lambda find: find.option.score)
        return tuple(find.proof.state for find in best[:count])

    @property
    def ideas_met(self) -> frozenset[str]:
        """Names of ideas that a layout with every wished room follows which may lead, by its score."""
        whole = [option for option in self.options if not option.left_out]
        most = NEAR_BEST * min((option.score for option in whole), default=0.0)
        return frozenset(option.idea.name for option in whole if option.idea and option.score <= most)

    def chosen(self, count: int) -> tuple[Option, ...]:
        """The options that would be shown now, in order, without words."""
        return ranked(self.options, count=count, comparison=self._comparison)

    def shown(self, count: int) -> tuple[Option, ...]:
        """The same as they are shown: each with its place, its reason, and what tells it from those before it."""
        return in_words(self.chosen(count), self._comparison, Teller(self.case.scenario, self.case.book.currency))

    def keep(self, proof: ArrangementProof, verdict: Verdict) -> bool:
        """Keep the layout if no hard rule is broken; whether it was.

        That the exact cost passes the ceiling is expected of some; any other finding shows where the engine is looser
        than reality.
        """
        layout = layout_of(self.problem, proof.state)
        if verdict.findings:
            for finding in verdict.findings:
                if finding.rule != "budget":
                    self.refused.setdefault(finding.rule, []).append(f"{finding.words}; at {layout}")
            return False
        if layout not in self.finds:
            self.finds[layout] = Find(self._option(layout, verdict, proof), proof)
            self._tell()
        return True

    def unproven(self, shown: Sequence[Option]) -> tuple[Find, ...]:
        """Those of the shown ones that the solver has not looked at yet."""
        return tuple(find for find in self._of(shown) if not find.is_final)

    def ungrown(self, shown: Sequence[Option]) -> tuple[Find, ...]:
        """Those of the shown ones whose rooms were not let grow yet."""
        return tuple(find for find in self._of(shown) if not find.has_grown)

    def _of(self, shown: Sequence[Option]) -> tuple[Find, ...]:
        return tuple(self.finds[option.layout.base] for option in shown)

    def prove(self, find: Find, proof: ArrangementProof) -> None:
        """Put what was proven of its arrangement with a find, whose layout stays as it was."""
        bound = min(find.proof.objective, proof.bound)
        known = replace(find.proof, bound=bound, fingerprint=proof.fingerprint)
        self.finds[find.option.layout] = Find(replace(find.option, proof=_proof(known)), known, is_final=True)

    def refine(self, find: Find, proof: ArrangementProof, verdict: Verdict) -> None:
        """Put the polished layout in the place of a find where reality agrees and the exact score is no worse.

        A find that follows another idea than what it was polished to stays beside it.
        """
        layout = layout_of(self.problem, proof.state)
        if verdict.findings or verdict.score > find.option.score:
            self.prove(find, proof)
            return
        polished = self._option(layout, verdict, proof)
        if find.option.idea is not None and polished.idea_name != find.option.idea_name:
            self.prove(find, proof)
        else:
            self.finds.pop(find.option.layout, None)
        beside = self.finds.get(layout)
        if beside is None or not beside.has_grown:
            self.finds[layout] = Find(polished, proof, is_final=True)

    def grow(self, find: Find, grown: Grown) -> None:
        """Show a settled find with its rooms grown; what is proven stays what it is, of the layout before growth."""
        option = find.option
        if grown.layout != option.layout:
            option = self._option(grown.layout, grown.verdict, find.proof)
        self.finds[find.option.layout.base] = replace(find, option=option, has_grown=True)

    def _option(self, layout: Layout, verdict: Verdict, proof: ArrangementProof) -> Option:
        return replace(self.case.described(layout, verdict), proof=_proof(proof))

    def _tell(self) -> None:
        best = min(self.options, key=lambda option: option.score)
        words = f"{best.appraisal.cost.phase(1):,.0f} {self.case.book.currency}"
        self.emit(Event("option", {"found": len(self.finds), "best": words}))


def _proof(proof: ArrangementProof) -> Proof:
    status: ProofStatus = "proven" if proof.is_proven else "bounded"
    return Proof(status, proof.objective / CENTS, proof.bound / CENTS, proof.fingerprint)
