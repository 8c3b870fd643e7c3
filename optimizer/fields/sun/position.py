"""Where the sun stands over the plan.

The sun's place comes from pvlib's implementation of the NREL solar position algorithm (Reda and Andreas, 2004,
doi:10.1016/j.solener.2003.12.003), refraction of the air included, so "up" is what an eye sees.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from functools import lru_cache
from typing import Final
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from optimizer.brief import SunWish
from optimizer.fields.sun.algorithm import spa
from optimizer.site import Place

STEP_MIN: Final = 15
YEAR: Final = 2026
"""Any year serves: on one date the sun moves by less than half a degree from year to year."""
DAY_OF_MONTH: Final = 21
"""Solstices and equinoxes fall near it; common practice for shadow diagrams."""
PRESSURE_HPA: Final = 1013.25
AIR_C: Final = 12.0
DELTA_T_S: Final = 67.0
REFRACTION_AT_RISE_DEG: Final = 0.5667
"""What `pvlib.solarposition.spa_python` takes where nothing is said: mean air at sea level, terrestrial less universal
time, and refraction on the horizon. Refraction is below a tenth of a degree from 6 degrees up whatever the air.
"""
LOWEST_ALTITUDE_DEG: Final = 2.0
"""Below it the sun counts as down: hills and hedges that no file names hide it. Common practice, no source."""


def sun_at(place: Place, when: datetime) -> tuple[float, float]:
    """Altitude of the sun [deg], below 0 at night, and its bearing clockwise from the plan's +y [deg, 0 to 360).

    A `when` without a time zone is read on the yard's own clock.
    """
    moment = when if when.tzinfo else when.replace(tzinfo=ZoneInfo(place.time_zone))
    altitudes, bearings = _places(place, [moment])
    return float(altitudes[0]), float(bearings[0])


@lru_cache(maxsize=64)
def sun_directions(place: Place, wish: SunWish) -> tuple[tuple[float, float, float], ...]:
    """(altitude [deg], bearing from the plan's +y clockwise [deg], hours that it stands for) at each moment.

    The moments are the middles of equal steps through the wish's window, night included.
    """
    moments = _moments(place, wish)
    altitudes, bearings = _places(place, [moment for moment, _ in moments])
    return tuple((float(a), float(b), step_h) for a, b, (_, step_h) in zip(altitudes, bearings, moments, strict=True))


def _places(place: Place, moments: Sequence[datetime]) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    seconds = np.array([moment.timestamp() for moment in moments])
    sun = spa().solar_position(
        seconds,
        place.latitude,
        place.longitude,
        elev=0.0,
        pressure=PRESSURE_HPA,
        temp=AIR_C,
        delta_t=DELTA_T_S,
        atmos_refract=REFRACTION_AT_RISE_DEG,
    )
    return np.asarray(90.0 - sun[0]), np.asarray((sun[4] - place.plan_up_bearing_deg) % 360.0)


def _moments(place: Place, wish: SunWish) -> list[tuple[datetime, float]]:
    """Middles of the steps on the 21st of each month by the local clock, and the hours that each stands for."""
    zone = ZoneInfo(place.time_zone)
    count = max(1, round(wish.window_h * 60 / STEP_MIN))
    step_h = wish.window_h / count
    return [
        (datetime(YEAR, month, DAY_OF_MONTH, tzinfo=zone) + timedelta(hours=wish.from_h + (k + 0.5) * step_h), step_h)
        for month in wish.months
        for k in range(count)
    ]
