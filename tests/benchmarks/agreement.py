"""Whether what the engine counts agrees with the exact figures, over a few hundred layouts of a yard.

    python -m tests.benchmarks.agreement scenarios/*.yaml --layouts 200 --seed 7

Of the arrangements that the explorer passes, a sample is measured exactly; those that hold every hard rule and lie
within 25 % of the best of them count. It prints Spearman's rank correlation between the engine's value and the exact
score, how much worse the engine's own first pick is than the best, which loss that the engine does not count parts the
two most, and the layouts whose ranks lie farthest apart with the loss that moved them. Exit status 1 where a correlation is under 0.8 or a first pick more than 3 % worse.
"""

import argparse
import sys
import threading
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from scipy.stats import rankdata, spearmanr

from optimizer.concepts.case import Case
from optimizer.engine.explorer import Explorer, board_of
from optimizer.engine.portfolio import Purse, first_tours, tour_of
from optimizer.engine.problem import Problem, State, build_problem, layout_of
from optimizer.layout import Layout
from optimizer.scenario import load_scenario

WITHIN = 1.25
LEAST_CORRELATION = 0.8
MOST_WORSE = 0.03
LOOKED_AT = 1.6
"""States whose value is up to this many times the best are drawn from; worse ones are hardly within 25 %."""
FARTHEST = 3
NOT_COUNTED = ("party", "cook", "destinations", "access", "ways", "jogs", "paving", "leftovers", "lawn", "enclosure")
"""Losses of the exact score that the engine counts nothing of."""


@dataclass(frozen=True)
class Measured:
    """One layout with the engine's value and the exact losses by name [money]."""

    layout: Layout
    value: float
    losses: dict[str, float]

    @property
    def score(self) -> float:
        """Exact score [money]."""
        return sum(self.losses.values())


def sample_of(case: Case, *, layouts: int, seed: int) -> list[Measured]:
    """Layouts that hold every rule and lie within 25 % of the best of the sample, best value first."""
    problem = build_problem(case.scenario, case.rooms, case.book)
    measured = [
        found for value, state in _drawn(problem, layouts, seed) if (found := _measured(case, problem, value, state))
    ]
    best = min((found.score for found in measured), default=0.0)
    return [found for found in measured if found.score <= WITHIN * best]


def correlation(sample: list[Measured]) -> float:
    """Spearman's rank correlation of value and exact score."""
    return float(spearmanr([found.value for found in sample], [found.score for found in sample]).statistic)


def first_pick_worse(sample: list[Measured]) -> float:
    """By what share the layout of the least value is worse than the best by the exact score."""
    pick = min(sample, key=lambda found: found.value)
    return pick.score / min(found.score for found in sample) - 1


def most_missed(sample: list[Measured]) -> tuple[str, float]:
    """The loss that the engine does not count whose knowledge would bring the ranks closest, and the correlation then."""
    known = {
        name: correlation([replace(found, value=found.value + found.losses[name]) for found in sample])
        for name in NOT_COUNTED
    }
    name = max(known, key=lambda key: known[key])
    return name, known[name]


TOURS = 12


def _drawn(problem: Problem, layouts: int, seed: int) -> list[tuple[int, State]]:
    explorer, purse, never = Explorer(board_of(problem)), Purse(problem), threading.Event()
    tours = [tour_of(problem, turn, seed=seed, purse=purse, best=()) for turn in range(TOURS)]
    for tour in (*first_tours(seed, (), purse.set_aside(0)), *tours):
        explorer.run(tour, stop=never)
    ranked = explorer.pool.ranked()
    near = [entry for entry in ranked if entry[0] <= LOOKED_AT * ranked[0][0]]
    if len(near) <= layouts:
        return near
    # The first ones are where the engine picks from; the others are drawn.
    head, tail = near[: layouts // 4], near[layouts // 4 :]
    drawn = np.random.default_rng(seed).choice(len(tail), layouts - len(head), replace=False)
    return head + [tail[index] for index in sorted(drawn)]


def _measured(case: Case, problem: Problem, value: int, state: State) -> Measured | None:
    layout = layout_of(problem, state)
    verdict = case.judged(layout)
    return Measured(layout, value / 100, dict(verdict.losses)) if verdict.holds else None


def _farthest(sample: list[Measured]) -> list[str]:
    """The layouts whose two ranks lie farthest apart, with the loss that is farthest from its median."""
    apart = rankdata([found.score for found in sample]) - rankdata([found.value for found in sample])
    medians = {name: float(np.median([found.losses[name] for found in sample])) for name in sample[0].losses}
    lines = []
    for index in np.argsort(-np.abs(apart))[:FARTHEST]:
        found = sample[index]
        off = {name: loss - medians[name] for name, loss in found.losses.items()}
        name = max(off, key=lambda key: abs(off[key]))
        lines.append(f"  {apart[index]:+.0f} ranks, {name} {off[name]:+,.0f}: {found.layout.placements}")
    return lines


def main() -> None:
    """Print a line a scenario and exit by what they say."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("scenarios", nargs="+", type=Path)
    parser.add_argument("--layouts", type=int, default=200)
    parser.add_argument("--seed", type=int, default=7)
    asked = parser.parse_args()
    failed = False
    for path in asked.scenarios:
        sample = sample_of(Case.of(load_scenario(path)), layouts=asked.layouts, seed=asked.seed)
        rank, worse = correlation(sample), first_pick_worse(sample)
        print(f"{path.stem}: {len(sample)} layouts, correlation {rank:.2f}, first pick {100 * worse:.1f} % worse")
        print("  with {} known: correlation {:.2f}".format(*most_missed(sample)))
        print(*_farthest(sample), sep="\n")
        failed |= rank < LEAST_CORRELATION or worse > MOST_WORSE
    sys.exit(int(failed))


if __name__ == "__main__":
    main()
