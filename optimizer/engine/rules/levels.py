"""Levels guessed at a place, from the ground under the middle of a room: what the judge will likely say of steps.

Levels follow from all rooms together, so nothing here is certain: a guess guides the explorer, and nothing rests on it.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue.steps import step_rules
from optimizer.engine.grid.anchors import centres_ft, corners_ft
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.fields import LANDING_FT, TREAD_FT, ground_of
from optimizer.site import Building, Door

Numbers = NDArray[np.float64]
_INCHES = 12.0


@dataclass(frozen=True, slots=True, eq=False)
class Climb:
    """From a door to a room at every lower left corner: the rise [ft], and the way that is left for it [ft]."""

    rise_ft: Numbers
    way_ft: Numbers

    @property
    def risers(self) -> Numbers:
        """Risers on the way, with those at the door: none where it can be walked up."""
        rules = step_rules()
        stepped = self.rise_ft > rules.path_slope * self.way_ft
        risers = np.ceil(self.rise_ft * _INCHES / rules.highest_riser_in)
        return np.where(stepped & (self.rise_ft * _INCHES > rules.flush_sill_in), risers, 0.0)

    @property
    def is_accessible(self) -> Cells:
        """Whether the way is long enough for a ramp with its landings, or hardly rises."""
        rules = step_rules()
        runs = np.ceil(self.rise_ft * _INCHES / rules.ramp_rise_in)
        ramp_ft = self.rise_ft * rules.ramp_run_to_rise + (runs + 1) * rules.ramp_landing_in / _INCHES
        return np.asarray((self.rise_ft <= rules.path_slope * self.way_ft) | (ramp_ft <= self.way_ft))


def climb(context: Context, door: Door, variant: Variant) -> Climb | None:
    """Guess of the climb from a door to a room; None where the ground or the door's floor is not known.

    A room that lies at the door's landing is taken to be level with its sill, if that is within one riser.
    """
    building = _building_of(context, door)
    if building is None or building.floor_z_ft is None or not ground_of(context.scenario.site).is_known:
        return None
    rules = step_rules()
    sill_ft = building.floor_z_ft - rules.flush_sill_in / _INCHES
    rise_ft = np.abs(sill_ft - ground_under_ft(context, variant.width, variant.depth))
    away_ft = _away_ft(context, door, variant)
    at_landing = away_ft <= LANDING_FT + TREAD_FT
    level = at_landing & (rise_ft < rules.highest_riser_in / _INCHES)
    return Climb(np.where(level, 0.0, rise_ft), np.maximum(0.0, away_ft - LANDING_FT))


@lru_cache(maxsize=128)
def ground_under_ft(context: Context, width: int, depth: int) -> Numbers:
    """Ground under the middle of a room of so many steps at every lower left corner [ft]."""
    x, y = centres_ft(context.lattice, Variant(0, width, depth, None, (width, depth)))
    plan_x, plan_y = context.pose.back((x.ravel(), y.ravel()))  # type: ignore[arg-type]
    z = ground_of(context.scenario.site).z_ft(np.column_stack([plan_x, plan_y]))
    return np.asarray(z.reshape(x.shape))


def _away_ft(context: Context, door: Door, variant: Variant) -> Numbers:
    """Straight distance from a door to the nearest edge of a room at every lower left corner [ft]."""
    at, lattice = context.pose.point(door.at), context.lattice
    x, y = corners_ft(lattice, (lattice.rows, lattice.columns))
    beside = np.maximum(0.0, np.maximum(x - at[0], at[0] - x - variant.width * lattice.step_ft))
    ahead = np.maximum(0.0, np.maximum(y - at[1], at[1] - y - variant.depth * lattice.step_ft))
    return np.asarray(np.hypot(beside, ahead))


def _building_of(context: Context, door: Door) -> Building | None:
    return next((b for b in context.scenario.site.buildings if door in b.doors), None)
