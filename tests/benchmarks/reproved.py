"""Prove arrangements once more, by HiGHS and another formulation, and hold the two answers against each other.

    python -m tests.benchmarks.reproved [OUT/options.json | YARD.yaml ...] --options 3 --seconds 60 [--json FILE]

Of a result the options are taken whose arrangement CP-SAT has bounded, proven ones first; a yard is explored for a while
and its best arrangements polished. Without any file, the yards of `scenarios`. The programme asks for the least that counts
no more than CP-SAT's bound: found at the bound, both agree. Nothing found means that the bound holds, and lies below the
optimum: called proven it would be wrong, since the layout itself stands at that value. Exit status 1 where a proof is
contradicted.
"""

import argparse
import json
import sys
import threading
import time
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from itertools import islice
from pathlib import Path

from optimizer.catalogue import book_for, sized_rooms
from optimizer.concepts import Option
from optimizer.concepts.case import Case
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.problem import Problem, State, build_problem, modelled_value, state_of
from optimizer.engine.problem.arrangement import key_of
from optimizer.engine.prover import polish
from optimizer.results.read import read_result
from optimizer.scenario import load_scenario
from tests.benchmarks.arrangement_milp import arrangement_milp

CENTS = 100
EVEN = 0.5
"""Cents by which two sums of whole cents may differ."""
REBUILDS = 400
ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Claim:
    """What CP-SAT says of a layout's arrangement [cents]; `state` is None where the layout is not one of the problem."""

    name: str
    state: State | None
    objective: int
    bound: int

    @property
    def is_proven(self) -> bool:
        """Whether nothing better is said to exist."""
        return self.bound >= self.objective


@dataclass(frozen=True)
class Row:
    """One arrangement: what CP-SAT says of it, and what HiGHS says [money]. `seconds` are of the processor."""

    source: str
    name: str
    is_proven: bool
    bound: float
    found: float | None
    said: str
    variables: int
    seconds: float

    @property
    def is_wrong(self) -> bool:
        """Whether the two contradict each other."""
        return self.said in ("below the bound", "no layout at a proven value", "not the problem's layout")


def reproved(problem: Problem, source: str, claim: Claim, *, seconds: float) -> Row:
    """One arrangement, proven again."""
    began, state = time.process_time(), claim.state
    if state is None or modelled_value(problem, state) != claim.objective:
        return Row(source, claim.name, claim.is_proven, claim.bound / CENTS, None, "not the problem's layout", 0, 0.0)
    programme = arrangement_milp(problem, key_of(problem, state), claim.bound)
    answer = programme.solve(seconds=seconds, most=claim.bound + EVEN)
    said = said_of(answer.status, answer.objective, claim)
    found = None if answer.objective is None else answer.objective / CENTS
    spent = time.process_time() - began
    return Row(source, claim.name, claim.is_proven, claim.bound / CENTS, found, said, len(programme.costs), spent)


def said_of(status: str, objective: float | None, claim: Claim) -> str:
    """What HiGHS's answer means for a claim."""
    if objective is not None and objective < claim.bound - EVEN:
        return "below the bound"
    if status == "infeasible":
        return "no layout at a proven value" if claim.is_proven else "the bound holds"
    return "the same" if status == "optimal" else "undecided"


def claims_at(path: Path) -> tuple[Problem, Iterator[Claim]]:
    """The problem of a result or a yard, and what CP-SAT says of arrangements in it."""
    if path.suffix == ".json":
        result = read_result(path)
        scenario = result.scenario
        problem = build_problem(scenario, sized_rooms(scenario.brief), book_for(scenario.currency))
        return problem, claims_of(problem, result.option_set.options)
    case = Case.of(load_scenario(path))
    problem = build_problem(case.scenario, case.rooms, case.book)
    return problem, polished(problem)


def claims_of(problem: Problem, options: tuple[Option, ...]) -> Iterator[Claim]:
    """Claims of options whose arrangement was bounded, proven ones first."""
    bounded = [option for option in options if option.proof.fingerprint is not None]
    for option in sorted(bounded, key=lambda option: option.proof.arrangement != "proven"):
        objective, bound = (round(CENTS * money) for money in (option.proof.objective, option.proof.bound))
        yield Claim(option.id, state_of(problem, option.layout), objective, bound)


def polished(problem: Problem) -> Iterator[Claim]:
    """Claims of the best arrangements that a short search passes."""
    board, never = board_of(problem), threading.Event()
    explorer = Explorer(board)
    explorer.run(Tour(REBUILDS, seed=1), stop=never)
    for number, (_, state) in enumerate(explorer.pool.ranked(), 1):
        proof = polish(board, state, stop=never)
        if proof.fingerprint is not None:
            yield Claim(f"arrangement {number}", proof.state, proof.objective, proof.bound)


HEADING = f"{'from':20}{'name':16}{'CP-SAT says':>12}{'bound':>13}{'HiGHS':>13}{'variables':>11}{'seconds':>9}  so"


def line(row: Row) -> str:
    """One row as text."""
    found = "-" if row.found is None else f"{row.found:,.2f}"
    head = f"{row.source:20}{row.name:16}{'proven' if row.is_proven else 'bounded':>12}{row.bound:>13,.2f}{found:>13}"
    return f"{head}{row.variables:>11,}{row.seconds:>9.1f}  {row.said}"


def main(arguments: list[str] | None = None) -> int:
    """Print a line an arrangement; 1 where a proof is contradicted."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--options", type=int, default=3)
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--json", type=Path)
    call = parser.parse_args(arguments)
    rows = []
    print(HEADING, flush=True)
    for path in call.files or sorted(ROOT.glob("scenarios/*.yaml")):
        problem, claims = claims_at(path)
        source = path.parent.name if path.suffix == ".json" else path.stem
        for claim in islice(claims, call.options):
            rows.append(reproved(problem, source, claim, seconds=call.seconds))
            print(line(rows[-1]), flush=True)
    if call.json:
        call.json.write_text(json.dumps([asdict(row) for row in rows], indent=1))
    return int(any(row.is_wrong for row in rows))


if __name__ == "__main__":
    sys.exit(main())
