"""Take-off and estimate of one concept as a table for a spreadsheet: every line, the stated steps, the totals."""

import csv
import io
from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Final

from optimizer.appraisal import Cost, CostLine
from optimizer.catalogue import PriceBook, allowance_words, assemblies, narrowest, price_text, with_allowances
from optimizer.concepts import Option, about_words, aim_words, level_words
from optimizer.results.forms import money
from optimizer.results.table import safe_cell
from optimizer.scenario import Scenario

COLUMNS: Final = (
    *("phase", "assembly", "room", "item", "words", "quantity", "unit", "unit_price"),
    *("amount", "price_low", "price_high", "range_low", "range_high", "how", "source"),
)
"""`price_low` and `price_high` are the amount at the ends of its prices; `range_low` and `range_high` what a total may
come to by the class of its estimate.
"""
_ENDS: Final = ("amount", "low", "high")
CAUTION: Final = (
    "An estimate at concept stage, no offer. Gas, electricity, structure, drainage, walls and pool barriers: local "
    "codes and licensed professionals decide."
)


def estimate_table(scenario: Scenario, option: Option) -> str:
    """CSV text. Money in the scenario's currency, quantities in the price book's units.

    Of each phase its lines by assembly and room, then the sum of each assembly, the stated steps and the phase's total
    with the range of its class of estimate; at the end the total, and what is to be known of all of it.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(COLUMNS)
    cost, book = option.appraisal.cost, with_allowances(scenario.book, scenario.brief.budget.allowances)
    for phase, _ in cost.phases:
        writer.writerows(_phase(cost, phase, book))
    writer.writerow(_total_row("", "total", cost.total, (cost.low, cost.high), "sum of the phases"))
    for note in _notes(scenario, option):
        writer.writerow(["", "note", "", "", safe_cell(note), *("",) * (len(COLUMNS) - 5)])
    return text.getvalue()


def _notes(scenario: Scenario, option: Option) -> tuple[str, ...]:
    cost, currency = option.appraisal.cost, scenario.currency
    aim = aim_words(cost, scenario.brief.budget.ceiling, currency)
    about = " ".join(words for words in (about_words(cost, currency), aim, level_words(option, currency)) if words)
    return (
        f"{scenario.name}, {option.title}, money in {scenario.currency}. {about}",
        scenario.book.said,
        f"Owner's allowances: {allowance_words(scenario.brief.budget.allowances, scenario.currency)}",
        CAUTION,
    )


def _phase(cost: Cost, phase: int, book: PriceBook) -> Iterator[list[str]]:
    own = [line for line in cost.lines if line.phase == phase]
    work = in_order([line for line in own if not line.is_step])
    yield from (_row(line, _words(book, line)) for line in work)
    for assembly in dict.fromkeys(line.assembly for line in work):
        lines = [line for line in work if line.assembly == assembly]
        amount, low, high = (sum((getattr(line, end) for line in lines), Decimal(0)) for end in _ENDS)
        count = f"{len(lines)} line{'s' * (len(lines) != 1)}"
        yield _row_of(str(phase), f"sum of {assembly}", (amount, low, high, None, None), count)
    yield from (_row(line, "Stated step") for line in own if line.is_step)
    known = cost.range_of(phase)
    ends = (known.low, known.high) if known else (None, None)
    spread = f"; {narrowest(known.estimate_class).words}, class {known.estimate_class}" if known else ""
    yield _total_row(str(phase), f"total of phase {phase}", cost.phase(phase), ends, f"lines and steps{spread}")


def in_order(lines: Sequence[CostLine]) -> list[CostLine]:
    """Lines by assembly in the order of an estimate; within one as they were counted, room by room."""
    order = {name: place for place, name in enumerate(assemblies())}
    return sorted(lines, key=lambda line: order.get(line.assembly, len(order)))


def _words(book: PriceBook, line: CostLine) -> str:
    return next((price.words for price in book.prices if price.item == line.item), line.item)


def _row(line: CostLine, words: str) -> list[str]:
    texts = (safe_cell(text) for text in (line.assembly, line.room, line.item, words))
    quantity = f"{line.quantity.normalize():f}"
    amounts = (money(amount) for amount in (line.amount, line.low, line.high))
    unit, price = safe_cell(line.unit), price_text(line.unit_price)
    how = (safe_cell(line.how), safe_cell(line.source))
    return [str(line.phase), *texts, quantity, unit, price, *amounts, "", "", *how]


def _total_row(phase: str, what: str, amount: Decimal, ends: Sequence[Decimal | None], how: str) -> list[str]:
    return _row_of(phase, what, (amount, None, None, *ends), how)


def _row_of(phase: str, what: str, amounts: Sequence[Decimal | None], how: str) -> list[str]:
    """Row of a sum: its amount, then ends of its prices and of its range, where it has them."""
    told = ("" if amount is None else money(amount) for amount in amounts)
    return [phase, safe_cell(what), *("",) * 6, *told, safe_cell(how), ""]
