"""Fire stands under no roof or crown and keeps its distance from buildings, structures, boundary and new roofs."""

from collections.abc import Iterator

from shapely import Point, Polygon

from optimizer.catalogue import SizedRoom, fire_clear_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff
from optimizer.engine.pairs import Condition
from optimizer.engine.rules.apart import Apart
from optimizer.engine.rules.part import Part


def _too_near(context: Context, room: SizedRoom) -> Iterator[KeptOff]:
    """Ground under a roof or crown, or closer to building, structure or boundary than the fuel asks."""
    if room.rules.kind != "fire":
        return
    depth_ft = fire_clear_ft(context.site, room.fuel)
    roofs = [Polygon(structure.outline) for structure in context.site.structures]
    solid = [*context.buildings, *roofs, context.boundary.exterior]
    yield from (KeptOff(thing, depth_ft) for thing in solid)
    yield from (KeptOff(Point(tree.at), tree.canopy_radius_ft) for tree in context.site.trees)


def _clear_of_new_roofs(context: Context, first: int, second: int) -> Iterator[Condition]:
    """Fire keeps its distance from a roof that is bought over the other room."""
    rooms = context.rooms[first], context.rooms[second]
    for end in (0, 1):
        if rooms[end].rules.kind == "fire" and any(choice.cover for choice in rooms[1 - end].choices):
            yield Apart(fire_clear_ft(context.site, rooms[end].fuel), context.lattice.step_ft, covered_end=1 - end)
            return


PART = Part(kept_off=_too_near, conditions=_clear_of_new_roofs)
