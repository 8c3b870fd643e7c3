"""What a result says of its proofs and its concepts, counted again without solving."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from optimizer.concepts.case import Case
from optimizer.concepts.gather import CENTS
from optimizer.concepts.option import (
    Conflict,
    DiffersBy,
    Option,
    OptionSet,
    Proof,
    ProofStatus,
    SearchRecord,
    WithWithout,
)
from optimizer.concepts.ranking import Comparison, in_words
from optimizer.concepts.reasons import Teller
from optimizer.concepts.retold import left_out_again, with_without_again
from optimizer.concepts.whys.nothing import conflict_again
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.problem import State, build_problem, modelled_losses, modelled_value, state_of
from optimizer.engine.problem.arrangement import key_of

_EVEN = 0.005  # half a cent
_ROUNDED = 0.001  # the last digit of a difference


class Recount:
    """The problem of a case, built once to count in."""

    def __init__(self, case: Case) -> None:
        self._case = case
        self._problem = build_problem(case.scenario, case.rooms, case.book)

    def with_proof(self, option: Option) -> Option:
        """The option with the proof that its layout can have: its own objective, no bound above it, its own model."""
        state = state_of(self._problem, option.layout)
        said = option.proof
        if state is None or said is None:
            return option
        objective = modelled_value(self._problem, state) / CENTS
        bound = min(said.bound, objective)
        arrangement: ProofStatus = (
            "proven" if said.fingerprint is not None and bound >= objective - _EVEN else "bounded"
        )
        fingerprint = None if said.fingerprint is None else self._fingerprint(state)
        return replace(option, proof=Proof(arrangement, objective, bound, fingerprint))

    def of_search(self, result: OptionSet) -> Iterator[str]:
        """What the record of the search says and its layout does not bear out."""
        search = result.search
        if search.objective is not None and search.bound is not None and search.bound > search.objective + _EVEN:
            yield f"the bound over all layouts, {search.bound:g}, is above the objective {search.objective:g}"
        if len({search.objective is None, search.bound is None, not search.terms}) > 1:
            yield "the search has an objective, a bound or terms without the others"
        yield from _of_status(result)
        named = next((option for option in result.options if option.id == search.option), None)
        if named is None and search.option is not None and not _is_part(result.concepts):
            yield f"the search speaks of {search.option}, which is not in the result"
        state = None if named is None else state_of(self._problem, named.layout)
        if state is not None:
            yield from self._of_terms(search, state)
        told = sum(money for _, money in search.terms)
        if search.terms and abs(told - (search.objective or 0.0)) > _EVEN * len(search.terms):
            yield "the objective of the search is not the sum of its terms"

    def _of_terms(self, search: SearchRecord, state: State) -> Iterator[str]:
        """Terms and objective that are not those of the layout that the search names."""
        terms = {name: cents / CENTS for name, cents in modelled_losses(self._problem, state).items()}
        if any(abs(terms.get(name, 0.0) - money) > _EVEN for name, money in search.terms):
            yield f"the terms of the search are not those of {search.option}"
        if abs(sum(terms.values()) - (search.objective or 0.0)) > _EVEN:
            yield f"the objective of the search is not that of {search.option}"

    def of_conflict(self, conflict: Conflict | None) -> Iterator[str]:
        """What is said of why nothing fits, and is not so."""
        if conflict is not None:
            yield from conflict_again(self._case, self._problem, conflict)

    def of_words(self, concepts: Sequence[Option], measured: Sequence[Option]) -> Iterator[str]:
        """Reasons and differences that are not as the same concepts, `measured` again, tell them; what a concept is
        told against is not in a result that it alone was taken out into.
        """
        if _is_part(concepts):
            return
        say = Teller(self._case.scenario, self._case.book.currency)
        comparison = Comparison(self._case.diagonal_ft, self._problem.context.pose.layout)
        for option, found in zip(concepts, in_words(measured, comparison, say), strict=True):
            if option.reason != found.reason:
                yield f"concept {option.id}: its reason is {option.reason!r}, found {found.reason!r}"
            if not _is_alike(option.differs_by, found.differs_by):
                yield f"concept {option.id}: differs_by is {_told(option.differs_by)}, found {_told(found.differs_by)}"

    def of_concepts(self, concepts: Sequence[Option], pairs: Sequence[WithWithout]) -> Iterator[str]:
        """What is said of rooms left out, and of with and without, and the shown concepts do not bear out."""
        yield from left_out_again(self._case, self._problem, concepts)
        if not _is_part(concepts):
            yield from with_without_again(self._case, concepts, pairs)

    def _fingerprint(self, state: State) -> str:
        return build_model(self._problem, arrangement_scope(self._problem, key_of(self._problem, state))).fingerprint


def _of_status(result: OptionSet) -> Iterator[str]:
    """What a search is called, and its bound, its concepts or its conflict say otherwise."""
    search = result.search
    proven = search.bound is not None and search.objective is not None and search.bound >= search.objective - _EVEN
    if search.status == "proven" and not proven:
        yield "the search is called proven, and its bound lies below its objective"
    if result.concepts and search.status not in {"proven", "bounded"}:
        yield f"the search is called {search.status}, and there are concepts"
    if (result.conflict is not None) != (search.status == "nothing_fits"):
        yield f"the search is called {search.status}, and there is {'a' if result.conflict else 'no'} conflict"


def _is_part(concepts: Sequence[Option]) -> bool:
    """Whether a result is one concept out of another: alone, and not the first."""
    return len(concepts) == 1 and concepts[0].rank != 1


def _is_alike(one: DiffersBy | None, other: DiffersBy | None) -> bool:
    """Whether two differences say the same, within what rounding of places makes of the value."""
    if one is None or other is None:
        return one == other
    return one.words == other.words and abs(one.value - other.value) <= _ROUNDED


def _told(differs: DiffersBy | None) -> str:
    return "null" if differs is None else f"{differs.value:g}, {differs.words!r}"
