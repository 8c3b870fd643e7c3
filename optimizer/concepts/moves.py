"""How rooms may grow: which edges move out to which line, and those of rooms that touch together."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final, NamedTuple, get_args

import shapely
from shapely import Point
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import LocalSide, SizedRoom, may_move, root_rings
from optimizer.concepts.case import Case
from optimizer.fields import LINE_TOLERANCE_FT, Edge, edge_of, lines_for, reach_ft
from optimizer.layout import SIDES, Front, Layout, Placement, areas_only, rectangle, shared_edge_ft, side_on_plan
from optimizer.planting import Bed, along_boundary
from optimizer.site import Site

_EVEN_FT: Final = 1e-6
_EVEN_SQFT: Final = 0.01


class Move(NamedTuple):
    """Edges on one side of the plan that move out to a line [ft], and the rooms that they are of."""

    rooms: tuple[str, ...]
    side: Front
    at_ft: float


@dataclass(frozen=True)
class Moves:
    """What may move in a yard; `kept` is ground that nothing grows into."""

    site: Site
    rooms: dict[str, SizedRoom]
    kept: BaseGeometry

    @classmethod
    def of(cls, case: Case, beds: tuple[Bed, ...]) -> "Moves":
        """Moves that keep out of root rings and of beds along the boundary; a room held at a place is as it was put."""
        site, put = case.scenario.site, {hold.room for hold in case.scenario.brief.holds if hold.at_ft is not None}
        planted = shapely.union_all([bed.outline for bed in beds]).intersection(along_boundary(site))
        # A bed that only touches that ground leaves a line: an intersection with a mixed collection may fail in GEOS.
        kept = areas_only(shapely.union_all([planted, *_root_rings(site)]))
        return cls(
            site, {room.name: replace(room, grow=0.0) if room.name in put else room for room in case.rooms}, kept
        )

    def all(self, layout: Layout) -> tuple[Move, ...]:
        """Every edge to every line near it that lies farther out; whether it may go there `made` says."""
        found = (move for place in _with_edges(layout) for side in SIDES for move in self._of_edge(layout, place, side))
        return tuple(dict.fromkeys(found))

    def made(self, layout: Layout, move: Move) -> Layout | None:
        """The layout after a move; None where a room may not make it, or another one would have to come along."""
        if move.rooms != _together(layout, move.rooms[0], move.side):
            return None
        after = {name: self._grown(layout.of(name), move) for name in move.rooms}
        if None in after.values():
            return None
        return Layout(tuple(after.get(place.room) or place for place in layout.placements))

    def _of_edge(self, layout: Layout, place: Placement, side: Front) -> Iterator[Move]:
        edge, rooms = edge_of(place, side), _together(layout, place.room, side)
        for line in lines_for(self.site, edge, _edges_beside(layout, rooms)):
            out_ft = (line.at_ft - edge.at_ft) * (1 if side[0] == "+" else -1)
            if out_ft > LINE_TOLERANCE_FT:
                yield Move(rooms, side, line.at_ft)

    def _grown(self, place: Placement | None, move: Move) -> Placement | None:
        """The room with its edge on the line; None where it would be too large, too far out or on kept ground."""
        assert place is not None, "a move is of rooms of its layout"
        after = place.grown_to(move.side, move.at_ft)
        out_ft = after.moved_out_ft[move.side]
        may = (
            self._is_open(place, move.side)
            and out_ft <= reach_ft(self.site, edge_of(after, move.side)) + _EVEN_FT
            and after.area_sqft <= (1 + self.rooms[place.room].grow) * place.base.area_sqft + _EVEN_SQFT
            and rectangle(after).difference(rectangle(place)).intersection(self.kept).area <= _EVEN_SQFT
        )
        return after if may else None

    def _is_open(self, place: Placement, side: Front) -> bool:
        room = self.rooms[place.room]
        choice = room.choice(place.choice)
        own = next(own for own in get_args(LocalSide) if side_on_plan(own, place.front) == side)
        return choice is not None and may_move(room, choice, own)


def _together(layout: Layout, room: str, side: Front) -> tuple[str, ...]:
    """A room and those that touch it, and each other, with flush edges on that side: they move as one."""
    found, reached = {room}, [room]
    while reached:
        place = layout.of(reached.pop())
        new = [other.room for other in layout.placements if other.room not in found and _is_flush(place, other, side)]
        found.update(new)
        reached += new
    return tuple(place.room for place in layout.placements if place.room in found)


def _is_flush(place: Placement | None, other: Placement, side: Front) -> bool:
    if place is None or abs(place.edge_ft(side) - other.edge_ft(side)) > LINE_TOLERANCE_FT:
        return False
    return shared_edge_ft(place, other) > LINE_TOLERANCE_FT


def _edges_beside(layout: Layout, rooms: tuple[str, ...]) -> Iterator[Edge]:
    """Edges of all other rooms."""
    return (edge_of(place, side) for place in _with_edges(layout) if place.room not in rooms for side in SIDES)


def _with_edges(layout: Layout) -> Iterator[Placement]:
    """All rooms but circles, which neither grow nor have a line that others grow to."""
    return (place for place in layout.placements if not place.is_circle)


def _root_rings(site: Site) -> Iterator[BaseGeometry]:
    """Ground in which kept trees have roots, as far out as the outer ring."""
    trunks = root_rings(site).outer_trunks
    return (Point(tree.at).buffer(trunks * tree.trunk_diameter_ft) for tree in site.trees)
