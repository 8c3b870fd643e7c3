"""How composed the first concept of each yard is.

    python -m tests.benchmarks.composition scenarios/*.yaml tests/plots/*.yaml --seconds 10

A table: rooms left out, whether a terrace lies at the main garden door, aligned share, lines of edges for each room,
slanted stretches of way under 8 ft, bends for each leg; how many ideas the first three concepts follow; and after how
many seconds from the end of reading the first concept was there.
"""

import argparse
import math
import time
from pathlib import Path

from optimizer.concepts.leading import LEADING
from optimizer.events import Event
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import load_scenario
from tests.composition import Composed, composed_of, ideas_of

HEAD = f"{'yard':<20}{'left out':>9}{'bare':>6}{'aligned':>9}{'lines/room':>12}{'slants':>8}{'bends/leg':>11}{'score':>9}{'ideas':>7}{'first s':>9}"


def row(name: str, found: Composed, score: float, ideas: int, first_s: float) -> str:
    """A line of the table."""
    bare = "-" if not found.has_a_main_door else "bare" if found.is_bare else ""
    lines, bends = found.lines / max(1, found.rooms), found.bends / max(1, found.legs)
    return (
        f"{name:<20}{found.left_out:>9}{bare:>6}{found.aligned_share:>9.2f}{lines:>12.2f}"
        f"{found.short_slants:>8}{bends:>11.2f}{score:>9,.0f}{ideas:>7}{first_s:>9.1f}"
    )


class Heard:
    """Seconds from the end of reading to the first concept of a run."""

    def __init__(self) -> None:
        """Begin with nothing heard."""
        self._read_at = self._found_at = math.nan

    def __call__(self, event: Event) -> None:
        """Hear an event."""
        if event.kind == "stage" and event.facts["stage"] == "exploring":
            self._read_at = time.monotonic()
        elif event.kind == "option" and math.isnan(self._found_at):
            self._found_at = time.monotonic()

    @property
    def first_s(self) -> float:
        """The seconds; not a number where there was no concept."""
        return self._found_at - self._read_at


def main() -> None:
    """Run the yards one after another."""
    parser = argparse.ArgumentParser(description="How composed the first concept of each yard is.")
    parser.add_argument("yards", nargs="+", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0)
    asked = parser.parse_args()
    print(HEAD)
    for path in asked.yards:
        scenario = load_scenario(path)
        heard = Heard()
        options = make_options(scenario, RunSettings(seconds=asked.seconds), emit=heard).options
        if options:
            ideas = len(ideas_of(options[:LEADING]))
            print(row(path.stem, composed_of(scenario, options[0]), options[0].score, ideas, heard.first_s), flush=True)
        else:
            print(f"{path.stem:<20} no concept", flush=True)


if __name__ == "__main__":
    main()
