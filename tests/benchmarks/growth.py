"""How time and memory grow with rooms, with the fineness of the grid and with the yard.

    python -m tests.benchmarks.growth [--quick] [--svg FILE]

Each point is a generated yard in a process of its own: processor seconds of reading (tables and board), milliseconds of a
rebuild and of judging a layout, variables of the whole model, and the most memory beyond what the imports take. A layout
is judged by all rules and measured even where one is broken, so that it is the same work at every point. The
exponent is the slope of logarithms over all points of a series, against rooms or against cells; `end` is that between
the last two points, where what grows fastest shows most. Two runs differ by a tenth or two.
"""

import argparse
import json
import resource
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np

from optimizer.concepts.case import Case
from optimizer.engine.explorer import Explorer, Tour, board_of
from optimizer.engine.model import build_model, whole_scope
from optimizer.engine.problem import build_problem, layout_of
from optimizer.scenario import read_scenario
from tests.benchmarks.grown import grown_yard
from tests.benchmarks.growth_plot import plot

COLUMNS = ("read s", "rebuild ms", "judge ms", "variables", "MB")
WARM_UP, REBUILDS, JUDGED = 30, 60, 4
NEVER = threading.Event()


class Point(NamedTuple):
    """One yard: rooms, width and depth [ft], grid step [ft]."""

    rooms: int
    width_ft: int
    depth_ft: int
    step_ft: float

    @property
    def cells(self) -> int:
        """Cells of the grid."""
        return round(self.width_ft / self.step_ft * self.depth_ft / self.step_ft)


SERIES: dict[str, tuple[Point, ...]] = {
    "rooms": tuple(Point(rooms, 110, 100, 1) for rooms in (4, 8, 12, 16, 20)),
    "grid": tuple(Point(8, 60, 60, step) for step in (2, 1, 0.5, 0.25)),
    "yard": tuple(Point(8, *size, 1) for size in ((30, 60), (75, 75), (110, 100), (200, 218), (300, 290))),
}
"""The yard grows from the plot of a town house to two acres."""
SMALLEST = Point(2, 30, 40, 2)

Figures = dict[str, float]


def measured(point: Point) -> Figures:
    """Figures of one yard, in this process."""
    _read(_case(SMALLEST))  # what is imported at first use is not this yard's
    before, case = _most_mb(), _case(point)
    read, (problem, board) = _seconds(lambda: _read(case))
    explorer = Explorer(board)
    explorer.run(Tour(WARM_UP, 1), stop=NEVER)
    explored, _ = _seconds(lambda: explorer.run(Tour(REBUILDS, 2), stop=NEVER))
    first, *layouts = [layout_of(problem, state) for _, state in explorer.pool.ranked()[: JUDGED + 1]]
    case.in_full(first)  # what is kept for the site is made by the first
    judged, _ = _seconds(lambda: [case.in_full(layout) for layout in layouts or [first]])
    variables = len(build_model(problem, whole_scope(problem)).model.proto.variables)
    figures = (read, 1000 * explored / REBUILDS, 1000 * judged / max(1, len(layouts)), variables, _most_mb() - before)
    return dict(zip(COLUMNS, figures, strict=True))


def exponent(sizes: Sequence[float], values: Sequence[float]) -> float:
    """Slope of logarithms: 1 where twice the size takes twice as much, 2 where it takes four times as much."""
    return float(np.polyfit(np.log(sizes), np.log(np.maximum(values, 1e-6)), 1)[0])


def size_of(series: str, point: Point) -> int:
    """What grows in a series."""
    return point.rooms if series == "rooms" else point.cells


def table(found: dict[str, list[tuple[Point, Figures]]]) -> Iterator[str]:
    """A line a point, and under each series its exponents."""
    yield f"{'series':8}{'rooms':>6}{'cells':>9}" + "".join(f"{column:>12}" for column in COLUMNS)
    for series, points in found.items():
        for point, figures in points:
            cells = "".join(f"{figures[column]:>12,.{0 if figures[column] > 100 else 2}f}" for column in COLUMNS)
            yield f"{series:8}{point.rooms:>6}{point.cells:>9,}{cells}"
        for words, part in (("exponent", points), ("end", points[-2:])):
            sizes = [size_of(series, point) for point, _ in part]
            slopes = [exponent(sizes, [figures[column] for _, figures in part]) for column in COLUMNS]
            yield f"{series:8}{words:>15}" + "".join(f"{slope:>12.2f}" for slope in slopes)


def _case(point: Point) -> Case:
    return Case.of(read_scenario(grown_yard(*point), "grown.yaml"))


def _read(case: Case) -> tuple[Any, Any]:
    problem = build_problem(case.scenario, case.rooms, case.book)
    return problem, board_of(problem)


def _seconds(work: Callable[[], Any]) -> tuple[float, Any]:
    began = time.process_time()
    result = work()
    return time.process_time() - began, result


def _most_mb() -> float:
    """Most memory that this process has had [MB]."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (1024 if sys.platform != "darwin" else 1024**2)


def _apart(point: Point) -> Figures:
    """Figures of one yard, from a process of its own. Raises CalledProcessError where it fails."""
    call = [sys.executable, "-m", "tests.benchmarks.growth", "--point", *map(str, point)]
    return json.loads(subprocess.run(call, stdout=subprocess.PIPE, text=True, check=True).stdout)


def main(arguments: Sequence[str] | None = None) -> int:
    """Measure every point and print one table; with `--svg` draw it too."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--quick", action="store_true", help="leave out the two largest points of each series")
    parser.add_argument("--svg", type=Path)
    parser.add_argument("--point", nargs=4, type=float, metavar=("ROOMS", "WIDTH", "DEPTH", "STEP"))
    call = parser.parse_args(arguments)
    if call.point:
        rooms, width, depth, step = call.point
        print(json.dumps(measured(Point(int(rooms), int(width), int(depth), step))))
        return 0
    found = {
        series: [(point, _apart(point)) for point in (points[:-2] if call.quick else points)]
        for series, points in SERIES.items()
    }
    print("\n".join(table(found)))
    if call.svg:
        sized = {
            series: [(size_of(series, point), [figures[column] for column in COLUMNS]) for point, figures in points]
            for series, points in found.items()
        }
        call.svg.write_text(plot(sized, COLUMNS), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
