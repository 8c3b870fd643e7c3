"""How composed the first concept of each yard is.

    python -m tests.benchmarks.composition scenarios/*.yaml tests/plots/*.yaml --seconds 10

A table: rooms left out, whether a terrace lies at the main garden door, aligned share, lines of edges for each room,
slanted stretches of way under 8 ft, bends for each leg; and how many ideas the first three concepts follow.
"""

import argparse
from pathlib import Path

from optimizer.concepts.leading import LEADING
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import load_scenario
from tests.composition import Composed, composed_of, ideas_of

HEAD = f"{'yard':<20}{'left out':>9}{'bare':>6}{'aligned':>9}{'lines/room':>12}{'slants':>8}{'bends/leg':>11}{'score':>9}{'ideas':>7}"


def row(name: str, found: Composed, score: float, ideas: int) -> str:
    """A line of the table."""
    bare = "-" if not found.has_a_main_door else "bare" if found.is_bare else ""
    lines, bends = found.lines / max(1, found.rooms), found.bends / max(1, found.legs)
    return (
        f"{name:<20}{found.left_out:>9}{bare:>6}{found.aligned_share:>9.2f}{lines:>12.2f}"
        f"{found.short_slants:>8}{bends:>11.2f}{score:>9,.0f}{ideas:>7}"
    )


def main() -> None:
    """Run the yards one after another."""
    parser = argparse.ArgumentParser(description="How composed the first concept of each yard is.")
    parser.add_argument("yards", nargs="+", type=Path)
    parser.add_argument("--seconds", type=float, default=10.0)
    asked = parser.parse_args()
    print(HEAD)
    for path in asked.yards:
        scenario = load_scenario(path)
        options = make_options(scenario, RunSettings(seconds=asked.seconds)).options
        if options:
            ideas = len(ideas_of(options[:LEADING]))
            print(row(path.stem, composed_of(scenario, options[0]), options[0].score, ideas), flush=True)
        else:
            print(f"{path.stem:<20} no concept", flush=True)


if __name__ == "__main__":
    main()
