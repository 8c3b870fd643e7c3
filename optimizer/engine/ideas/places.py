"""What is so of a room at every lower left corner: the grid's side of what an idea asks of a place."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
import shapely
from shapely import Geometry, Polygon

from optimizer.catalogue import idea_rules
from optimizer.engine.grid.anchors import centres_ft, corners_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells, any_in_window
from optimizer.engine.grid.raster import within
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.levels import ground_under_ft
from optimizer.fields import beside_house, ground_of, on_axis, site_shapes
from optimizer.fields.roofs import lies_under
from optimizer.fields.terraces import garden_doors
from optimizer.site import Door, Structure, Window

_NEAR_FT: Final = 0.02  # what lies so near touches
_EVEN: Final = 1e-6  # more than writing a length in metres changes it
_HELD_FT: Final = 2.0  # so far a room may move that is held where it stands
_DOOR_STEP_FT: Final = 4.0  # ground in front of a door is read so far out
Where = Callable[[Variant], Cells]
"""Lower left corners of a variant at which something is so; beyond the grid's edge anything may be said."""


@dataclass(frozen=True, eq=False)
class Places:
    """Corners of a yard by what ideas ask of a place."""

    context: Context

    def at_house(self, variant: Variant) -> Cells:
        """Where only a landing and its steps have place between the room and the house."""
        return self.near(self._houses, idea_rules().at_house_ft, variant)

    def in_garden(self, variant: Variant) -> Cells:
        """Clearly away from the house."""
        return ~self.near(self._houses, idea_rules().in_garden_ft - 2 * _NEAR_FT, variant)

    def beside(self, variant: Variant) -> Cells:
        """Beside the house, seen from the garden door of most trips."""
        door = self._garden_door
        if door is None:
            return self._nowhere
        return beside_house(self.context.site, door, *centres_ft(self.context.lattice, variant)) & self.at_house(
            variant
        )

    def under(self, structure: Structure, variant: Variant) -> Cells:
        """Under a structure with nearly all of the smaller of the two."""
        lattice = self.context.lattice
        x, y = corners_ft(lattice, (lattice.rows, lattice.columns))
        width_ft, depth_ft = variant.width * lattice.step_ft, variant.depth * lattice.step_ft
        return lies_under(structure, x, y, width_ft=width_ft, depth_ft=depth_ft)

    def on_axis_of(self, opening: Door | Window, variant: Variant) -> Cells:
        """With its middle on the centre line of a door or window."""
        return on_axis(opening, *centres_ft(self.context.lattice, variant))

    def on_axis_at_house(self, opening: Door | Window, variant: Variant) -> Cells:
        """Both."""
        return self.on_axis_of(opening, variant) & self.at_house(variant)

    def below(self, variant: Variant) -> Cells:
        """On ground a clear step lower than before the garden door."""
        door = self._garden_door
        if door is None or not ground_of(self.context.scenario.site).is_known:
            return self._nowhere
        ahead = tuple(at + _DOOR_STEP_FT * out for at, out in zip(door.at, door.outward, strict=True))
        at_door = ground_of(self.context.scenario.site).z_ft(np.array([self.context.pose.back(ahead)]))  # type: ignore[arg-type]
        step_ft = idea_rules().step_down_ft
        return np.asarray(
            ground_under_ft(self.context, variant.width, variant.depth) <= float(at_door[0]) - step_ft + _EVEN
        )

    def apart_from(self, room: Polygon | None, variant: Variant) -> Cells:
        """In the garden, and apart from a room that is held."""
        return self.in_garden(variant) & (True if room is None else ~self.near(room, idea_rules().apart_ft, variant))

    def in_court_of(self, room: Polygon | None, variant: Variant) -> Cells:
        """In one court with a room that is held; anywhere where none is."""
        return ~self._nowhere if room is None else self.near(room, idea_rules().court_ft, variant)

    def held_at(self, room: Polygon | None, variant: Variant) -> Cells:
        """About where a room is held; anywhere at the house where none is."""
        if room is None:
            return self.at_house(variant)
        x, y = centres_ft(self.context.lattice, variant)
        middle = room.centroid
        near = np.maximum(np.abs(x - middle.x), np.abs(y - middle.y)) <= _HELD_FT + _NEAR_FT
        return np.asarray(near) & self.at_house(variant)

    def near(self, thing: Geometry, distance_ft: float, variant: Variant) -> Cells:
        """At most so far from a thing."""
        cells = within(self.context.lattice, thing, distance_ft + _NEAR_FT)
        return any_in_window(cells, width=variant.width, depth=variant.depth)

    @cached_property
    def _houses(self) -> Geometry:
        return shapely.union_all(list(site_shapes(self.context.site).houses))

    @cached_property
    def _garden_door(self) -> Door | None:
        return next(iter(garden_doors(self.context.site, self.context.scenario.brief)), None)

    @property
    def _nowhere(self) -> Cells:
        return np.zeros((self.context.lattice.rows, self.context.lattice.columns), dtype=bool)
