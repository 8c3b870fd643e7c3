"""No kitchen, fire or water is right in front of a door or beside a window that opens."""

from collections.abc import Sequence

from shapely import LineString, Polygon

from optimizer.catalogue import SizedRoom, distance_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.kept_off import KeptOff, cells_of
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.grid.water import water_off
from optimizer.engine.rules.part import Part
from optimizer.site import Door, Window


def _before_openings(context: Context, room: SizedRoom) -> Sequence[KeptOff]:
    """Ground that no part of the room may take; of water in a deck the deck may."""
    return _openings(context) if room.rules.keeps_from_openings and not room.rules.has_deck else ()


def _water_off(context: Context, room: SizedRoom, variant: Variant) -> Cells | None:
    """Positions of water in its deck."""
    if not room.rules.keeps_from_openings or not room.rules.has_deck:
        return None
    return water_off(context.lattice, room, variant, cells_of(context.lattice, _openings(context)))


def _openings(context: Context) -> Sequence[KeptOff]:
    """Ground straight out of a door or beside a window that opens."""
    out_ft, beside_ft = distance_ft(context.site, "ahead_of_door"), distance_ft(context.site, "beside_window")
    strips = [KeptOff(_strip(door, out_ft)) for door in context.site.doors]
    panes = [KeptOff(_pane(window), beside_ft) for window in context.site.windows if window.opens]
    return [*strips, *panes]


def _pane(opening: Door | Window) -> LineString:
    (x, y), (out_x, out_y), half = opening.at, opening.outward, opening.width_ft / 2
    return LineString([(x + out_y * half, y - out_x * half), (x - out_y * half, y + out_x * half)])


def _strip(opening: Door | Window, out_ft: float) -> Polygon:
    near, (out_x, out_y) = _pane(opening).coords, opening.outward
    far = [(x + out_x * out_ft, y + out_y * out_ft) for x, y in reversed(near)]
    return Polygon([*near, *far])


PART = Part(kept_off=_before_openings, positions=_water_off)
