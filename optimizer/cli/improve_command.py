"""The layout nearest to a sketch: on the screen, as files, and drawn."""

import sys
from dataclasses import dataclass
from pathlib import Path
from threading import Event as Flag
from typing import Final, TextIO

from optimizer.catalogue import sized_rooms
from optimizer.cli.console import say
from optimizer.cli.exits import ExitStatus
from optimizer.cli.progress import Listener
from optimizer.cli.watched import run_told
from optimizer.concepts.improve.answer import Improvement
from optimizer.concepts.improve.measure import WORDS
from optimizer.results import ready_folder, to_document, to_text, write_whole
from optimizer.results.improvement import changes_of, improvement_document, sketches_only
from optimizer.scenario import load_scenario

IMPROVED: Final = "improve.json"


@dataclass(frozen=True, slots=True)
class ImproveCall:
    """What was asked for."""

    scenario: Path
    sketch: str
    out: Path
    seconds: float
    prices: Path | None = None


def run_improve(call: ImproveCall, *, as_json: bool = False) -> ExitStatus:
    """Look, write and print, and return the exit status; `as_json` leaves standard output to events."""
    found = run_told(
        lambda listener, stop: _work(call, listener, stop),
        lambda found: {"exit": int(_status(found)), "result": str(call.out / IMPROVED)},
        scenario=call.scenario,
        seconds=call.seconds,
        repeatable=False,
        as_json=as_json,
    )
    _print(call, found, file=sys.stderr if as_json else sys.stdout)
    return _status(found)


def _work(call: ImproveCall, listener: Listener, stop: Flag) -> Improvement:
    from optimizer.pipeline import improve

    scenario = load_scenario(call.scenario, call.prices)
    ready_folder(call.out)
    found = improve(scenario, call.sketch, seconds=call.seconds, emit=listener.hear, stop=stop)
    _write(call, found)
    return found


def _write(call: ImproveCall, found: Improvement) -> None:
    from optimizer.export import plan_svg
    from optimizer.pipeline import plan_drawing

    scenario = found.scenario
    write_whole(call.out / IMPROVED, to_text(improvement_document(found)))
    sketches = sketches_only(found, seconds=call.seconds)
    document = to_document(scenario, sized_rooms(scenario.brief), sketches, book=scenario.book)
    write_whole(call.out / "options.json", to_text(document))
    for option in found.sketches:
        write_whole(call.out / f"{option.id}.svg", plan_svg(plan_drawing(scenario, option)))


def _status(found: Improvement) -> ExitStatus:
    statuses = {"nothing_fits": ExitStatus.NOTHING_FITS, "undecided": ExitStatus.UNDECIDED}
    return statuses.get(found.found.status, ExitStatus.DONE)


def _count(broken: int) -> str:
    """How many things break a rule: one rule may be broken in several places."""
    if not broken:
        return "breaks no rule."
    return f"breaks rules in {broken} place{'' if broken == 1 else 's'}:"


def _print(call: ImproveCall, found: Improvement, *, file: TextIO) -> None:
    broken = found.before.findings
    say(f"{call.sketch} {_count(len(broken))}", file=file)
    for finding in broken:
        say(f"  {finding.words}", file=file)
    say(found.words, file=file)
    for change in changes_of(found):
        say(f"  {change}", file=file)
    if found.after is not None:
        say(WORDS, file=file)
        say(
            f"{found.after.sketch}: {call.out / found.after.id}.svg; recheck, compare and sheet take options.json.",
            file=file,
        )
