"""The speeds of one working tree, measured in a process of its own. `rebuilds.py` starts it, with the tree as its folder.

    python probe.py lay YARD --layouts N     layouts of a yard, as JSON
    python probe.py time YARD < LAYOUTS      speeds with that yard and those layouts, as JSON

It runs in trees that know nothing of it, so it imports nothing of the benchmarks: this engine's names are tried first,
then those from before there was an `optimizer.engine`.
"""

import argparse
import json
import sys
import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

from optimizer.layout import Layout, Placement
from optimizer.scenario import load_scenario

COLD, WARM = 60, (60, 100, 150)
"""Rebuilds of the first tour on a fresh board, and of the tours after it, each of which starts anew."""
SET_ASIDE = 0.6
"""Share of the likely price of the ways that every tour sets aside, in both engines."""
NEVER = threading.Event()


class NewEngine:
    """This engine: a board, and an explorer that runs tours on it."""

    def __init__(self, case: Any) -> None:
        from optimizer.engine.explorer import Explorer, board_of
        from optimizer.engine.problem import build_problem

        self.problem = build_problem(case.scenario, case.rooms, case.book)
        self._explorer = Explorer(board_of(self.problem))

    def run(self, rebuilds: int, seed: int) -> None:
        """One tour from nothing."""
        from optimizer.engine.explorer import Tour

        self._explorer.run(Tour(rebuilds, seed, set_aside=round(SET_ASIDE * self.problem.guide.ways)), stop=NEVER)

    def layouts(self, count: int) -> list[Layout]:
        """So many of the best of those passed, evenly from best to worst."""
        from optimizer.engine.problem import layout_of

        ranked = self._explorer.pool.ranked()
        return [layout_of(self.problem, state) for _, state in ranked[:: max(1, len(ranked) // count)][:count]]


class OldEngine:
    """The engine of commit b0741ab."""

    def __init__(self, case: Any) -> None:
        from optimizer.instance import build_instance
        from optimizer.search import Pool, board_of

        self._board, self._pool = board_of(build_instance(case.scenario, case.rooms, case.book)), Pool()

    def run(self, rebuilds: int, seed: int) -> None:
        """One tour from nothing."""
        from optimizer.search import Tour, explore

        explore(self._board, self._pool, Tour(rebuilds, seed, thrift=SET_ASIDE), stop=NEVER)


def case_of(yard: Path) -> Any:
    """A yard as the judge takes it."""
    try:
        from optimizer.concepts.case import Case
    except ImportError:
        from optimizer.concepts import Case
    return Case.of(load_scenario(yard))


def engine_kind() -> Any:
    """The kind of engine that this tree has; what it imports is imported here, since that is no reading of a yard."""
    try:
        import optimizer.engine.explorer
        import optimizer.engine.problem
    except ImportError:
        import optimizer.instance
        import optimizer.search  # noqa: F401

        return OldEngine
    return NewEngine


def laid(yard: Path, count: int) -> list[dict[str, Any]]:
    """Layouts of a yard, for both trees to judge."""
    engine = engine_kind()(case_of(yard))
    engine.run(COLD, 1)
    return [asdict(layout) for layout in engine.layouts(count)]


def timed(yard: Path, layouts: list[Layout], warm_tours: Sequence[int] = WARM) -> dict[str, float]:
    """Rebuilds a second, cold and warm, and milliseconds of judging a layout: all by processor time."""
    case, kind = case_of(yard), engine_kind()
    read, engine = _seconds(lambda: kind(case))
    cold, _ = _seconds(lambda: engine.run(COLD, 1))
    warm, _ = _seconds(lambda: [engine.run(rebuilds, 2 + turn) for turn, rebuilds in enumerate(warm_tours)])
    case.judged(layouts[0])  # what is kept for the site is made by the first
    judged, _ = _seconds(lambda: [case.judged(layout) for layout in layouts])
    return {"read": read, "cold": COLD / cold, "warm": sum(warm_tours) / warm, "judge": 1000 * judged / len(layouts)}


def _seconds(work: Callable[[], Any]) -> tuple[float, Any]:
    began = time.process_time()
    result = work()
    return time.process_time() - began, result


def main() -> None:
    """Print what was asked for."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("what", choices=("lay", "time"))
    parser.add_argument("yard", type=Path)
    parser.add_argument("--layouts", type=int, default=12)
    parser.add_argument("--warm", nargs="+", type=int, default=WARM)
    call = parser.parse_args()
    if call.what == "lay":
        print(json.dumps(laid(call.yard, call.layouts)))
        return
    given = json.load(sys.stdin)
    layouts = [Layout(tuple(Placement(**placement) for placement in one["placements"])) for one in given]
    print(json.dumps(timed(call.yard, layouts, call.warm)))


if __name__ == "__main__":
    main()
