"""What each budget buys: the search, and budgets.json, budgets.csv, a picture and a plan of each concept."""

import sys
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from threading import Event as Flag
from typing import TextIO

from rich.box import SIMPLE_HEAD
from rich.table import Table
from rich.text import Text

from optimizer.catalogue import sized_rooms
from optimizer.cli.console import printable, say
from optimizer.cli.exits import ExitStatus
from optimizer.cli.progress import Listener
from optimizer.cli.rich_console import console_on
from optimizer.cli.watched import run_told
from optimizer.concepts.budgets import BudgetSet
from optimizer.events import Event
from optimizer.results import ready_folder, to_text, write_whole
from optimizer.results.budgets import budgets_csv, budgets_document
from optimizer.scenario import Scenario, load_scenario


@dataclass(frozen=True, slots=True)
class BudgetsCall:
    """What was asked for; None where the range follows from the wishes."""

    scenario: Path
    out: Path
    lowest: Decimal | None
    highest: Decimal | None
    steps: int
    seconds: float
    seed: int | None
    repeatable: bool
    start_from: Path | None
    prices: Path | None = None


@dataclass(frozen=True, slots=True)
class BudgetsOutcome:
    """What came of it."""

    scenario: Scenario
    found: BudgetSet

    @property
    def status(self) -> ExitStatus:
        """Exit status of the run."""
        if self.found.points:
            return ExitStatus.DONE
        return ExitStatus.NOTHING_FITS if self.found.highest_is_too_low else ExitStatus.UNDECIDED


def run_budgets(call: BudgetsCall, *, as_json: bool) -> ExitStatus:
    """Search, write and print, and return the exit status; `as_json` leaves standard output to events."""
    outcome = run_told(
        lambda listener, stop: _work(call, listener, stop),
        lambda outcome: _summary(call, outcome),
        scenario=call.scenario,
        seconds=call.seconds,
        repeatable=call.repeatable,
        as_json=as_json,
    )
    _print(outcome, file=sys.stderr if as_json else sys.stdout)
    return outcome.status


def _work(call: BudgetsCall, listener: Listener, stop: Flag) -> BudgetsOutcome:
    from optimizer.pipeline import BudgetSettings, what_budgets_buy

    scenario = load_scenario(call.scenario, call.prices)
    ready_folder(call.out)
    settings = BudgetSettings(
        lowest=call.lowest,
        highest=call.highest,
        points=call.steps,
        seconds=call.seconds,
        seed=call.seed,
        repeatable=call.repeatable,
        start_from=call.start_from,
    )
    outcome = BudgetsOutcome(scenario, what_budgets_buy(scenario, settings, emit=listener.hear, stop=stop))
    listener.hear(Event("stage", {"stage": "Writing"}))
    _write(outcome, call.out)
    return outcome


def _write(outcome: BudgetsOutcome, folder: Path) -> None:
    from optimizer.export import plan_svg
    from optimizer.pipeline import plan_drawing

    scenario, found = outcome.scenario, outcome.found
    document = budgets_document(scenario, sized_rooms(scenario.brief), found, book=scenario.book)
    write_whole(folder / "budgets.json", to_text(document))
    write_whole(folder / "budgets.csv", budgets_csv(found, currency=scenario.currency, prices=scenario.book.said))
    if found.points:
        write_whole(folder / "budgets.svg", _picture(scenario, found))
    for option in found.options:
        write_whole(folder / f"{option.id}.svg", plan_svg(plan_drawing(scenario, option)))


def _picture(scenario: Scenario, found: BudgetSet) -> str:
    from optimizer.export.budget_picture import budget_picture

    return budget_picture(scenario.name, found, scenario.currency, scenario.brief.budget.ceiling)


def _summary(call: BudgetsCall, outcome: BudgetsOutcome) -> dict[str, object]:
    return {
        "exit": int(outcome.status),
        "stopped": outcome.found.stopped,
        "found": len(outcome.found.points),
        "result": str(call.out / "budgets.json"),
    }


def _print(outcome: BudgetsOutcome, *, file: TextIO) -> None:
    scenario, found = outcome.scenario, outcome.found
    if found.points:
        console_on(file).print(_table(scenario, found))
        say(scenario.book.said, file=file)
        say("The most worth possible is counted at the lowest prices, without ways and steps.", file=file)
    elif found.highest_is_too_low:
        say(f"Nothing fits: what is required costs more than {found.highest:,.0f} {scenario.currency}.", file=file)
    else:
        say("Undecided: no layout was found; `outdoor-rooms options` says why, --seconds gives more time.", file=file)
    if found.stopped:
        say("Stopped on request: these are the best so far.", file=file)


def _table(scenario: Scenario, found: BudgetSet) -> Table:
    table = Table(box=SIMPLE_HEAD, title=Text(f"{scenario.name}: what each budget buys"), title_justify="left")
    for heading in (f"ceiling {scenario.currency}", "cost", "worth", "at most"):
        table.add_column(Text(heading), justify="right")
    has_levels = bool(scenario.brief.finish_levels)
    if has_levels:
        table.add_column("materials", no_wrap=True)
    table.add_column("concept", no_wrap=True)
    table.add_column("what it buys", ratio=1)
    for point, option in zip(found.points, found.options, strict=True):
        most = "proven" if point.status == "proven" else f"{point.bound:g}"
        level = [point.level or ""] * has_levels
        figures = (f"{point.ceiling:,.0f}", f"{point.cost:,.0f}", f"{point.worth:g}", most)
        cells = (*figures, *level, option.id, option.reason)
        table.add_row(*(Text(printable(cell)) for cell in cells))
    return table
