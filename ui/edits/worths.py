"""Worths that follow from answers, put into the text where the file has them."""

from collections.abc import Sequence
from typing import Final

from optimizer.worths import Thing
from ui.edits.text import with_value

NAMED: Final = 3
"""Changes that are named; the others are counted, so that what was decided can be read at a glance."""


def with_worths(text: str, things: Sequence[Thing], worths: Sequence[float]) -> str:
    """Text with these worths of things; what stays the same stays as it is written."""
    for thing, worth in zip(things, worths, strict=True):
        if worth != thing.worth:
            text = with_value(text, thing.path, int(worth) if worth == int(worth) else worth)
    return text


def worth_changes(things: Sequence[Thing], worths: Sequence[float]) -> str:
    """What changes, in words, the largest changes first and by name; empty for nothing."""
    pairs = [(thing, worth) for thing, worth in zip(things, worths, strict=True) if worth != thing.worth]
    pairs.sort(key=lambda pair: -_change(*pair))
    changes = [f"{thing.name} {thing.worth:g} \N{RIGHTWARDS ARROW} {worth:g}" for thing, worth in pairs[:NAMED]]
    others = f" and {len(pairs) - NAMED} more" if len(pairs) > NAMED else ""
    return f"What you would miss: {', '.join(changes)}{others}" if changes else ""


def _change(thing: Thing, worth: float) -> float:
    """How much larger or smaller a worth becomes, as a share of the larger of the two."""
    return abs(worth - thing.worth) / max(abs(worth), abs(thing.worth))
