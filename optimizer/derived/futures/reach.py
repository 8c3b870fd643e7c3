"""Ground that a machine comes to from the street, by its width alone: bends and slope are asked of a drive."""

from collections.abc import Sequence

import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import Vehicle
from optimizer.derived.futures.course import middles_on
from optimizer.derived.futures.obstacles import Obstacle
from optimizer.derived.futures.street import driven_ground, gates_of, street_of
from optimizer.layout import PlacedRoom
from optimizer.site import Site


def reached_ground(site: Site, there: Sequence[Obstacle], one: Vehicle) -> BaseGeometry:
    """Ground on which the middle of a vehicle may be and that is one with the street [ft]: half its width off all that
    is there. Past a gate that is too narrow nothing but the street itself is left, which is no ground of the yard.
    """
    middles = middles_on(driven_ground(site, there), one)
    street = shapely.union_all([street_of(gate) for gate in gates_of(site)])
    return shapely.union_all([part for part in shapely.get_parts(middles) if part.intersects(street)])


def comes_to(reach: BaseGeometry, one: Vehicle, room: PlacedRoom) -> bool:
    """Whether a vehicle that comes to this ground gets to a room: its front reaches in."""
    return bool(reach.distance(room.shape) <= one.width_ft / 2)
