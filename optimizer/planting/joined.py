"""Scraps of planted ground become part of the bed that they lie along."""

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from optimizer.planting.bed import Bed

SCRAP_SQFT: Final = 6.0
"""A smaller piece is no bed of its own; common practice, no source."""
SAME_SQFT: Final = 0.01
"""A piece of just the least area is large enough, however the yard lies."""
_SHARE: Final = 0.25  # of a scrap's outline that lies on a bed: about one long side
_MEET_FT: Final = 0.01
_DIGITS: Final = 3


def joined(beds: Sequence[Bed], scraps: Sequence[Polygon]) -> tuple[Bed, ...]:
    """Beds with the scraps added to them; scraps that lie along none are beds of their own, on narrow ground.

    A scrap joins the bed that it shares most of its outline with: a quarter of it, or any of it where the scrap is too
    small for a bed.
    """
    outlines = np.array([bed.outline for bed in beds], dtype=object)
    wider = shapely.buffer(outlines, _MEET_FT, join_style="mitre")
    reasoned = [_reasoned(scrap, beds, wider) for scrap in scraps]
    return tuple(_merged([*beds, *reasoned]))


def _reasoned(scrap: Polygon, beds: Sequence[Bed], wider: NDArray[np.object_]) -> Bed:
    # Rounded, so that of beds that share as much the first has it, however the yard lies.
    shared = np.round(shapely.length(shapely.intersection(scrap.exterior, wider)), _DIGITS)
    if not beds or shared.max() <= _MEET_FT * 4:
        return Bed(scrap, "narrow ground")
    is_along = scrap.area < SCRAP_SQFT - SAME_SQFT or shared.max() >= _SHARE * scrap.exterior.length - _MEET_FT
    return Bed(scrap, beds[int(shared.argmax())].reason if is_along else "narrow ground")


def _merged(beds: Sequence[Bed]) -> Iterator[Bed]:
    """Beds of one reason that meet, as one."""
    for reason in dict.fromkeys(bed.reason for bed in beds):
        union = shapely.union_all([bed.outline for bed in beds if bed.reason == reason])
        for part in shapely.get_parts(union):
            yield Bed(part, reason)
