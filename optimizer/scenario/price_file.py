"""A firm's price book as a file: YAML, JSON or CSV to rows that keep their places."""

import csv
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Any, Final

from optimizer.errors import Problem, ScenarioError
from optimizer.scenario.document import Complaint, Document, Path, read_document

HEAD_KEYS: Final = ("name", "date", "region", "currency", "based_on", "note")
"""What is said once for all prices; in a CSV file each row repeats it."""
ROW_KEYS: Final = ("item", "unit", "price", "low", "high", "words")
MOST_ROWS: Final = 2000
_LONGEST_CELL: Final = 10_000


@dataclass(frozen=True, slots=True)
class PriceRows:
    """What a file says: head and rows as written, and the document that knows their places."""

    head: Mapping[str, Any]
    rows: tuple[Mapping[str, Any], ...]
    document: Document
    complaints: tuple[Complaint, ...] = ()


def rows_of(text: str, name: str) -> PriceRows:
    """Rows of a file's text; how it is read follows from the ending of its name.

    Raises
    ------
    ScenarioError
        If the text is no YAML, JSON or CSV at all; all else is a complaint of the rows.
    """
    return _from_csv(text, name) if FilePath(name).suffix.lower() == ".csv" else _from_yaml(text, name)


def _from_yaml(text: str, name: str) -> PriceRows:
    document = read_document(text, name)
    if not isinstance(document.data, dict):
        raise ScenarioError((Problem("a price book with keys", "something else", "write `prices:` with a list", name),))
    head = {key: value for key, value in document.data.items() if key in HEAD_KEYS}
    complaints = [*document.complaints, *_unknown(document.data, (*HEAD_KEYS, "prices"), ())]
    given = document.data.get("prices", ())
    rows = given if isinstance(given, tuple) else ()
    if not rows:
        complaints.append(Complaint(("prices",), "a list of prices", "none", "give each item one line"))
    complaints += [c for i, row in enumerate(rows) for c in _row_complaints(row, i)]
    return PriceRows(head, tuple(row if isinstance(row, dict) else {} for row in rows), document, tuple(complaints))


def _row_complaints(row: Any, number: int) -> Iterator[Complaint]:
    path: Path = ("prices", number)
    if isinstance(row, dict):
        yield from _unknown(row, ROW_KEYS, path)
    else:
        yield Complaint(
            path, f"keys with values: {', '.join(ROW_KEYS)}", repr(row)[:60], "write {item: ..., unit: ...}"
        )


def _unknown(data: Mapping[str, Any], known: tuple[str, ...], path: Path) -> Iterator[Complaint]:
    for key in data:
        if key not in known:
            yield Complaint((*path, key), f"one of the keys {', '.join(known)}", repr(key), "take it away", at_key=True)


def _from_csv(text: str, name: str) -> PriceRows:
    """Rows of a table whose first line names the columns; what belongs to the head must be alike in all of them."""
    document, rows, complaints = Document(name, None), list[dict[str, Any]](), list[Complaint]()
    heads: dict[str, tuple[str, Path]] = {}
    for number, row in _records(text, name, document, complaints):
        path: Path = ("prices", number)
        rows.append({key: value for key, value in row.items() if key in ROW_KEYS})
        for key in HEAD_KEYS:
            first = heads.setdefault(key, (row[key], (*path, key))) if row.get(key) else None
            if first and first[0] != row[key]:
                found = f"{row[key]!r} after {first[0]!r}"
                complaints.append(Complaint((*path, key), f"one {key} for the whole file", found, "make them alike"))
    for key, (_, path) in heads.items():
        document.values[key,] = document.values[path]
    if not rows:
        complaints.append(Complaint((), "a row for each item", "none", "write them below the names of the columns"))
    return PriceRows({key: value for key, (value, _) in heads.items()}, tuple(rows), document, tuple(complaints))


def _records(
    text: str, name: str, document: Document, complaints: list[Complaint]
) -> Iterator[tuple[int, dict[str, Any]]]:
    """Number and cells of each row, empty ones left out; the place of a cell is its line and its column's number."""
    table = csv.reader(io.StringIO(text), strict=True)
    csv.field_size_limit(_LONGEST_CELL)
    try:
        columns = [cell.strip() for cell in next(table, [])]
        complaints += _unknown(dict.fromkeys(columns), (*ROW_KEYS, *HEAD_KEYS), ())
        for number, cells in enumerate(row for row in table if any(cell.strip() for cell in row)):
            path: Path = ("prices", number)
            document.values[path] = (table.line_num, 1)
            if len(cells) > len(columns):
                advice = "put text with commas in quotes"
                complaints.append(Complaint(path, f"{len(columns)} cells", str(len(cells)), advice))
            row = {key: cell.strip() for key, cell in zip(columns, cells, strict=False) if cell.strip()}
            places = {(*path, key): (table.line_num, column) for column, key in enumerate(columns, 1)}
            document.values.update(places)
            yield number, row
    except csv.Error as error:
        where = f"{name}:{table.line_num}"
        raise ScenarioError((Problem("a table with commas", str(error), "save it as CSV in UTF-8", where),)) from None
