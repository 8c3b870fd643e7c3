"""The marks of what may come later: each future's outline in held ground, and the widest way in, kept free for it."""

from collections.abc import Iterator, Sequence
from typing import Final

import shapely
from shapely import LinearRing, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.appraisal import Outlook
from optimizer.drawing.marks import Area, Line, Mark
from optimizer.drawing.words import Units, length_text

SWEEP_ROLE: Final = "later_way"
"""Ground that a machine sweeps."""
MIDDLE_ROLE: Final = "later_middle"
GROUND_ROLE: Final = "later_ground"
WATER_ROLE: Final = "later_water"
PAD_ROLE: Final = "later_pad"
LATER_ROLES: Final = frozenset({SWEEP_ROLE, MIDDLE_ROLE, GROUND_ROLE, WATER_ROLE, PAD_ROLE})


def future_marks(futures: Sequence[Outlook]) -> Iterator[Mark]:
    """The band of the widest way to each reserve with its middle line, and grounds, waters and pads of what fits."""
    for room in dict.fromkeys(outlook.room for outlook in futures):
        if widest := _widest([outlook for outlook in futures if outlook.room == room]):
            yield from (Area(SWEEP_ROLE, (ring,)) for ring in widest.access.swept)
            yield Line(MIDDLE_ROLE, widest.access.line)
    for outlook in futures:
        if outlook.fit.is_kept:
            yield Area(GROUND_ROLE, (outlook.fit.ground,))
            yield Area(WATER_ROLE, (outlook.fit.water,))
            if outlook.fit.pad is not None:
                yield Area(PAD_ROLE, (outlook.fit.pad,))


def banded(futures: Sequence[Outlook]) -> BaseGeometry:
    """Ground of the drawn ways in, and the outlines of what may come later: writing keeps off them where it can."""
    areas = [mark for mark in future_marks(futures) if isinstance(mark, Area)]
    return shapely.union_all(
        [Polygon(mark.rings[0]) if mark.role == SWEEP_ROLE else LinearRing(mark.rings[0]) for mark in areas]
    )


def told_rooms(futures: Sequence[Outlook]) -> frozenset[str]:
    """Held grounds on which what may come later is drawn as it fits."""
    return frozenset(outlook.room for outlook in futures if outlook.fit.is_kept)


def future_legend(futures: Sequence[Outlook], units: Units) -> dict[str, str]:
    """Words of the legend by role."""
    widest = _widest(futures)
    band = "" if widest is None else f"way in later, {length_text(widest.access.width_ft, units)} wide"
    return {SWEEP_ROLE: band, GROUND_ROLE: "what may come later", PAD_ROLE: "its equipment"}


def _widest(futures: Sequence[Outlook]) -> Outlook | None:
    found = [outlook for outlook in futures if outlook.access.is_found]
    return max(found, key=lambda outlook: outlook.access.width_ft, default=None)
