"""How often the wind of the using season blows from where, on the compass."""

from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.catalogue.data_files import data
from optimizer.site import Site, WindRose

Floats = NDArray[np.float64]

SECTORS: Final = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
"""Names of the sectors of a rose, in its order."""
SECTOR_DEG: Final = 360.0 / len(SECTORS)


def wind_rose(site: Site) -> WindRose | None:
    """Rose of the site: as given, else spread round the prevailing wind; None where neither is known.

    Shares that add up to more than 1, as rounded ones may, are scaled down to 1.
    """
    if site.wind_rose is not None:
        over = max(1.0, sum(site.wind_rose.shares))
        return WindRose(tuple(share / over for share in site.wind_rose.shares))
    return None if site.wind_from_deg is None else _spread(site.wind_from_deg)


def calm_share(rose: WindRose) -> float:
    """Share of the season without wind."""
    return max(0.0, 1.0 - sum(rose.shares))


def share_from(rose: WindRose, start_deg: Floats, width_deg: Floats) -> Floats:
    """Share of the season with wind from the arc that starts at a bearing and runs clockwise.

    Within a sector the wind is taken to come from everywhere alike.

    Parameters
    ----------
    start_deg, width_deg
        Bearings from true north, and widths from 0 up (360 and more is all round) [deg]; one shape.

    Returns
    -------
    Shares, same shape, 0 to 1.
    """
    width_deg = np.minimum(width_deg, 360.0)
    return np.clip(_up_to(rose, start_deg + width_deg) - _up_to(rose, start_deg), 0.0, 1.0)


def _up_to(rose: WindRose, bearing_deg: Floats) -> Floats:
    """Share from the first sector's edge clockwise to a bearing, each full turn adding the whole rose."""
    turns, rest_deg = np.divmod(bearing_deg + SECTOR_DEG / 2, 360.0)
    sums = np.concatenate([[0.0], np.cumsum(rose.shares)])
    edges_deg = SECTOR_DEG * np.arange(len(sums))
    return np.asarray(turns * sums[-1] + np.interp(rest_deg, edges_deg, sums))


def _spread(from_deg: float) -> WindRose:
    """Rose of a prevailing wind: its sector, both neighbours, and calm."""
    spread = data("smoke.yaml")["prevailing"]
    middle = round(from_deg / SECTOR_DEG)
    shares = [0.0] * len(SECTORS)
    for step, name in ((-1, "neighbour"), (0, "sector"), (1, "neighbour")):
        shares[(middle + step) % len(SECTORS)] = float(spread[name])
    return WindRose(tuple(shares))
