"""What stands in the rooms of a figure: counters, seat walls, tables and seats, panels that were bought, the shed."""

from collections.abc import Iterator, Mapping
from typing import Final

from shapely import Polygon

from optimizer.catalogue.sides import side_kind, side_of_item
from optimizer.check import lookers_of
from optimizer.fields.room_screens import bought_screen
from optimizer.figures.held_ground import is_held_ground
from optimizer.figures.solids import Mesh, joined, prism
from optimizer.layout import Placed, PlacedRoom, footprint
from optimizer.scenario import Scenario

LOOSE_FT: Final[Mapping[str, float]] = {
    "chair": 1.5,
    "fire seat": 1.4,
    "fire pit": 1.2,
    "lounge chair": 1.4,
    "lounger": 1.1,
    "low table": 1.3,
    "side table": 1.7,
    "sofa": 1.4,
    "stool": 2.5,
    "table": 2.5,
}
"""Heights of seats and table tops as drawn, without backs; common practice, no source."""
PANEL_FT: Final = 0.3


def furnished(scenario: Scenario, placed: Placed, levels: Mapping[str, float]) -> Iterator[tuple[str, Mesh]]:
    """Name and surface of all that stands in each room, on its level [ft]."""
    lookers = lookers_of(scenario, placed)
    for room, choice in placed.chosen:
        solids = [] if is_held_ground(room) or room.is_later else list(_solids(room))
        if choice.is_screened:
            panels = (bought_screen(room.placement, at).outline for at in lookers.get(room.name, ()))
            height_ft = side_kind("screen").height_ft
            solids += [
                (line.buffer(PANEL_FT / 2, cap_style="flat", join_style="mitre"), height_ft) for line in panels if line
            ]
        if solids:
            foot = levels[room.name]
            yield f"{room.name}, furniture", joined([prism(shape, foot, foot + high) for shape, high in solids])


def _solids(room: PlacedRoom) -> Iterator[tuple[Polygon, float]]:
    """Ground and height [ft] of each piece; a shed is one box, whatever stands in it."""
    if room.kind == "storage":
        yield footprint(room.placement), side_kind("back").height_ft
        return
    for item, plan in room.furniture:
        side = side_of_item(room.kind, item)
        height_ft = side.height_ft if side else LOOSE_FT.get(item.role)
        if height_ft:
            round_ft = min(item.width_ft, item.depth_ft) / 2
            yield plan.centroid.buffer(round_ft, quad_segs=4) if item.shape == "circle" else plan, height_ft
