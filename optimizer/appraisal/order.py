"""How much of the rooms' edges lies on lines that they share with buildings, structures and each other."""

from collections.abc import Iterator
from typing import Final, NamedTuple

from optimizer.layout import Layout, Placement
from optimizer.site import Ring, Site

LINE_TOLERANCE_FT: Final = 1 / 12
"""Edges within 1 in of a line lie on it; common practice, no source."""


class Edge(NamedTuple):
    """An edge along one axis (0: upright, 1: level) at one coordinate [ft], and its owner."""

    axis: int
    at_ft: float
    length_ft: float
    owner: str


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
        Edge(0, place.x_ft, place.depth_ft, place.room),
        Edge(0, place.right_ft, place.depth_ft, place.room),
        Edge(1, place.y_ft, place.width_ft, place.room),
        Edge(1, place.top_ft, place.width_ft, place.room),
    )


def _site_edges(site: Site) -> Iterator[Edge]:
    outlines = (*(thing.outline for thing in site.buildings), *(thing.outline for thing in site.structures))
    for outline in outlines:
        yield from _ring_edges(outline)


def _ring_edges(ring: Ring) -> Iterator[Edge]:
    """Edges of an outline that run along an axis; its owner has no name that a room could have."""
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        if abs(x0 - x1) <= LINE_TOLERANCE_FT:
            yield Edge(0, x0, abs(y1 - y0), "")
        elif abs(y0 - y1) <= LINE_TOLERANCE_FT:
            yield Edge(1, y0, abs(x1 - x0), "")


def _shares(edge: Edge, line: Edge) -> bool:
    same_line = edge.axis == line.axis and abs(edge.at_ft - line.at_ft) <= LINE_TOLERANCE_FT
    return same_line and edge.owner != line.owner
