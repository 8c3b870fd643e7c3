"""Prove the arrangements of a result once more, by HiGHS and another formulation, and hold the two against each other.

`python -m tests.benchmarks.reproved OUT/options.json ... --options 3 --seconds 120 [--json FILE]`. Of each result so many
options are taken whose arrangement CP-SAT has bounded. The programme asks for the least that counts no more than that
bound: found at the bound, both agree. Nothing found means that the bound holds, and lies below the optimum: called proven
it would be wrong, since the option itself is a layout at that value. Exit status 1 where a proof is contradicted.
"""

import argparse
import json
import sys
import time
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from pathlib import Path

from optimizer.catalogue import book_for, sized_rooms
from optimizer.concepts import Option
from optimizer.engine.problem import Problem, build_problem, modelled_value, state_of
from optimizer.engine.problem.arrangement import key_of
from optimizer.results.read import read_result
from tests.benchmarks.arrangement_milp import arrangement_milp

CENTS = 100
EVEN = 0.5
"""Cents by which two sums of whole cents may differ."""


@dataclass(frozen=True)
class Row:
    """One arrangement: what CP-SAT says of it, and what HiGHS says [money]. `seconds` are of the processor."""

    result: str
    option: str
    claimed: str
    bound: float
    found: float | None
    said: str
    variables: int
    seconds: float

    @property
    def is_wrong(self) -> bool:
        """Whether the two contradict each other."""
        return self.said in ("below the bound", "no layout at a proven value", "not the problem's layout")


def reproved(problem: Problem, name: str, option: Option, *, seconds: float) -> Row:
    """One option's arrangement, proven again."""
    began, proof, state = time.process_time(), option.proof, state_of(problem, option.layout)
    if state is None or abs(modelled_value(problem, state) - CENTS * proof.objective) > EVEN:
        return Row(name, option.id, proof.arrangement, proof.bound, None, "not the problem's layout", 0, 0.0)
    target = round(CENTS * proof.bound)
    programme = arrangement_milp(problem, key_of(problem, state), target)
    answer = programme.solve(seconds=seconds, most=target + EVEN)
    said = _said(answer.status, answer.objective, target, is_proven=proof.arrangement == "proven")
    found = None if answer.objective is None else answer.objective / CENTS
    spent = time.process_time() - began
    return Row(name, option.id, proof.arrangement, proof.bound, found, said, len(programme.costs), spent)


def _said(status: str, objective: float | None, target: int, *, is_proven: bool) -> str:
    if objective is not None and objective < target - EVEN:
        return "below the bound"
    if status == "infeasible":
        return "no layout at a proven value" if is_proven else "the bound holds"
    return "the same" if status == "optimal" else "undecided"


def rows_of(path: Path, *, options: int, seconds: float) -> Iterator[Row]:
    """The first options of a result whose arrangement was bounded, proven ones first."""
    result = read_result(path)
    scenario = result.scenario
    problem = build_problem(scenario, sized_rooms(scenario.brief), book_for(scenario.currency))
    asked = [option for option in result.option_set.options if option.proof.fingerprint is not None]
    for option in sorted(asked, key=lambda option: option.proof.arrangement != "proven")[:options]:
        yield reproved(problem, path.parent.name, option, seconds=seconds)


def line(row: Row) -> str:
    """One row as text."""
    found = "-" if row.found is None else f"{row.found:,.2f}"
    head = f"{row.result:22}{row.option:14}{row.claimed:10}{row.bound:>12,.2f}{found:>12}"
    return f"{head}{row.variables:>10,}{row.seconds:>9.1f}  {row.said}"


HEADING = f"{'result':22}{'option':14}{'claimed':10}{'CP-SAT':>12}{'HiGHS':>12}{'variables':>10}{'seconds':>9}  said"


def main(arguments: list[str] | None = None) -> int:
    """Print a line an option; 1 where a proof is contradicted."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("results", nargs="+", type=Path)
    parser.add_argument("--options", type=int, default=3)
    parser.add_argument("--seconds", type=float, default=120.0)
    parser.add_argument("--json", type=Path)
    call = parser.parse_args(arguments)
    rows = []
    print(HEADING)
    for path in call.results:
        for row in rows_of(path, options=call.options, seconds=call.seconds):
            rows.append(row)
            print(line(row), flush=True)
    if call.json:
        call.json.write_text(json.dumps([asdict(row) for row in rows], indent=1))
    return int(any(row.is_wrong for row in rows))


if __name__ == "__main__":
    sys.exit(main())
