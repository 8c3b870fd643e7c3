"""The ranked concepts as a table for a spreadsheet."""

import csv
import io
from collections.abc import Sequence
from typing import Final

from optimizer.concepts import Option
from optimizer.results.forms import money

_BEFORE_PHASES: Final = ("rank", "concept", "currency", "cost", "cost_low", "cost_high")
_AFTER_PHASES: Final = (
    *("walking_ft", "worth", "seats", "aligned_share", "leftover_share"),
    *("score", "rooms", "left_out", "idea", "reason", "sketch", "broken_rules", "futures", "futures_open", "prices"),
)


def csv_table(options: Sequence[Option], *, currency: str, prices: str = "") -> str:
    """CSV text, one row a concept, best first, sketches after them. Lengths in feet, money in `currency`; `prices` says
    where they come from.
    """
    phases = sorted({phase for option in options for phase, _ in option.appraisal.cost.phases})
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow([*_BEFORE_PHASES, *(f"cost_phase_{phase}" for phase in phases), *_AFTER_PHASES])
    writer.writerows([*_row(option, phases, currency), safe_cell(prices)] for option in options)
    return text.getvalue()


def safe_cell(text: str) -> str:
    """Text on one line that no spreadsheet takes for a formula."""
    line = " ".join(text.split())
    return f"'{line}" if line.startswith(("=", "+", "-", "@")) else line


def plain_cell(text: str) -> str:
    """The line that `safe_cell` was given."""
    return text[1:] if text.startswith("'") and safe_cell(text[1:]) == text else text


def _row(option: Option, phases: Sequence[int], currency: str) -> list[str]:
    cost, appraisal = option.appraisal.cost, option.appraisal
    amounts = (cost.total, cost.low, cost.high, *(cost.phase(phase) for phase in phases))
    measures = (appraisal.walking_ft, appraisal.worth, appraisal.seats)
    shares = (appraisal.aligned_share, appraisal.leftover_share)
    rooms = "; ".join(f"{place.room} ({place.choice})" for place in option.layout.placements)
    left_out = "; ".join(left.room for left in option.left_out)
    return [
        "" if option.rank is None else str(option.rank),
        safe_cell(option.id),
        safe_cell(currency),
        *(money(amount) for amount in amounts),
        *(f"{measure:g}" if measure == int(measure) else f"{measure:.1f}" for measure in measures),
        *(f"{share:.3f}" for share in shares),
        f"{option.score:.2f}",
        safe_cell(rooms),
        safe_cell(left_out),
        safe_cell(option.idea.name if option.idea else ""),
        safe_cell(option.reason),
        safe_cell(option.sketch or ""),
        safe_cell("; ".join(finding.words for finding in option.findings)),
        safe_cell("; ".join(outlook.future for outlook in option.futures)),
        safe_cell("; ".join(option.open_futures)),
    ]
