"""Height of the ground between the spot levels that were given."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from scipy.interpolate import LinearNDInterpolator, NearestNDInterpolator

from optimizer.site import Point, Site


def ground_z_ft(site: Site, points: Sequence[Point]) -> NDArray[np.float64]:
    """Height of the ground above the file's datum at each point [ft].

    Linear on the triangles between spot levels, the nearest level outside them, 0 where none is given.
    """
    asked = np.array(points, dtype=np.float64).reshape(-1, 2)
    if not site.levels:
        return np.zeros(len(asked))
    spots, heights = np.array([level.at for level in site.levels]), np.array([level.z_ft for level in site.levels])
    nearest: NDArray[np.float64] = NearestNDInterpolator(spots, heights)(asked)
    # Levels on one line span no triangle.
    if np.linalg.matrix_rank(spots - spots[0]) < 2:
        return nearest
    between = LinearNDInterpolator(spots, heights)(asked)
    return np.where(np.isnan(between), nearest, between)
