"""Walking to doors and entrances in the model."""

from optimizer.engine.model.linear import Linear, Model
from optimizer.engine.model.variables import Rooms
from optimizer.engine.problem import Problem


def walking_to_points(model: Model, problem: Problem, rooms: Rooms) -> Linear:
    """Feet walked between rooms and things of the site at their rate [cents]; for an absent room nothing.

    Each zone gives the distance a floor: how far its nearest place is.
    """
    total: Linear = 0
    for number, pull in enumerate(problem.pulls):
        room = rooms[pull.room]
        if room is None:
            continue
        name = f"{problem.rooms[pull.room].name}:pull{number}"
        for axis, (anchor, most) in enumerate(
            ((room.anchor_x, problem.context.lattice.columns), (room.anchor_y, problem.context.lattice.rows))
        ):
            distance = model.new_int_var(0, 2 * most + abs(pull.at[axis]), f"{name}:{'xy'[axis]}")
            model.add(distance >= anchor - pull.at[axis]).only_enforce_if(room.presence)
            model.add(distance >= pull.at[axis] - anchor).only_enforce_if(room.presence)
            model.add(distance >= _zone_floor(problem, rooms, pull.room, pull.at, axis))
            total += pull.rate * distance
    return total


def _zone_floor(problem: Problem, rooms: Rooms, index: int, at: tuple[int, int], axis: int) -> Linear:
    """Half steps along an axis from a point to the nearest place of the zone that is taken."""
    room, variants = rooms[index], problem.rooms[index].variants
    assert room is not None
    floors = []
    for literal, v, zone in room.zones:
        first, last = (zone.left, zone.right) if axis == 0 else (zone.low, zone.top)
        anchor = variants[v].anchor[axis]
        floors.append(max(0, at[axis] - (2 * last + anchor), 2 * first + anchor - at[axis]) * literal)
    return sum(floors)
