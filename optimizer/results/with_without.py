"""With and without as a table for a spreadsheet, and what of it the concepts of the same result do not bear out."""

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Any, Final

from optimizer.concepts import Side, WithWithout
from optimizer.results.forms import money
from optimizer.results.table import safe_cell

_FIGURES: Final = ("concept", "cost", "worth", "walking_ft", "score")
_MORE: Final = ("more_cost", "more_worth", "more_walking_ft")
_EVEN: Final = 0.01


def with_without_csv(pairs: Sequence[WithWithout], *, currency: str) -> str:
    """CSV text, a row for each room or larger size: the best with it, the best without it, and what it costs more."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    sides = (f"{side}_{figure}" for side in ("with", "without") for figure in _FIGURES)
    writer.writerow(["room", "size", "currency", *sides, *_MORE, "changes"])
    for pair in pairs:
        both = (*_cells(pair.with_it), *_cells(pair.without_it), *_more(pair))
        writer.writerow([safe_cell(pair.room), safe_cell(pair.size or ""), currency, *both, safe_cell(pair.changes)])
    return text.getvalue()


def with_without_differences(document: Mapping[str, Any]) -> Iterator[str]:
    """Sides that are not as the concepts that they name."""
    options = {option["id"]: option for option in document["options"]}
    for pair in document.get("with_without") or ():
        for key in ("with_it", "without_it"):
            side = pair[key]
            if side is not None and side["concept"] is not None and not _is_so(side, options.get(side["concept"])):
                yield f"with_without of {pair['room']}: {key} is not as {side['concept']}"


def _is_so(side: Mapping[str, Any], option: Mapping[str, Any] | None) -> bool:
    if option is None:
        return False
    measures = option["measures"]
    told = (side["worth"], side["walking_ft"], side["score"])
    found = (measures["worth"], measures["walking_ft"], option["score"])
    is_even = all(abs(a - b) <= _EVEN for a, b in zip(told, found, strict=True))
    return is_even and Decimal(side["cost"]) == Decimal(option["cost"]["phases"].get("1", "0"))


def _cells(side: Side | None) -> list[str]:
    if side is None:
        return [""] * len(_FIGURES)
    figures = (f"{side.worth:g}", f"{side.walking_ft:.1f}", f"{side.score:.2f}")
    return [side.concept or "", money(side.cost), *figures]


def _more(pair: WithWithout) -> list[str]:
    one, other = pair.with_it, pair.without_it
    if one is None or other is None:
        return [""] * len(_MORE)
    walking = one.walking_ft - other.walking_ft
    return [money(one.cost - other.cost), f"{one.worth - other.worth:g}", f"{walking:.1f}"]
