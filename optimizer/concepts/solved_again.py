"""What a result says of proofs and of ways out, asked of the solver and of the search once more.

Each model is made anew and solved without a hint. What is not decided in the time is said to be undecided, never borne
out.
"""

import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from optimizer.concepts.case import Case
from optimizer.concepts.clock import Clock
from optimizer.concepts.gather import CENTS
from optimizer.concepts.option import Option, OptionSet, Proof, WayOut
from optimizer.concepts.whys.bindings import bindings_of
from optimizer.concepts.whys.cores import Cores
from optimizer.concepts.whys.trying import MANY_TOURS, tried
from optimizer.engine.model import arrangement_scope, build_model
from optimizer.engine.problem import Problem, State, build_problem, state_of
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover import BranchAndBound, Budget, anything_fits
from optimizer.engine.prover.solve import Effort, solve
from optimizer.scenario.patch import patched

PROOF_SHARE: Final = 0.5
"""Of the time that is left the arrangements, then the proof of the whole, take so much at most."""
_EVEN: Final = 0.5  # half a cent, in cents
_NO_LIMIT_S: Final = 1e9


@dataclass(frozen=True, slots=True)
class Doubt:
    """What is not borne out: contradicted, or `is_undecided` in the time."""

    words: str
    is_undecided: bool


def solved_again(case: Case, result: OptionSet, clock: Clock) -> Iterator[Doubt]:
    """Doubts about proofs of concepts, about what is proven of the whole, and about ways out."""
    problem = build_problem(case.scenario, case.rooms, case.book)
    yield from _arrangements(problem, result.concepts, clock)
    if result.search.status == "nothing_fits":
        yield from _nothing(problem, clock)
    elif result.search.bound is not None:
        yield from _whole(problem, result, clock)
    yield from _ways_out(case, result, clock)


def _arrangements(problem: Problem, concepts: Sequence[Option], clock: Clock) -> Iterator[Doubt]:
    """Each arrangement that the solver was asked about, with the same share of the time."""
    asked = [option for option in concepts if option.proof is not None and option.proof.fingerprint is not None]
    for number, option in enumerate(asked):
        state, name = state_of(problem, option.layout), f"concept {option.id}"
        if state is None:
            yield Doubt(f"{name}: its proof is undecided, since its layout is not on the grid", is_undecided=True)
        elif option.proof is not None:
            seconds = _left_s(clock) * PROOF_SHARE / (len(asked) - number)
            yield from _arrangement(problem, state, option.proof, name, clock, seconds)


def _arrangement(
    problem: Problem, state: State, said: Proof, name: str, clock: Clock, seconds: float
) -> Iterator[Doubt]:
    built = build_model(problem, arrangement_scope(problem, key_of(problem, state)))
    effort = Effort(wall_s=seconds, deterministic_s=_NO_LIMIT_S, seed=1, linearization=0)
    answer = solve(built, effort, stop=clock)
    if answer.verdict == "infeasible":
        yield Doubt(f"{name}: its own layout breaks a rule of the model", is_undecided=False)
    elif answer.objective is not None and answer.objective < CENTS * said.bound - _EVEN:
        better = f"a layout of its arrangement counts {answer.objective / CENTS:,.2f}"
        yield Doubt(f"{name}: {better}, below its bound of {said.bound:,.2f}", is_undecided=False)
    elif answer.verdict != "optimal" and (answer.bound or 0) < CENTS * said.bound - _EVEN:
        yield Doubt(f"{name}: its bound is undecided in {seconds:.0f} s", is_undecided=True)


def _nothing(problem: Problem, clock: Clock) -> Iterator[Doubt]:
    answer = anything_fits(problem, seconds=_left_s(clock) * PROOF_SHARE / 2, stop=clock)
    if answer.state is not None:
        yield Doubt("the search says that nothing fits, and the model has a layout", is_undecided=False)
    elif answer.verdict != "infeasible":
        yield Doubt("whether nothing fits is undecided in the time", is_undecided=True)


def _whole(problem: Problem, result: OptionSet, clock: Clock) -> Iterator[Doubt]:
    """The bound over all layouts: no layout may count less, and what was proven comes out again."""
    until = time.monotonic() + _left_s(clock) * PROOF_SHARE
    proof = BranchAndBound(problem, Budget(Clock(clock, until)))
    for option in result.concepts:
        state = state_of(problem, option.layout)
        if state is not None:
            proof.offer(state)
    found = proof.run()
    bound = CENTS * (result.search.bound or 0.0)
    if found.state is not None and found.objective < bound - _EVEN:
        words = f"a layout counts {found.objective / CENTS:,.2f}, below the bound of {bound / CENTS:,.2f}"
        yield Doubt(words, is_undecided=False)
    elif found.bound < bound - _EVEN:
        again = f"proven again up to {found.bound / CENTS:,.2f}"
        yield Doubt(f"the bound over all layouts, {bound / CENTS:,.2f}, is undecided: {again}", is_undecided=True)


def _ways_out(case: Case, result: OptionSet, clock: Clock) -> Iterator[Doubt]:
    """Each way out of rooms left out and of the conflict, put into the text again."""
    ways = [way for option in result.concepts for left in option.left_out for way in left.ways_out]
    ways += result.conflict.ways_out if result.conflict else ()
    distinct = list({str(way): way for way in ways}.values())
    for number, way in enumerate(distinct):
        yield from _way_out(case, result.concepts, way, clock, _left_s(clock) / (len(distinct) - number))


def _way_out(case: Case, concepts: Sequence[Option], way: WayOut, clock: Clock, seconds: float) -> Iterator[Doubt]:
    """A way out holds where a concept does with it, or else where the search finds a plan again."""
    changed = Case.of(patched(case.scenario, way.patch))
    if any(not changed.unknown(option.layout) and changed.judged(option.layout).holds for option in concepts):
        return
    until = time.monotonic() + seconds
    cores = Cores(changed, until=until, stop=clock)
    if cores.fits_nothing(bindings_of(changed)):
        yield Doubt(f"with the way out {way.text!r} nothing fits", is_undecided=False)
    elif not tried(changed, seconds=max(0.0, until - time.monotonic()), stop=clock, tours=MANY_TOURS).holds:
        yield Doubt(f"the way out {way.text!r} is undecided: no plan was found with it again", is_undecided=True)


def _left_s(clock: Clock) -> float:
    return 0.0 if clock.until is None else max(0.0, clock.until - time.monotonic())
