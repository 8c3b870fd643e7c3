"""What throws a shadow, how high it stands, and how it is cut into convex pieces."""
# ruff: noqa: DTZ001 - moments without a zone are read on the yard's clock

from datetime import UTC, datetime

import numpy as np
import pytest
import shapely
from shapely import LineString, Polygon

from optimizer.brief import SunWish
from optimizer.fields import shadows_at, sun_hours
from optimizer.fields.sun import casters_of, in_leaf
from optimizer.fields.sun.convex import convex_pieces
from optimizer.site import Building, SpotLevel, Structure, Surrounding
from tests.swept_shadow import HOUSE, box, crowded_site

SLOPE = (SpotLevel((0, 0), 10.0), SpotLevel((100, 0), 10.0), SpotLevel((0, 100), 0.0), SpotLevel((100, 100), 0.0))
NONE = {"buildings": (), "structures": (), "trees": (), "surroundings": ()}


def test_a_building_on_a_slope_stands_on_its_lowest_ground():
    """Foot at 6 (y = 40), top at the mean of 6 and 8 and its height."""
    site = crowded_site(**{**NONE, "buildings": (Building("b", box(40, 20, 20, 20), height_ft=15),)}, levels=SLOPE)
    (block,) = casters_of(site, 6)
    assert (block.low_ft, block.high_ft) == pytest.approx((6, 22))


def test_a_roof_is_flat_over_the_mean_of_its_ground():
    """9 ft over 7, though a side stands at 8."""
    roof = Structure("r", box(40, 20, 20, 20), height_ft=9, shade=0.5)
    (flat,) = casters_of(crowded_site(**{**NONE, "structures": (roof,)}, levels=SLOPE), 6)
    assert (flat.low_ft, flat.high_ft, flat.share) == pytest.approx((16, 16, 0.5))


def test_a_roof_without_shade_throws_none():
    """A structure that holds back nothing is left out."""
    assert casters_of(crowded_site(**{**NONE, "structures": (Structure("r", box(0, 0, 9, 9)),)}), 6) == ()


def test_a_fence_steps_down_a_slope():
    """Panels of at most 10 ft, each 6 ft over its own ground."""
    fence = Surrounding("f", line=((0, 0), (0, 100)), height_ft=6)
    panels = casters_of(crowded_site(**{**NONE, "surroundings": (fence,)}, levels=SLOPE), 6)
    assert len(panels) == 10
    assert [panel.high_ft for panel in panels] == pytest.approx([15.5 - k for k in range(10)])


def test_an_eye_throws_no_shadow():
    """A neighbour's window is for sight only."""
    assert casters_of(crowded_site(**{**NONE, "surroundings": (Surrounding("eye", at=(0, 0), eye_z_ft=9),)}), 6) == ()


def test_leaf_months():
    """May to October in the north, November to April in the south."""
    assert [month for month in range(1, 13) if in_leaf(40, month)] == [5, 6, 7, 8, 9, 10]
    assert [month for month in range(1, 13) if in_leaf(-40, month)] == [1, 2, 3, 4, 11, 12]


@pytest.mark.parametrize(
    ("ring", "most"),
    [(box(0, 0, 9, 5), 1), (HOUSE, 2), (((0, 0), (9, 0), (9, 9), (6, 9), (6, 3), (3, 3), (3, 9), (0, 9)), 3)],
)
def test_convex_pieces_fill_the_outline(ring, most):
    """Each piece is convex and counter-clockwise, and together they are the outline."""
    pieces = [Polygon(corners) for corners in convex_pieces(Polygon(ring))]
    assert len(pieces) <= most
    assert all(piece.exterior.is_ccw and piece.convex_hull.area == pytest.approx(piece.area) for piece in pieces)
    assert sum(piece.area for piece in pieces) == pytest.approx(Polygon(ring).area)
    assert shapely.union_all(pieces).symmetric_difference(Polygon(ring)).area == pytest.approx(0, abs=1e-9)


def test_a_line_has_its_stretches():
    """Two corners each."""
    pieces = convex_pieces(LineString([(0, 0), (5, 0), (5, 7)]))
    assert np.array_equal(np.array(pieces), [[(0, 0), (5, 0)], [(5, 0), (5, 7)]])


def test_shadows_of_a_moment_are_of_its_month_and_its_clock():
    """What is solid comes first as one area; an aware moment is turned to the yard's clock; none at night."""
    site = crowded_site()
    june, january = (shadows_at(site, datetime(2026, month, 21, 13)) for month in (6, 1))
    assert [share for _, share in june] == [1.0, 0.7, 0.8, 0.8, 0.8]
    assert [share for _, share in january] == [1.0, 0.7, 0.3, 0.8, 0.3]
    aware = shadows_at(site, datetime(2026, 6, 21, 17, tzinfo=UTC))
    assert all(a.equals(b) for (a, _), (b, _) in zip(june, aware, strict=True))
    assert shadows_at(site, datetime(2026, 6, 21, 1)) == ()


def test_shadows_on_a_slope_are_where_there_is_no_sun():
    """A moment's areas and its hours, two roads on uneven ground, differ only at rims: at fewer than 1 in 200 points."""
    levels = (SpotLevel((0, 0), 0.4), SpotLevel((100, 0), 0.2), SpotLevel((100, 120), -6.0), SpotLevel((0, 120), -2.2))
    site = crowded_site(levels=levels)
    points = np.random.default_rng(2).uniform((0, 0), (100, 120), (4000, 2))
    lit = np.ones(len(points))
    for area, share in shadows_at(site, datetime(2026, 6, 21, 18, 7, 30)):
        lit *= np.where(shapely.contains_xy(area, points[:, 0], points[:, 1]), 1 - share, 1)
    hours = sun_hours(site, points, SunWish("sun", 18.0, 18.25, (6,)))
    assert 0.2 < lit.mean() < 0.8
    assert np.mean(np.abs(hours / 0.25 - lit) > 1e-6) < 0.005
