"""How long a season of sun takes on a 1 ft grid of 100 x 120 ft with ten things that throw shadows.

    python -m tests.benchmarks.sun_speed

Beside seconds it prints the ratio to the same hours from swept areas, point by point, in the same run on the same
machine, and how far the two lie apart.
"""

import time

import numpy as np

from optimizer.brief import SunWish
from optimizer.fields import sun_grid
from optimizer.fields.sun import sun_directions
from optimizer.site import SpotLevel
from tests.swept_shadow import crowded_site, swept_hours

SEASON = SunWish("sun", 0.0, 24.0, (4, 5, 6, 7, 8, 9))
SLOPE = (SpotLevel((0, 0), 0.4), SpotLevel((100, 0), 0.2), SpotLevel((100, 120), -2.8), SpotLevel((0, 120), -2.2))


def main() -> None:
    """Time level and sloping ground, and the other road on level ground."""
    site = crowded_site()
    sun_directions(site.place, SEASON)  # the import of pvlib is not the season's
    started = time.perf_counter()
    xs, ys, hours = sun_grid(site, SEASON, 1.0)
    level_s = time.perf_counter() - started
    started = time.perf_counter()
    sun_grid(crowded_site(levels=SLOPE), SEASON, 1.0)
    slope_s = time.perf_counter() - started
    points = np.stack([axis.ravel() for axis in np.meshgrid(xs, ys)], axis=1)
    started = time.perf_counter()
    apart = np.abs(swept_hours(site, points, SEASON) - hours.ravel()).max()
    swept_s = time.perf_counter() - started
    print(f"level {level_s:.2f} s, slope {slope_s:.2f} s, swept areas {swept_s:.2f} s")
    print(f"{swept_s / level_s:.1f} times as fast as swept areas; at most {apart:.4f} h apart")


if __name__ == "__main__":
    main()
