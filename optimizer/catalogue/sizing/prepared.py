"""What prepares for a room that is built later: its pad and the stubs of its supplies, now."""

from dataclasses import replace
from typing import Final

from optimizer.brief import LATER_PHASE
from optimizer.catalogue.finish import PAVING_ITEMS
from optimizer.catalogue.rooms import Quantity, SizedChoice

PREPARED: Final = "pad and stubs now"
"""Label of the choice."""
_STUB: Final = " branch"


def prepared(whole: SizedChoice, worth: float) -> SizedChoice:
    """Pad and stubs for a choice: its ground as it is paved, and its branches, capped, in phase 1; the rest later.

    What will stand there keeps its place, so that every rule asks whether it can be built; nobody sits on it yet.
    """
    return replace(
        whole,
        label=PREPARED,
        seats=0,
        worth=worth,
        furniture=tuple(replace(item, seats=0) for item in whole.furniture),
        quantities=tuple(quantity if _is_laid_now(quantity) else _later(quantity) for quantity in whole.quantities),
        prepares=whole.label,
    )


def _is_laid_now(quantity: Quantity) -> bool:
    return quantity.item in PAVING_ITEMS or quantity.item.endswith(_STUB)


def _later(quantity: Quantity) -> Quantity:
    return replace(quantity, phase=LATER_PHASE)
