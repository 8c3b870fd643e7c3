"""Order of a plan: edges on lines that they share with buildings, structures and each other, and places well chosen."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from itertools import combinations, product
from typing import Any

import numpy as np
from numpy.typing import NDArray

from optimizer.appraisal.axis import centred_rooms
from optimizer.catalogue import FOCAL_KIND, rates
from optimizer.fields import (
    FREE_PART,
    LINE_TOLERANCE_FT,
    Edge,
    across_contour_ft,
    are_neighbours,
    centre_lines,
    main_openings,
    nearly_level,
    off_axis,
    off_structure_ft,
    on_axis,
    site_edges,
)
from optimizer.layout import Layout, Placed, Placement
from optimizer.site import Site


@dataclass(frozen=True, slots=True)
class OrderMeasures:
    """What is out of order: room edges on no shared line [ft], parallel edges of neighbours that nearly meet [ft], how
    far rooms lie off the structures over them [ft], whether a fire is in line with no main opening, how much more steep
    ground rises along rooms' long sides than along their short ones [ft], and the room edges on no shared line beyond
    the fifth of all that may lie on none [ft]. And what is in order: rooms centred on a door or window.
    """

    unaligned_ft: float = 0.0
    near_miss_ft: float = 0.0
    off_structure_ft: float = 0.0
    off_axis: int = 0
    across_contour_ft: float = 0.0
    disorder_ft: float = 0.0
    centred: tuple[str, ...] = ()


def order_measures(site: Site, placed: Placed) -> OrderMeasures:
    """Measures of a layout's order."""
    layout, focal = placed.layout, placed.of_kind(FOCAL_KIND)
    return OrderMeasures(
        unaligned_ft=unaligned_ft(site, layout),
        near_miss_ft=near_miss_ft(site, layout),
        off_structure_ft=sum(_of(partial(off_structure_ft, site, place.room), place) for place in layout.placements),
        off_axis=round(sum(_of(partial(off_axis, site), room.placement.base) for room in focal)),
        across_contour_ft=sum(_of(partial(across_contour_ft, site), place) for place in layout.placements),
        disorder_ft=disorder_ft(site, layout),
        centred=centred_rooms(site, layout),
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
        + rate.disorder * measures.disorder_ft
        + rate.near_miss * measures.near_miss_ft
        + rate.off_structure * measures.off_structure_ft
        + rate.off_axis * measures.off_axis
        + rate.across_contour * measures.across_contour_ft
    )


def near_miss_ft(site: Site, layout: Layout) -> float:
    """Length of parallel edges of neighbours, or of a room and a building or structure, that are neither flush within
    1 in nor 2 ft apart [ft]; of two edges the shorter counts.
    """
    edges, fixed = tuple(room_edges(layout)), tuple(site_edges(site))
    pairs = [*combinations(edges, 2), *product(edges, fixed)]
    return sum(min(one.length_ft, other.length_ft) for one, other in pairs if _nearly_meet(one, other))


def _nearly_meet(one: Edge, other: Edge) -> bool:
    return (
        one.axis == other.axis
        and one.owner != other.owner
        and bool(nearly_level(one.at_ft - other.at_ft))
        and bool(are_neighbours(one.from_ft, one.to_ft, other.from_ft, other.to_ft))
    )


def disorder_ft(site: Site, layout: Layout) -> float:
    """Length of room edges on no shared line, beyond the fifth of all that may lie on none [ft]."""
    return max(0.0, unaligned_ft(site, layout) - _edge_length_ft(layout) / FREE_PART)


def _edge_length_ft(layout: Layout) -> float:
    return sum(edge.length_ft for edge in room_edges(layout))


def aligned_share(site: Site, layout: Layout) -> float:
    """Share of the length of all room edges that lies on a shared line; 1 without rooms.

    A circle has no edges. Where its middle lies on an axis it counts as two edges as long as it is across, in line.
    """
    total = _edge_length_ft(layout) + _centred_circles_ft(site, layout)
    return 1.0 if total == 0 else 1.0 - unaligned_ft(site, layout) / total


def _centred_circles_ft(site: Site, layout: Layout) -> float:
    """What circles count for whose middles lie on an axis of a structure or of a main opening [ft]."""
    circles = (place for place in layout.placements if place.is_circle)
    return sum(2 * place.width_ft for place, axis in product(circles, (0, 1)) if _is_on_axis(site, place, axis))


def _is_on_axis(site: Site, place: Placement, axis: int) -> bool:
    x, y = (np.array(at) for at in place.centre)
    facing = (opening for opening in main_openings(site) if abs(opening.outward[1 - axis]) > abs(opening.outward[axis]))
    return _is_centred(site, place, axis) or any(bool(on_axis(opening, x, y)) for opening in facing)


def unaligned_ft(site: Site, layout: Layout) -> float:
    """Length of room edges that lie on no line shared with a building, a structure or another room [ft].

    A room that stands centred on a structure is in line with it: its two edges on either side count as shared.
    """
    edges = [
        edge for place in layout.placements for edge in _edges_of(place) if not _is_centred(site, place, edge.axis)
    ]
    lines = (*room_edges(layout), *site_edges(site))
    return sum(edge.length_ft for edge in edges if not any(_shares(edge, line) for line in lines))


def room_edges(layout: Layout) -> Iterator[Edge]:
    """Four edges of every rectangle; a circle has none, and where its middle lies is asked by itself."""
    for placement in layout.placements:
        yield from _edges_of(placement)


def _edges_of(place: Placement) -> tuple[Edge, ...]:
    if place.is_circle:
        return ()
    return (
        Edge(0, place.x_ft, place.y_ft, place.top_ft, place.room),
        Edge(0, place.right_ft, place.y_ft, place.top_ft, place.room),
        Edge(1, place.y_ft, place.x_ft, place.right_ft, place.room),
        Edge(1, place.top_ft, place.x_ft, place.right_ft, place.room),
    )


def _is_centred(site: Site, place: Placement, axis: int) -> bool:
    return any(abs(place.centre[axis] - line) <= LINE_TOLERANCE_FT for line in centre_lines(site, axis))


def _shares(edge: Edge, line: Edge) -> bool:
    same_line = edge.axis == line.axis and abs(edge.at_ft - line.at_ft) <= LINE_TOLERANCE_FT
    return same_line and edge.owner != line.owner
