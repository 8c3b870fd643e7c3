"""The table of a batch: what came of each file, and whether it has to be run again."""

import csv
import hashlib
import io
import json
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass, fields
from pathlib import Path
from typing import Any, Final

from optimizer.cli.exits import ExitStatus
from optimizer.cli.yard_run import YardDone
from optimizer.results.table import safe_cell

STATUS: Final = {
    ExitStatus.DONE: "done",
    ExitStatus.WRONG_INPUT: "wrong input",
    ExitStatus.NOTHING_FITS: "nothing fits",
    ExitStatus.UNDECIDED: "undecided",
}
_FAULT, _STOPPED = "fault", "stopped"


@dataclass(frozen=True, slots=True)
class BatchRow:
    """What came of one file. `run` stands for the versions and options it was run with."""

    file: str
    digest: str
    status: str
    exit: str
    seconds: str
    concepts: str
    best_score: str
    cost: str
    message: str
    run: str

    def is_of(self, digest: str, run: str) -> bool:
        """Whether it tells of the same content, run in the same way, and not of a fault or a stop."""
        return (self.digest, self.run) == (digest, run) and self.status not in {_FAULT, _STOPPED}


def digest_of(data: bytes) -> str:
    """SHA-256 of a file's content."""
    return hashlib.sha256(data).hexdigest()


def run_of(versions: dict[str, Any], arguments: Sequence[str]) -> str:
    """Short digest of the versions and options of a run."""
    text = json.dumps([versions, list(arguments)], sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def row_of(file: str, digest: str, run: str, done: YardDone) -> BatchRow:
    """The row of a file that was run."""
    result = json.loads(done.files.get("options.json", '{"options": [], "search": {"stopped": false}}'))
    concepts = [option for option in result["options"] if option["sketch"] is None]
    best = concepts[0] if concepts else None
    return BatchRow(
        file=file,
        digest=digest,
        status=_STOPPED if result["search"]["stopped"] else _status(done.exit),
        exit=str(done.exit),
        seconds=f"{done.seconds:g}",
        concepts=str(len(concepts)),
        best_score="" if best is None else f"{best['score']:.2f}",
        cost="" if best is None else str(best["cost"]["phases"].get("1", "")),
        message=done.message,
        run=run,
    )


def _status(exit_status: int) -> str:
    return STATUS[ExitStatus(exit_status)] if exit_status in STATUS else _FAULT


def table_text(rows: Iterable[BatchRow]) -> str:
    """CSV text, one row a file."""
    text = io.StringIO()
    writer = csv.DictWriter(text, [field.name for field in fields(BatchRow)], lineterminator="\n")
    writer.writeheader()
    writer.writerows({key: safe_cell(value) for key, value in asdict(row).items()} for row in rows)
    return text.getvalue()


def rows_in(path: Path) -> dict[str, BatchRow]:
    """Rows of an earlier table by file; none where there is no table, or none of ours."""
    names = [field.name for field in fields(BatchRow)]
    try:
        with path.open(encoding="utf-8", newline="") as file:
            found = csv.DictReader(file)
            if list(found.fieldnames or ()) != names:
                return {}
            return {row["file"]: BatchRow(**row) for row in found if None not in row.values() and None not in row}
    except (OSError, UnicodeDecodeError, csv.Error):
        return {}
