"""Worths that follow from answers, put into the text where the file has them."""

from collections.abc import Sequence

from optimizer.worths import Thing
from ui.edits.text import with_value


def with_worths(text: str, things: Sequence[Thing], worths: Sequence[float]) -> str:
    """Text with these worths of things; what stays the same stays as it is written."""
    for thing, worth in zip(things, worths, strict=True):
        if worth != thing.worth:
            text = with_value(text, thing.path, int(worth) if worth == int(worth) else worth)
    return text


def worth_changes(things: Sequence[Thing], worths: Sequence[float]) -> str:
    """What changes, in words; empty for nothing."""
    changes = [
        f"{thing.name} {thing.worth:g} \N{RIGHTWARDS ARROW} {worth:g}"
        for thing, worth in zip(things, worths, strict=True)
        if worth != thing.worth
    ]
    return f"What you would miss: {', '.join(changes)}" if changes else ""
