"""Grading of a layout: room levels first, then steps, walls, guards, earth and falls."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from optimizer.circulation import Way
from optimizer.grading.earthwork import Earth, Numbers, corners_of, earth_under, mean_of_cells
from optimizer.grading.edges import Strip, strips_of
from optimizer.grading.falls import Fall, falls_of
from optimizer.grading.flights import Flight, room_flights, way_flights
from optimizer.grading.grading import Grading
from optimizer.grading.levels import room_levels
from optimizer.grading.overlay import overlaid_rooms
from optimizer.grading.paved import Paved, paved_rooms
from optimizer.grading.profile import rooms_along
from optimizer.grading.walls import guards_along, walls_along
from optimizer.layout import Placed
from optimizer.site import Site


@dataclass(frozen=True, slots=True)
class Levelled:
    """Levels of the paved rooms [ft above the datum, hundredths] and what they ask for before any way is laid.

    `flights` are those at doors and between touching rooms.
    """

    paved: Paved
    levels_ft: tuple[float, ...]
    strips: tuple[Strip, ...]
    flights: tuple[Flight, ...]
    earth: tuple[Earth, ...]
    falls: tuple[Fall, ...]
    overlaid: tuple[str, ...] = ()
    """Rooms that an existing slab carries: no earth is moved for them."""

    @property
    def is_known(self) -> bool:
        """Whether the levels of the ground are."""
        return self.paved.ground.is_known


def levelled(site: Site, placed: Placed) -> Levelled:
    """Levels of the paved rooms of a layout, with the flights, earth and falls that they alone ask for.

    Earth is counted to the level itself, without the thickness of the paving.
    """
    paved = paved_rooms(site, placed)
    ground = _ground_under(paved)
    balanced = [mean_of_cells(z, room.placement.shape) for z, room in zip(ground, paved.rooms, strict=True)]
    levels = room_levels(paved, balanced) if paved.ground.is_known else (0.0,) * len(balanced)
    strips = strips_of(paved, levels)
    overlaid = overlaid_rooms(paved, balanced, levels)
    rooms = zip(paved.rooms, ground, levels, strict=True)
    return Levelled(
        paved=paved,
        levels_ft=levels,
        strips=strips,
        flights=room_flights(paved, levels),
        earth=tuple(
            Earth(room.name, 0.0, 0.0) if room.name in overlaid else earth_under(room.placement, z, level)
            for room, z, level in rooms
        ),
        falls=falls_of(paved, levels, strips),
        overlaid=overlaid,
    )


def walked_flights(of: Levelled, ways: Sequence[Way]) -> tuple[Flight, ...]:
    """Flights at doors, and those between touching rooms that somebody walks: where a way crosses the edge, or leads to
    one of the two in no other way. A wall stands along any other edge. Before ways are known all are there.
    """
    stops = [rooms_along(of.paved, way) for way in ways]
    crossed = {frozenset(pair) for along in stops for pair in pairwise(along)}
    entered = {name for along in stops for name in along}
    rooms = {room.name for room in of.paved.rooms}

    def is_walked(flight: Flight) -> bool:
        ends = frozenset(flight.between)
        return not (ways and ends <= rooms) or ends in crossed or not ends <= entered

    return tuple(filter(is_walked, of.flights))


def graded(of: Levelled, ways: Sequence[Way]) -> Grading:
    """The whole grading, with the steps on the ways, and walls and guards that leave room for all steps."""
    flights = (*walked_flights(of, ways), *way_flights(of.paved, of.levels_ft, ways))
    return Grading(
        is_known=of.is_known,
        levels_ft=tuple((room.name, level) for room, level in zip(of.paved.rooms, of.levels_ft, strict=True)),
        flights=flights,
        walls=tuple(walls_along(of.paved, of.strips, of.levels_ft, flights)),
        guards=tuple(guards_along(of.paved, of.strips, of.levels_ft, flights)),
        earth=of.earth,
        falls=of.falls,
        overlaid=of.overlaid,
    )


def grade(site: Site, placed: Placed, ways: Sequence[Way] = ()) -> Grading:
    """Levels of the paved rooms of a layout, and the steps, walls, guards, earth and falls that they ask for."""
    return graded(levelled(site, placed), ways)


def _ground_under(paved: Paved) -> list[Numbers]:
    """Ground at the corners of each room's grid, asked for all at once: one call costs as much as a thousand points."""
    corners = [corners_of(room.placement) for room in paved.rooms]
    if not corners:
        return []
    z = paved.ground.z_ft(np.concatenate([grid.reshape(-1, 2) for grid in corners]))
    first = np.cumsum([0, *(grid.shape[0] * grid.shape[1] for grid in corners)])
    return [z[a:b].reshape(grid.shape[:2]) for grid, (a, b) in zip(corners, pairwise(first), strict=True)]
