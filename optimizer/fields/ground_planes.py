"""Planes of the ground over the triangles between spot levels, the same in whatever order the levels come."""

from typing import Final

import numpy as np
import scipy
from numpy.typing import NDArray

Numbers = NDArray[np.float64]
_SAME_FT: Final = 1e-4  # far more than turning, mirroring and conversion from metres add to a coordinate


def planes_of(spots: Numbers, triangles: "scipy.spatial.Delaunay") -> Numbers:
    """Planes (a, b, c) of z = ax + by + c under spots (x, y, z) [ft], shape (triangles, planes, 3): of the planes of a
    triangle the lowest holds.

    A triangle has one plane, unless more than three levels lie on its circle: then which of them are joined is a matter
    of chance, and all its triangles have the planes of the highest ground that can be spanned between those levels.
    """
    single = _plane(spots[triangles.simplices])
    groups = _on_one_circle(spots[:, :2], triangles)
    found = [single[number][None] for number in range(len(single))]
    for members in groups:
        corners = np.unique(triangles.simplices[members])
        upper = _upper_planes(spots[corners])
        for number in members if len(upper) else ():
            found[number] = upper
    most = max(map(len, found))
    return np.stack([np.concatenate([planes, np.repeat(planes[:1], most - len(planes), axis=0)]) for planes in found])


def _plane(corners: Numbers) -> Numbers:
    """Plane through three points each, shape (triangles, 3)."""
    flat = np.concatenate([corners[:, :, :2], np.ones((len(corners), 3, 1))], axis=2)
    # A triangle with no area, of levels in one line on the hull, holds no point; least squares lets it pass.
    return np.asarray((np.linalg.pinv(flat) @ corners[:, :, 2:])[:, :, 0])


def _on_one_circle(points: Numbers, triangles: "scipy.spatial.Delaunay") -> list[NDArray[np.intp]]:
    """Groups of two triangles and more that share edges and a circumcircle."""
    centres, radii = _circles(points[triangles.simplices])
    first = np.repeat(np.arange(len(centres)), 3)
    second = triangles.neighbors.ravel()
    first, second = first[second >= 0], second[second >= 0]
    apart = np.hypot(*(centres[first] - centres[second]).T) + np.abs(radii[first] - radii[second])
    # Not a number, where a triangle has no area, is never the same.
    same = apart <= _SAME_FT * np.maximum(1.0, radii[first])
    joined = scipy.sparse.coo_array((np.ones(same.sum()), (first[same], second[same])), shape=(len(centres),) * 2)
    count, labels = scipy.sparse.csgraph.connected_components(joined, directed=False)
    members = np.split(np.argsort(labels, kind="stable"), np.cumsum(np.bincount(labels, minlength=count))[:-1])
    return [group for group in members if len(group) > 1]


def _circles(corners: Numbers) -> tuple[Numbers, Numbers]:
    """Circumcentres (triangles, 2) and circumradii [ft]."""
    a, b, c = np.moveaxis(corners, 1, 0)
    (bx, by), (cx, cy) = (b - a).T, (c - a).T
    with np.errstate(divide="ignore", invalid="ignore"):
        twice = 2 * (bx * cy - by * cx)
        x = (cy * (bx**2 + by**2) - by * (cx**2 + cy**2)) / twice
        y = (bx * (cx**2 + cy**2) - cx * (bx**2 + by**2)) / twice
    return a + np.column_stack([x, y]), np.hypot(x, y)


def _upper_planes(spots: Numbers) -> Numbers:
    """Planes of the upper side of the convex hull of spots; none where they lie in one plane."""
    middle = spots.mean(axis=0)
    away = spots - middle
    if np.linalg.svd(away, compute_uv=False)[2] < _SAME_FT:
        return np.empty((0, 3))
    hull = scipy.spatial.ConvexHull(away)
    a, b, c, d = hull.equations[hull.equations[:, 2] > 1e-9].T
    slopes = np.column_stack([-a / c, -b / c])
    return np.column_stack([slopes, middle[2] - d / c - slopes @ middle[:2]])
