"""Changes that a person makes on the page, as changes of the scenario's own text: comments and order stay."""

from ui.edits.holds import SIDES, Held, hold_as_it_stands, hold_words, keep_out, of_area, with_hold, without_hold
from ui.edits.text import patched, with_value
from ui.edits.wanted import (
    AMOUNTS,
    STANDING_NAMES,
    STANDINGS,
    WEIGHT_NAMES,
    Standing,
    Wanted,
    amount_words,
    changed,
    standing_of,
    wanted_of,
)
from ui.edits.worths import with_worths, worth_changes

__all__ = [
    "AMOUNTS",
    "SIDES",
    "STANDINGS",
    "STANDING_NAMES",
    "WEIGHT_NAMES",
    "Held",
    "Standing",
    "Wanted",
    "amount_words",
    "changed",
    "hold_as_it_stands",
    "hold_words",
    "keep_out",
    "of_area",
    "patched",
    "standing_of",
    "wanted_of",
    "with_hold",
    "with_value",
    "with_worths",
    "without_hold",
    "worth_changes",
]
