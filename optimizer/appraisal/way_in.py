"""What it loses that nothing drives in what may come later on held ground."""

from collections.abc import Sequence
from typing import Final

from optimizer.brief import Brief
from optimizer.catalogue import PriceBook, futures_of_wish

CRANE: Final = "crane"
"""Item of the price book: the other way in, over house or fence."""


def shut_off_loss(brief: Brief, shut_off: Sequence[tuple[str, str]], book: PriceBook) -> float:
    """What futures that are shut off lose in money, before weighing: of each reserve the price of a crane, shared out
    evenly over its futures, since nobody knows which of them comes; common practice, no source.
    """
    crane = float(book.of(CRANE).price)
    counts = {room.name: len(futures_of_wish(room)) for room in brief.rooms}
    return sum(crane / counts[reserve] for reserve, _ in shut_off)
