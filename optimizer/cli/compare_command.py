"""Two concepts of one yard side by side: rooms, figures, and every line of the estimate that differs."""

import csv
import io
import sys
from collections.abc import Sequence
from pathlib import Path

from rich.box import SIMPLE_HEAD
from rich.table import Table
from rich.text import Text

from optimizer.cli.console import printable, say
from optimizer.cli.rich_console import console_on
from optimizer.concepts import Option
from optimizer.concepts.walked import only_words, walked_by_both
from optimizer.errors import InputError, Problem
from optimizer.results import Result, read_result, write_whole
from optimizer.results.decisions import decision_lines, read_decisions
from optimizer.results.forms import money
from optimizer.results.line_differences import LineDifference, line_differences
from optimizer.results.revision import figure_changes, revision_note, room_changes
from optimizer.results.table import safe_cell


def compare(
    first: Path, second: Path | None, ids: Sequence[str], out: Path | None, decided: Path | None = None
) -> None:
    """Print what a second concept has other than the first, and write the lines to a file where one is given.

    A .txt file takes the revision note in their place. `decided` is a table of decisions that the page wrote.

    Raises InputError where there are not two concepts of one yard or no such table, ResultError for a result that
    cannot be read.
    """
    decisions = () if decided is None else read_decisions(decided)
    ours = read_result(first)
    theirs = ours if second is None else read_result(second)
    before, after = _concepts(ours, theirs, ids, (first, second or first))
    _refuse_another_yard(ours, theirs, second or first)
    found = line_differences(before, after)
    _print(ours, before, after, found)
    for line in decision_lines(decisions):
        say(f"Decided {line}")
    if ours.scenario.book.digest != theirs.scenario.book.digest:
        say(f"The two have other price books. First: {ours.scenario.book.said} Second: {theirs.scenario.book.said}")
    else:
        say(ours.scenario.book.said)
    if out is not None:
        is_note = out.suffix.lower() == ".txt"
        write_whole(out, revision_note(ours.scenario, before, after, decisions) if is_note else _csv(found))
        say(f"Wrote {out}")


def _concepts(ours: Result, theirs: Result, ids: Sequence[str], paths: tuple[Path, Path]) -> tuple[Option, Option]:
    if len(ids) > 2 or not ids or (len(ids) == 1 and ours is theirs):
        what = "two concepts: --option ID --option ID"
        advice = "name both, or give another result with --with"
        raise InputError((Problem(what, f"{len(ids)} of them", advice, where="--option"),))
    wanted = (ids[0], ids[-1])
    found = [result.option(name) for result, name in zip((ours, theirs), wanted, strict=True)]
    for option, name, result, path in zip(found, wanted, (ours, theirs), paths, strict=True):
        if option is None:
            known = ", ".join(one.id for one in result.option_set.options) or "none"
            raise InputError((Problem(f"a concept of {path}", repr(name), f"it has {known}", where="--option"),))
    before, after = found
    assert before is not None
    assert after is not None
    return before, after


def _refuse_another_yard(ours: Result, theirs: Result, path: Path) -> None:
    if ours.scenario.site.boundary != theirs.scenario.site.boundary:
        found = f"{theirs.scenario.name}, which has another boundary than {ours.scenario.name}"
        raise InputError((Problem("two results of the same yard", found, "compare results of one yard", str(path)),))
    if ours.scenario.currency != theirs.scenario.currency:
        found = f"{ours.scenario.currency} and {theirs.scenario.currency}"
        raise InputError((Problem("two results in one currency", found, "money is never converted", str(path)),))


def _print(ours: Result, before: Option, after: Option, found: Sequence[LineDifference]) -> None:
    scenario = ours.scenario
    say(f"{scenario.name}: {after.title} ({after.id}) against {before.title} ({before.id})")
    say("")
    for change in room_changes(scenario, before, after) or ("All rooms stand as they stood.",):
        say(f"  {change}")
    figures = [(one.name, one.before, one.after, one.more) for one in figure_changes(scenario, before, after)]
    if figures:
        _show(f"figures, money in {scenario.currency}", ("figure", "first", "second", "more"), figures, texts=1)
    for line in only_words(walked_by_both(scenario.brief, before, after), before.title, after.title):
        say(f"  {line}")
    if found:
        rows = [(str(one.phase), one.room, one.item, one.cause, one.words, f"{one.more:+,.0f}") for one in found]
        _show("what is dearer or cheaper, and why", ("phase", "where", "what", "why", "how", "more"), rows, texts=5)
    say(f"In all {sum(one.more for one in found):+,.2f} {scenario.currency}.")


def _show(title: str, headings: Sequence[str], rows: Sequence[Sequence[str]], *, texts: int) -> None:
    table = Table(box=SIMPLE_HEAD, title=Text(title), title_justify="left")
    for place, heading in enumerate(headings):
        table.add_column(heading, justify="left" if place < texts else "right", no_wrap=place >= texts)
    for row in rows:
        table.add_row(*(Text(printable(cell)) for cell in row))
    console_on(sys.stdout).print(table)


def _csv(found: Sequence[LineDifference]) -> str:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(("phase", "assembly", "room", "item", "before", "after", "more", "why", "how"))
    for one in found:
        names = (safe_cell(name) for name in (one.assembly, one.room, one.item))
        amounts = (money(amount) for amount in (one.before, one.after, one.more))
        writer.writerow([one.phase, *names, *amounts, one.cause, safe_cell(one.words)])
    return text.getvalue()
