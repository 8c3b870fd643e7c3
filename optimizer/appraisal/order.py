"""Order of a plan: edges on lines that they share with buildings, structures and each other, and places well chosen."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import combinations, product
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue import FOCAL_KIND, SizedRoom, rates
from optimizer.fields import across_contour_ft, off_axis, off_structure_ft
from optimizer.layout import Layout, Placement
from optimizer.site import Ring, Site

LINE_TOLERANCE_FT: Final = 1 / 12
"""Edges within 1 in of a line lie on it; common practice, no source."""


_NEAR_MISS_FT: Final = 2.0  # edges this far apart look meant; common practice, no source
_NEIGHBOUR_FT: Final = (
    12.0  # edges farther away from each other are not compared at a glance; common practice, no source
)


class Edge(NamedTuple):
    """An edge along one axis (0: upright, 1: level) at one coordinate [ft], from where to where, and its owner."""

    axis: int
    at_ft: float
    from_ft: float
    to_ft: float
    owner: str

    @property
    def length_ft(self) -> float:
        """Length [ft]."""
        return self.to_ft - self.from_ft


@dataclass(frozen=True, slots=True)
class OrderMeasures:
    """What is out of order: room edges on no shared line [ft], parallel edges of neighbours that nearly meet [ft], how
    far rooms lie off the structures over them [ft], whether a fire is on no axis of the house, and how much more steep
    ground rises along rooms' long sides than along their short ones [ft].
    """

    unaligned_ft: float = 0.0
    near_miss_ft: float = 0.0
    off_structure_ft: float = 0.0
    off_axis: int = 0
    across_contour_ft: float = 0.0


def order_measures(site: Site, rooms: Sequence[SizedRoom], layout: Layout) -> OrderMeasures:
    """Measures of a layout's order."""
    kinds = {room.name: room.rules.kind for room in rooms}
    focal = [place for place in layout.placements if kinds.get(place.room) == FOCAL_KIND]
    return OrderMeasures(
        unaligned_ft=unaligned_ft(site, layout),
        near_miss_ft=near_miss_ft(site, layout),
        off_structure_ft=sum(_of(partial(off_structure_ft, site, place.room), place) for place in layout.placements),
        off_axis=round(sum(_of(partial(off_axis, site), place) for place in focal)),
        across_contour_ft=sum(_of(partial(across_contour_ft, site), place) for place in layout.placements),
    )


def _of(measure: Callable[..., NDArray[Any]], place: Placement) -> float:
    """A measure of places at one place."""
    x, y = np.array(place.x_ft), np.array(place.y_ft)
    return float(measure(x, y, width_ft=place.width_ft, depth_ft=place.depth_ft))


def order_loss(measures: OrderMeasures) -> float:
    """Measures as one loss in money, before weighing."""
    rate = rates()
    return (
        rate.order * measures.unaligned_ft
        + rate.near_miss * measures.near_miss_ft
        + rate.off_structure * measures.off_structure_ft
        + rate.off_axis * measures.off_axis
        + rate.across_contour * measures.across_contour_ft
    )


def near_miss_ft(site: Site, layout: Layout) -> float:
    """Length of parallel edges of neighbours, or of a room and a building or structure, that are neither flush within
    1 in nor 2 ft apart [ft]; of two edges the shorter counts.
    """
    edges, fixed = tuple(room_edges(layout)), tuple(_site_edges(site))
    pairs = [*combinations(edges, 2), *product(edges, fixed)]
    return sum(min(one.length_ft, other.length_ft) for one, other in pairs if _nearly_meet(one, other))


def _nearly_meet(one: Edge, other: Edge) -> bool:
    off = abs(one.at_ft - other.at_ft)
    apart = max(one.from_ft, other.from_ft) - min(one.to_ft, other.to_ft)
    neighbours = one.axis == other.axis and one.owner != other.owner and apart <= _NEIGHBOUR_FT
    return neighbours and LINE_TOLERANCE_FT < off < _NEAR_MISS_FT - LINE_TOLERANCE_FT


def aligned_share(site: Site, layout: Layout) -> float:
    """Share of the length of all room edges that lies on a shared line; 1 without rooms."""
    total = sum(edge.length_ft for edge in room_edges(layout))
    return 1.0 if total == 0 else 1.0 - unaligned_ft(site, layout) / total


def unaligned_ft(site: Site, layout: Layout) -> float:
    """Length of room edges that lie on no line shared with a building, a structure or another room [ft]."""
    edges = tuple(room_edges(layout))
    lines = (*edges, *_site_edges(site))
    return sum(edge.length_ft for edge in edges if not any(_shares(edge, line) for line in lines))


def room_edges(layout: Layout) -> Iterator[Edge]:
    """Four edges of every room."""
    for placement in layout.placements:
        yield from _edges_of(placement)


def _edges_of(place: Placement) -> tuple[Edge, ...]:
    return (
        Edge(0, place.x_ft, place.y_ft, place.top_ft, place.room),
        Edge(0, place.right_ft, place.y_ft, place.top_ft, place.room),
        Edge(1, place.y_ft, place.x_ft, place.right_ft, place.room),
        Edge(1, place.top_ft, place.x_ft, place.right_ft, place.room),
    )


def _site_edges(site: Site) -> Iterator[Edge]:
    outlines = (*(thing.outline for thing in site.buildings), *(thing.outline for thing in site.structures))
    for outline in outlines:
        yield from _ring_edges(outline)


def _ring_edges(ring: Ring) -> Iterator[Edge]:
    """Edges of an outline that run along an axis; its owner has no name that a room could have."""
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        if abs(x0 - x1) <= LINE_TOLERANCE_FT:
            yield Edge(0, x0, min(y0, y1), max(y0, y1), "")
        elif abs(y0 - y1) <= LINE_TOLERANCE_FT:
            yield Edge(1, y0, min(x0, x1), max(x0, x1), "")


def _shares(edge: Edge, line: Edge) -> bool:
    same_line = edge.axis == line.axis and abs(edge.at_ft - line.at_ft) <= LINE_TOLERANCE_FT
    return same_line and edge.owner != line.owner
