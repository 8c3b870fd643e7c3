"""A room that waits for a later phase: all of its work then, and its place kept until it is built."""

from collections.abc import Iterator
from dataclasses import replace
from re import search

from optimizer.brief import Brief, RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.rooms import Quantity, SizedChoice, SizedRoom
from optimizer.catalogue.sizing.prepared import PREPARED
from optimizer.catalogue.sizing.reserve import SLEEVES


def with_waiting(room: SizedRoom, wish: RoomWish, brief: Brief) -> SizedRoom:
    """The room with each of its choices in each later phase that it may be put into; as it is where it may not wait."""
    return replace(room, choices=(*_later(room, brief), *room.choices)) if wish.may_wait else room


def _later(room: SizedRoom, brief: Brief) -> Iterator[SizedChoice]:
    share = float(data("rates.yaml")["levels"]["waiting"])
    for phase in brief.budget.open_phases:
        yield from (_waiting(choice, phase, share) for choice in room.choices if not choice.is_later)


def _waiting(whole: SizedChoice, phase: int, share: float) -> SizedChoice:
    """A choice whose work is all done in a later phase. Its place is kept as if it stood, so that it can be built;
    until then nobody sits there. Sleeves for its supplies lie under what is paved before it.
    """
    label = waiting_label(whole.label, phase)
    has_supplies = any(quantity.item.endswith(" branch") for quantity in whole.quantities)
    sleeves = (Quantity(SLEEVES, 1, phase=1),) if has_supplies else ()
    return replace(
        whole,
        label=label,
        plain_label=whole.plain_label and waiting_label(whole.plain_label, phase),
        seats=0,
        worth=round(whole.worth * share, 6),
        furniture=tuple(replace(item, seats=0) for item in whole.furniture),
        quantities=(*(replace(quantity, phase=phase) for quantity in whole.quantities), *sleeves),
        prepares=whole.label,
        phase=phase,
    )


def waiting_label(label: str, phase: int) -> str:
    """Label of a choice that waits for a phase."""
    return f"{label}, in phase {phase}"


def comes_later(label: str) -> bool:
    """Whether a choice of this label is of a room that comes later, on its pad or whole."""
    return label == PREPARED or phase_in(label) is not None


def phase_in(label: str) -> int | None:
    """Phase that a choice of this label waits for; None where it does not wait."""
    found = search(r", in phase ([2-9])$", label)
    return int(found[1]) if found else None
