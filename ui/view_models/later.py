"""What may come later on ground that is held for it, future by future, in words."""

from collections.abc import Iterator
from decimal import Decimal

from optimizer.appraisal import Outlook
from optimizer.concepts import Option
from optimizer.units import metres_from_feet
from ui.view_models.figure import Figure
from ui.view_models.words import Words, share_words

_ROUND_TO = Decimal(100)
"""No smaller amount means anything at concept stage."""


def later_figures(option: Option, words: Words) -> tuple[Figure, ...]:
    """A row for each future: whether it stays possible, its way in, and money now against later."""
    return tuple(
        Figure(f"{outlook.future}, on the {outlook.room}", _standing(outlook), _meaning(outlook, words))
        for outlook in option.futures
    )


def _standing(outlook: Outlook) -> str:
    if outlook.is_open:
        return "stays possible"
    return "by crane only" if outlook.fit.is_kept else "does not fit as it lies"


def _meaning(outlook: Outlook, words: Words) -> str:
    """What misses, the way in, and money: nobody prepares for what does not fit."""
    money = (_money(outlook, words),) if outlook.fit.is_kept else ()
    return " ".join((*_misses(outlook, words), _way(outlook), *money))


def _misses(outlook: Outlook, words: Words) -> Iterator[str]:
    """What misses most; the cautions name the rest and the reasons."""
    for miss in outlook.fit.misses[:1]:
        lacks = f"{miss.short_ft:.1f} ft" if words.units == "ft" else f"{metres_from_feet(miss.short_ft):.1f} m"
        yield f"{lacks} are missing, by the {miss.name}."


def _way(outlook: Outlook) -> str:
    access = outlook.access
    return f"Comes in from the {access.gate} by {access.vehicle}." if access.is_found else "Nothing drives in."


def _money(outlook: Outlook, words: Words) -> str:
    money = outlook.money
    now, with_it, without = (_said(amount, words) for amount in (money.now, money.later_with, money.later_without))
    told = f"At today's prices: prepared now for {now}, it costs {with_it} later; unprepared {without}."
    if money.pays_above is None:
        return f"{told} Preparing does not pay."
    return f"{told} Preparing pays if the chance of building it is more than {share_words(money.pays_above)}."


def _said(amount: Decimal, words: Words) -> str:
    return words.money((amount / _ROUND_TO).quantize(Decimal(1)) * _ROUND_TO)
