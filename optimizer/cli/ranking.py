"""The ranked table, and the words for when there is none."""

from collections.abc import Iterator, Sequence
from typing import TextIO

from rich.box import SIMPLE_HEAD
from rich.table import Table
from rich.text import Text

from optimizer.catalogue import allowance_words, class_of, narrowest
from optimizer.cli.console import printable, say
from optimizer.cli.rich_console import console_on
from optimizer.concepts import Option, OptionSet, expected_words
from optimizer.concepts.walked import trips_missing
from optimizer.scenario import Scenario
from optimizer.units import metres_from_feet


def print_outcome(scenario: Scenario, option_set: OptionSet, *, asked: int, file: TextIO) -> None:
    """Print the concepts in order and what is to be said of them, or why there are none."""
    if option_set.concepts:
        console_on(file).print(_table(scenario, "concepts, in order", option_set.concepts))
        for line in _money_lines(scenario):
            say(line, file=file)
    for line in _remarks(option_set, asked):
        say(line, file=file)
    if option_set.sketches:
        console_on(file).print(_table(scenario, "layouts of your own", option_set.sketches))
    for line in _walking_lines(scenario, option_set.options):
        say(line, file=file)
    for line in (line for sketch in option_set.sketches for line in _broken(sketch)):
        say(line, file=file)


def _walking_lines(scenario: Scenario, options: Sequence[Option]) -> Iterator[str]:
    """What the star at some figures of walking means."""
    if any(trips_missing(scenario.brief, option) for option in options):
        yield "* Fewer trips: nobody walks to a room that is left out. Do not compare this figure with the others."


def _money_lines(scenario: Scenario) -> Iterator[str]:
    """How far the sums may be off, and where their prices come from."""
    budget = scenario.brief.budget
    spread = narrowest(class_of(1, budget.estimate_class)).words
    yield f"The range of phase 1 is {spread} of its sum, until soil, levels and lines are checked."
    yield allowance_words(budget.allowances, scenario.currency)
    yield scenario.book.said


def _broken(sketch: Option) -> Iterator[str]:
    """What a sketch breaks, a line each."""
    if sketch.findings:
        yield f"{sketch.sketch} breaks:"
    for finding in sketch.findings:
        yield f"  {finding.words}  [{finding.sentence}]"


def _table(scenario: Scenario, title: str, options: tuple[Option, ...]) -> Table:
    table = Table(box=SIMPLE_HEAD, title=Text(f"{scenario.name}: {title}"), title_justify="left")
    money, walking = f"phase 1 {scenario.currency}", f"walking {scenario.units}"
    for heading in ("rank", "concept", money, "expect", walking, "worth", "seats"):
        is_text = heading == "concept"
        table.add_column(Text(heading), justify="left" if is_text else "right", no_wrap=is_text)
    table.add_column("left out")
    table.add_column("reason", ratio=1)
    for option in options:
        table.add_row(*(Text(printable(cell)) for cell in _cells(scenario, option)))
    return table


def _cells(scenario: Scenario, option: Option) -> tuple[str, ...]:
    appraisal = option.appraisal
    walking = appraisal.walking_ft if scenario.units == "ft" else metres_from_feet(appraisal.walking_ft)
    left_out = ", ".join(left.room for left in option.left_out) or "-"
    cost, star = appraisal.cost, "*" if trips_missing(scenario.brief, option) else ""
    money = (f"{cost.phase(1):,.0f}", expected_words(cost))
    figures = (*money, f"{walking:,.0f}{star}", f"{appraisal.worth:g}", str(appraisal.seats))
    rank = "-" if option.rank is None else str(option.rank)
    return (rank, option.sketch or option.id, *figures, left_out, option.reason)


def _remarks(option_set: OptionSet, asked: int) -> tuple[str, ...]:
    found, search = len(option_set.concepts), option_set.search
    if not found:
        return _why_none(option_set)
    ended = ("Stopped on request: these are the best so far.",) if search.stopped else ()
    if found >= asked or search.stopped:
        return ended
    more = "no more were found that keep every rule and differ enough; --seconds gives more time"
    return (f"{found} of {asked} concepts: {more}.",)


def _why_none(option_set: OptionSet) -> tuple[str, ...]:
    if option_set.search.status != "nothing_fits":
        asked = "it was stopped" if option_set.search.stopped else "the time given ended"
        return (f"Undecided: no concept was found before {asked}; give more time with --seconds.",)
    conflict = option_set.conflict
    if conflict is None:
        return ("Nothing fits.",)
    rules = (f"  {sentence} ({', '.join(rooms)})" for _, sentence, rooms in conflict.rules)
    ways_out = (f"  way out: {way.text}" for way in conflict.ways_out)
    return (f"Nothing fits: {conflict.words}", *rules, *ways_out)
