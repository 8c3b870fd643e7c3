"""The main job: the work in a thread, the signals in the main one, and everything written at the end."""

import sys
from dataclasses import dataclass
from pathlib import Path
from threading import Event as Flag
from typing import Final

from optimizer.catalogue import sized_rooms
from optimizer.cli.exits import ExitStatus
from optimizer.cli.progress import Listener
from optimizer.cli.ranking import print_outcome
from optimizer.cli.watched import run_told
from optimizer.concepts import OptionSet
from optimizer.events import Event
from optimizer.results import csv_table, ready_folder, to_document, to_text, write_whole
from optimizer.results.with_without import with_without_csv
from optimizer.scenario import Scenario, load_scenario

SOLVER_LOG: Final = "solver.log"
SO_FAR: Final = "so-far.json"
"""The best so far of a run that goes on, for a program that reads its events: what is left of a run that is killed."""


@dataclass(frozen=True, slots=True)
class Call:
    """What was asked for; None where the scenario's own wish holds."""

    scenario: Path
    out: Path
    count: int | None
    seconds: float
    seed: int | None
    repeatable: bool
    start_from: Path | None
    solver_log: bool = False
    processes: int | None = None
    prices: Path | None = None


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of it."""

    scenario: Scenario
    option_set: OptionSet

    @property
    def status(self) -> ExitStatus:
        """Exit status of the run."""
        if self.option_set.concepts:
            return ExitStatus.DONE
        is_impossible = self.option_set.search.status == "nothing_fits"
        return ExitStatus.NOTHING_FITS if is_impossible else ExitStatus.UNDECIDED


def run_options(call: Call, *, as_json: bool) -> ExitStatus:
    """Search, write and print, and return the exit status; `as_json` leaves standard output to events."""
    outcome = run_told(
        lambda listener, stop: _work(call, listener, stop, tells_so_far=as_json),
        lambda outcome: _summary(call, outcome),
        scenario=call.scenario,
        seconds=call.seconds,
        repeatable=call.repeatable,
        as_json=as_json,
    )
    asked = call.count or outcome.scenario.brief.options.count
    print_outcome(outcome.scenario, outcome.option_set, asked=asked, file=sys.stderr if as_json else sys.stdout)
    return outcome.status


def _work(call: Call, listener: Listener, stop: Flag, *, tells_so_far: bool) -> Outcome:
    # The engine's libraries take a second to import: time that is already watched.
    from optimizer.pipeline import RunSettings, make_options

    scenario = load_scenario(call.scenario, call.prices)
    ready_folder(call.out)
    settings = RunSettings(
        count=call.count,
        seconds=call.seconds,
        seed=call.seed,
        repeatable=call.repeatable,
        processes=call.processes,
        start_from=call.start_from,
        solver_log=call.out / SOLVER_LOG if call.solver_log else None,
    )
    so_far = call.out / SO_FAR
    so_far.unlink(missing_ok=True)

    def show(option_set: OptionSet) -> None:
        write_whole(so_far, _text(Outcome(scenario, option_set)))

    found = make_options(scenario, settings, emit=listener.hear, stop=stop, show=show if tells_so_far else None)
    outcome = Outcome(scenario, found)
    listener.hear(Event("stage", {"stage": "Writing"}))
    _write(outcome, call.out)
    so_far.unlink(missing_ok=True)
    return outcome


def _write(outcome: Outcome, folder: Path) -> None:
    """Write the result first: nothing that a plan may run into shall cost it."""
    from optimizer.export import plan_svg
    from optimizer.pipeline import plan_drawing

    scenario, option_set = outcome.scenario, outcome.option_set
    write_whole(folder / "options.json", _text(outcome))
    table = csv_table(option_set.options, currency=scenario.currency, prices=scenario.book.said)
    write_whole(folder / "options.csv", table)
    if option_set.with_without:
        compared = with_without_csv(option_set.with_without, currency=scenario.currency)
        write_whole(folder / "with-without.csv", compared)
    for option in option_set.options:
        write_whole(folder / f"{option.id}.svg", plan_svg(plan_drawing(scenario, option)))


def _text(outcome: Outcome) -> str:
    scenario = outcome.scenario
    return to_text(to_document(scenario, sized_rooms(scenario.brief), outcome.option_set, book=scenario.book))


def _summary(call: Call, outcome: Outcome) -> dict[str, object]:
    search = outcome.option_set.search
    return {
        "exit": int(outcome.status),
        "status": search.status,
        "stopped": search.stopped,
        "found": len(outcome.option_set.concepts),
        "result": str(call.out / "options.json"),
    }
