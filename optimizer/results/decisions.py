"""Decisions on a yard with their reasons, as a table that goes from the page to a revision note."""

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from optimizer.errors import InputError, Problem
from optimizer.results.table import plain_cell, safe_cell
from optimizer.scenario.files import text_of

COLUMNS: Final = ("when", "version", "what", "reason")


@dataclass(frozen=True, slots=True)
class DecisionRow:
    """What was decided when, at which version of a yard, and the reason in the person's words; it may be empty."""

    when: str
    version: int
    what: str
    reason: str = ""


def decisions_csv(rows: Sequence[DecisionRow]) -> str:
    """The rows as a table, one a line."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows([row.when, row.version, safe_cell(row.what), safe_cell(row.reason)] for row in rows)
    return text.getvalue()


def decision_lines(rows: Sequence[DecisionRow]) -> Iterator[str]:
    """A line for each row."""
    for row in rows:
        reason = f" Why: {row.reason.rstrip('.')}." if row.reason else ""
        yield f"{row.when}, version {row.version}: {row.what.rstrip('.')}.{reason}"


def read_decisions(path: Path) -> tuple[DecisionRow, ...]:
    """Rows of a table that the page wrote.

    Raises InputError for a file that cannot be read or is no such table.
    """
    text = text_of(path, str(path), "a table of decisions")
    try:
        lines = list(csv.reader(io.StringIO(text), strict=True))
    except csv.Error as error:
        raise _wrong("a table (CSV)", str(error), path) from error
    if not lines or tuple(lines[0]) != COLUMNS:
        raise _wrong("columns " + ", ".join(COLUMNS), ", ".join(lines[0]) if lines else "nothing", path)
    return tuple(_row(line, number, path) for number, line in enumerate(lines[1:], start=2))


def _row(line: Sequence[str], number: int, path: Path) -> DecisionRow:
    if len(line) != len(COLUMNS) or not line[1].isdecimal() or len(line[1]) > 9:
        raise _wrong("when, version as a number, what and reason", ", ".join(line), path, f":{number}")
    return DecisionRow(line[0], int(line[1]), plain_cell(line[2]), plain_cell(line[3]))


def _wrong(expected: str, found: str, path: Path, line: str = "") -> InputError:
    advice = "take decisions.csv as the page hands it over"
    return InputError((Problem(expected, repr(found[:80]), advice, f"{path}{line}"),))
