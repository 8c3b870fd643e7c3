"""The way that a mower takes to a lawn."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Final

import shapely
from shapely import Point, Polygon

from optimizer.circulation.ground import Ground, walkable_ground
from optimizer.circulation.paving import no_path_ground
from optimizer.fields import SITES
from optimizer.layout import TOLERANCE_FT, Layout, Placed
from optimizer.site import Site

MOWER_FT: Final = 4.0
"""Clear width that a mower needs; a riding mower 50 to 60 in (thisoldhouse.com), so the least of common practice."""
_NOTHING: Final = Placed((), Layout(()), ())


def unmown(site: Site, placed: Placed) -> Iterator[str]:
    """Lawns to which the other rooms leave a mower no way from any entrance that lets it in.

    A lawn that the bare yard keeps it from is no fault of the layout's.
    """
    lawns = placed.of_kind("lawn")
    if lawns:
        left, bare = tuple(_driven_on(site, placed)), _driven_on_bare(site)
        for lawn in lawns:
            if _is_met(lawn.shape, bare) and not _is_met(lawn.shape, left):
                yield lawn.name


@lru_cache(maxsize=SITES)
def _driven_on_bare(site: Site) -> tuple[Polygon, ...]:
    return tuple(_driven_on(site, _NOTHING))


def _driven_on(site: Site, placed: Placed) -> Iterator[Polygon]:
    """Pieces of ground that the middle of a mower comes to from the entrances."""
    wide = [Point(entrance.at) for entrance in site.entrances if entrance.width_ft >= MOWER_FT - TOLERANCE_FT]
    ground: Ground = walkable_ground(site, placed, MOWER_FT)
    standing = [item.buffer(MOWER_FT / 2, join_style="mitre") for item in no_path_ground(placed)]
    for part in shapely.get_parts(ground.difference(shapely.union_all(standing))):
        if any(part.distance(at) <= MOWER_FT / 2 + TOLERANCE_FT for at in wide):
            yield part


def _is_met(area: Polygon, pieces: Sequence[Polygon]) -> bool:
    return any(piece.distance(area) <= MOWER_FT / 2 + TOLERANCE_FT for piece in pieces)
