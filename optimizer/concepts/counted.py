"""What a concept's lines consist of, and what no line of it has: both said of concepts that are shown."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from optimizer.appraisal import Cost
from optimizer.catalogue import SITE, Charge, PriceBook, UnitPrice, to_cents
from optimizer.derived import Derived
from optimizer.quantities import POOR_ACCESS, RETURN, Extra, Part, extras_of, parts_of, poor_access, way_ft

_RULE: Final = "by rule"
_PRACTICE: Final = "common practice, no source"


@dataclass(frozen=True, slots=True)
class NotIncluded:
    """Something that a concept may come to need and no line pays for: its range without contingency, and the rule that
    leaves it out.
    """

    item: str
    words: str
    low: Decimal
    high: Decimal
    rule: str


@dataclass(frozen=True, slots=True)
class TakeOff:
    """Parts under the priced lines, and what is not included."""

    parts: tuple[Part, ...]
    not_included: tuple[NotIncluded, ...]


def take_off_of(derived: Derived, cost: Cost, book: PriceBook) -> TakeOff:
    """Take-off of a layout with this cost sheet; nothing of a layout without rooms."""
    lines = [line for line in cost.lines if not line.is_step]
    charges = [Charge(line.phase, line.room, line.item, line.quantity) for line in lines]
    if not charges:
        return TakeOff((), ())
    extras = extras_of(derived, [charge for charge in charges if not _is_extra(charge)])
    parts = (*parts_of(derived, charges), *_by_rule(derived, charges, extras, book))
    paid = {charge.item for charge in charges if charge.room == SITE}
    return TakeOff(parts, tuple(_left_out(extra, book) for extra in extras if extra.item not in paid))


def _is_extra(charge: Charge) -> bool:
    return charge.room == SITE and charge.item in {"light", POOR_ACCESS, RETURN}


def _by_rule(derived: Derived, charges: Sequence[Charge], extras: Sequence[Extra], book: PriceBook) -> Iterator[Part]:
    """Why each of the extras is there, and each share of money."""
    rules, by_hand = {extra.item: extra.rule for extra in extras}, poor_access(derived, charges)
    on_site = [charge for charge in charges if charge.room == SITE]
    for line in on_site:
        price, amount = book.of(line.item), float(line.quantity)
        if line.item in rules:
            is_in_parts = sum(charge.item == line.item for charge in on_site) > 1
            rule = f"{rules[line.item]}; all phases together" if is_in_parts else rules[line.item]
            yield Part(SITE, line.item, _RULE, amount, price.unit, rule, _PRACTICE, line.phase)
        elif line.item == POOR_ACCESS:
            rooms = ", ".join(dict.fromkeys(charge.room for charge in by_hand if charge.phase == line.phase))
            wide = f"{way_ft(derived.site):g} ft"
            how = f"{price.price:.0%} of earth and paving: no way of {wide} for machines to {rooms}"
            yield _share(line, price, how, "layout rules, 15 to 25 %")
        elif line.item == RETURN:
            how = f"{price.price:.0%} of what a later phase builds: people and machines come a second time"
            yield _share(line, price, how, "common practice, 8 to 15 %, no source")


def _share(line: Charge, price: UnitPrice, how: str, source: str) -> Part:
    return Part(SITE, line.item, _RULE, float(price.price), price.unit, how, source, line.phase)


def _left_out(extra: Extra, book: PriceBook) -> NotIncluded:
    price, usual = book.of(extra.item), Decimal(str(extra.usual))
    return NotIncluded(extra.item, price.words, to_cents(price.low * usual), to_cents(price.high * usual), extra.rule)


def not_included_caution(left_out: Sequence[NotIncluded], currency: str) -> Iterator[str]:
    """One sentence that names them with their ranges."""
    if left_out:
        named = ", ".join(f"{one.item} ({one.low:,.0f} to {one.high:,.0f} {currency})" for one in left_out)
        yield f"Not included: {named}."
