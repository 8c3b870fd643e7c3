"""With and without as a table for a spreadsheet."""

import csv
import io
from collections.abc import Sequence
from typing import Final

from optimizer.concepts import Side, WithWithout
from optimizer.results.forms import money
from optimizer.results.table import safe_cell

_FIGURES: Final = ("concept", "cost", "worth", "walking_ft", "score")
_MORE: Final = ("more_cost", "more_worth", "more_walking_ft", "trips_only_with", "trips_only_without")


def with_without_csv(pairs: Sequence[WithWithout], *, currency: str) -> str:
    """CSV text, a row for each room or larger size: the best with it, the best without it, and what it costs more.

    `more_walking_ft` is of the trips that both sides have; those that only one of them has stand beside it.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    sides = (f"{side}_{figure}" for side in ("with", "without") for figure in _FIGURES)
    writer.writerow(["room", "size", "currency", *sides, *_MORE, "changes"])
    for pair in pairs:
        both = (*_cells(pair.with_it), *_cells(pair.without_it), *_more(pair))
        writer.writerow([safe_cell(pair.room), safe_cell(pair.size or ""), currency, *both, safe_cell(pair.changes)])
    return text.getvalue()


def _cells(side: Side | None) -> list[str]:
    if side is None:
        return [""] * len(_FIGURES)
    figures = (f"{side.worth:g}", f"{side.walking_ft:.1f}", f"{side.score:.2f}")
    return [side.concept or "", money(side.cost), *figures]


def _more(pair: WithWithout) -> list[str]:
    one, other = pair.with_it, pair.without_it
    if one is None or other is None:
        return [""] * len(_MORE)
    walking = "" if pair.more_walking_ft is None else f"{pair.more_walking_ft:.1f}"
    trips = (safe_cell("; ".join(trips)) for trips in (pair.trips_only_with, pair.trips_only_without))
    return [money(one.cost - other.cost), f"{one.worth - other.worth:g}", walking, *trips]
