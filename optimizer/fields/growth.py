"""Lines that a room may grow to: of house, structure, landing or neighbouring room; and how far it may grow there."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Final

from optimizer.catalogue import most_growth_ft
from optimizer.fields.edges import LINE_TOLERANCE_FT, NEIGHBOUR_FT, Edge, are_neighbours, ring_edges, site_edges
from optimizer.fields.site_shapes import SITES, site_shapes
from optimizer.layout import Front, Placement
from optimizer.site import Site

_EVEN_FT: Final = 1e-6
_TOUCHES_FT: Final = 0.02


def edge_of(place: Placement, side: Front) -> Edge:
    """One side's edge of a placed room."""
    if side[1] == "x":
        return Edge(0, place.edge_ft(side), place.y_ft, place.top_ft, place.room)
    return Edge(1, place.edge_ft(side), place.x_ft, place.right_ft, place.room)


def lines_for(site: Site, edge: Edge, others: Iterable[Edge]) -> Iterator[Edge]:
    """Lines along the axis of an edge that the eye holds it against: of buildings and structures, however far along
    they stand, and of landings and other rooms within a glance.
    """
    house, landings = _fixed(site)
    yield from (line for line in house if line.axis == edge.axis)
    yield from (line for line in (*landings, *others) if line.axis == edge.axis and _lies_near(edge, line))


@lru_cache(maxsize=SITES)
def _fixed(site: Site) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    return tuple(site_edges(site)), tuple(_landings(site))


def _lies_near(edge: Edge, line: Edge) -> bool:
    return bool(are_neighbours(edge.from_ft, edge.to_ft, line.from_ft, line.to_ft))


def reach_ft(site: Site, edge: Edge) -> float:
    """How far a side may have moved out that now lies there [ft]: farther where it is level with a house corner."""
    return most_growth_ft(to_corner=any(_ends_at(line, edge) for line in _fixed(site)[0]))


def _ends_at(line: Edge, edge: Edge) -> bool:
    """Whether an edge carries on from the end of a wall or a row of posts, not along it, within a glance."""
    apart_ft = max(line.from_ft, edge.from_ft) - min(line.to_ft, edge.to_ft)
    is_level = line.axis == edge.axis and abs(line.at_ft - edge.at_ft) <= LINE_TOLERANCE_FT
    return is_level and -_TOUCHES_FT <= apart_ft <= NEIGHBOUR_FT + _EVEN_FT


def _landings(site: Site) -> Iterator[Edge]:
    for _, zone in site_shapes(site).door_zones:
        yield from ring_edges(tuple((x, y) for x, y in zone.exterior.coords[:-1]))
