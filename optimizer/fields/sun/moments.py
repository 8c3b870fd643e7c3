"""Moment by moment what reaches each point: for those who add a roof that moves with a room."""

from dataclasses import dataclass

import numpy as np

from optimizer.brief import SunWish
from optimizer.fields.ground import ground_of
from optimizer.fields.sun.hours import Numbers, skies
from optimizer.fields.sun.rays import lit_share
from optimizer.site import Site


@dataclass(frozen=True, eq=False, slots=True)
class Moment:
    """A moment with the sun up: the hours of a mean day that it stands for, and the sun that reaches each point.

    `away` is how far a shadow falls on the plan for each foot of height [ft/ft]; `lit` has shape (n,), 0 to 1.
    """

    hours: float
    away: tuple[float, float]
    lit: Numbers


def moments_of(site: Site, points: Numbers, wish: SunWish) -> tuple[Moment, ...]:
    """All moments of a wish's window; the sum of hours x lit is what `sun_hours` gives."""
    z_ft = ground_of(site).z_ft(points)
    return tuple(
        Moment(step_h / len(wish.months), _away(sky.altitude_deg, sky.plan_deg), lit_share(sky, points, z_ft))
        for step_h, sky in skies(site, wish)
    )


def _away(altitude_deg: float, plan_deg: float) -> tuple[float, float]:
    reach, bearing = 1.0 / np.tan(np.radians(altitude_deg)), np.radians(plan_deg)
    return (float(-np.sin(bearing) * reach), float(-np.cos(bearing) * reach))
