"""Sentences of the program as an owner reads them: money with its sign, and an owner's words for those of the trade."""

import re
from typing import Final

SIGNS: Final = {"USD": "$", "CAD": "CA$", "AUD": "A$", "EUR": "€", "GBP": "£"}
"""Signs of currencies; others are said by their code."""
_FIGURE: Final = r"(?<![\w.,$€£])([0-9][0-9,.]*)"
_IN_SENTENCES: Final = (
    (re.compile(r"\ba ceiling\b"), "an all-in limit"),
    (re.compile(r"\bceiling\b"), "all-in limit"),
    (re.compile(r"\b(its|a|the) contingency\b"), r"\1 sum for surprises"),
    (re.compile(r"\bcontingency\b"), "the sum for surprises"),
)


def with_signs(text: str, currency: str) -> str:
    """Write `1,523 USD` as `$1,523`, and `100 to 200 USD` as `$100 to $200`."""
    sign = SIGNS.get(currency)
    if sign is None:
        return text
    text = re.sub(rf"{_FIGURE} to ([0-9][0-9,.]*) {currency}\b", rf"{sign}\1 to {sign}\2", text)
    return re.sub(rf"{_FIGURE} {currency}\b", rf"{sign}\1", text)


def in_owners_words(text: str) -> str:
    """Say ceiling and contingency as an owner does."""
    for term, words in _IN_SENTENCES:
        text = term.sub(words, text)
    return text
