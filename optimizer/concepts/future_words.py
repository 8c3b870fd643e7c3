"""What is said of one future of held ground: whether it stays possible, and money now against later."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Final

from optimizer.appraisal import Outlook
from optimizer.concepts.option import Option

DIG_CAUTION: Final = (
    "Before anybody digs or drives a machine in: have lines in the ground marked, in the US call 811 two to three days "
    "ahead; ask what carries the machine, over tanks, drains, slabs and old walls. Local codes and licensed trades "
    "decide on barriers, gas, electricity and structure."
)
_ROUND_TO: Final = Decimal(100)
"""No smaller amount means anything at concept stage."""


def futures_by_name(option: Option) -> Mapping[str, Outlook]:
    """What may come later, by its name; with its room where two rooms are held for the same."""
    names = [outlook.future for outlook in option.futures]
    return {one.future if names.count(one.future) == 1 else f"{one.future}, {one.room}": one for one in option.futures}


def standing_words(outlook: Outlook) -> str:
    """Whether a future stays possible."""
    if outlook.is_open:
        return "stays possible"
    return "by crane only" if outlook.fit.is_kept else "does not fit as it lies"


def now_or_later_words(outlook: Outlook, currency: str) -> str:
    """Money now against later, and the chance above which preparing pays; nothing for what does not fit."""
    if not outlook.fit.is_kept:
        return ""
    money = outlook.money
    now, prepared, unprepared = (
        f"{rounded_later(amount):,.0f} {currency}" for amount in (money.now, money.later_with, money.later_without)
    )
    told = f"At today's prices: prepared now for {now}, it costs {prepared} later; unprepared {unprepared}."
    return f"{told} {pays_words(outlook)}"


def pays_words(outlook: Outlook) -> str:
    """From which chance of ever building it on preparing pays."""
    if outlook.money.pays_above is None:
        return "Preparing does not pay."
    return f"Preparing pays if the chance of building it is more than {outlook.money.pays_above:.0%}."


def rounded_later(amount: Decimal) -> Decimal:
    """An amount of a later phase as it is said."""
    return (amount / _ROUND_TO).quantize(Decimal(1)) * _ROUND_TO
