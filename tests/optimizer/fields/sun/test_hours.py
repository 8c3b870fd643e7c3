"""Hours of sun by rays agree with shadows swept as areas; trees, covers and levels count."""

from dataclasses import replace

import numpy as np
import pytest
from shapely import LineString

from optimizer.brief import SunWish
from optimizer.fields import Caster, cover_caster, room_sun_hours, sun_grid, sun_hours
from optimizer.site import Building, Place, SpotLevel, Structure, Tree
from tests.swept_shadow import box, crowded_site, swept_hours

BARE = {"buildings": (), "structures": (), "trees": (), "surroundings": ()}
NOON = SunWish("sun", 12.5, 13.5, (6,))


WINDOWS = (SunWish("sun", 8, 10.5, (4, 9)), SunWish("sun", 5, 21, (1, 6)))


@pytest.mark.parametrize("wish", WINDOWS)
def test_rays_agree_with_swept_shadows_on_level_ground(wish):
    """Within 0.05 h everywhere, with an L-shaped house, a thin roof, neighbours and fences."""
    site = crowded_site(trees=())
    points = np.random.default_rng(5).uniform((0, 0), (100, 120), (2000, 2))
    rays, swept = sun_hours(site, points, wish), swept_hours(site, points, wish)
    assert np.abs(rays - swept).max() < 0.05
    assert np.ptp(swept) > 0.9 * swept.max()


@pytest.mark.parametrize("wish", WINDOWS)
def test_crowns_agree_with_stacks_of_discs(wish):
    """But for a step at a few points on the rim, since a disc is drawn with corners; the mean within 0.002 h."""
    site = crowded_site(buildings=(), structures=(), surroundings=())
    points = np.random.default_rng(5).uniform((0, 0), (100, 120), (1000, 2))
    rays, swept = sun_hours(site, points, wish), swept_hours(site, points, wish)
    assert np.ptp(swept) > 0.5
    assert np.abs(rays - swept).mean() < 0.002
    assert np.abs(rays - swept).max() < 0.26


def test_all_on_one_level_above_the_datum_is_as_on_the_datum():
    """Ground and feet rise together."""
    wish, points = SunWish("sun", 8, 18, (3, 6)), np.random.default_rng(6).uniform((0, 0), (100, 120), (300, 2))
    high = crowded_site(levels=(SpotLevel((0, 0), 40.0), SpotLevel((100, 0), 40.0), SpotLevel((0, 120), 40.0)))
    assert sun_hours(high, points, wish) == pytest.approx(sun_hours(crowded_site(), points, wish))


def test_partial_covers_multiply():
    """Under two roofs that hold back 0.5 and 0.4 there is 0.3 of the sun, and 0.06 with a third of 0.8."""
    site = crowded_site(**{**BARE, "structures": (Structure("roof", box(0, 0, 90, 90), height_ft=9, shade=0.5),)})
    point = np.array([[45.0, 45.0]])
    assert sun_hours(site, point, NOON) == pytest.approx([0.5])
    new = cover_caster(box(0, 0, 90, 90), 11.0, 0.4)
    assert sun_hours(site, point, NOON, extra=(new,)) == pytest.approx([0.3])
    both = (new, cover_caster(box(0, 0, 90, 90), 12.0, 0.8))
    assert sun_hours(site, point, NOON, extra=both) == pytest.approx([0.06])


def test_a_cover_of_many_corners_holds_back_once():
    """A thin L-shaped roof is one roof, though its shadow is found in pieces."""
    outline = ((0, 0), (90, 0), (90, 60), (60, 60), (60, 30), (0, 30))
    points = np.random.default_rng(7).uniform((0, 0), (100, 80), (500, 2))
    hours = sun_hours(crowded_site(**BARE), points, NOON, extra=(cover_caster(outline, 9.0, 0.6),))
    quarters = hours / 0.25
    assert set(np.round((4 - quarters) / 0.6, 6)) <= {0.0, 1.0, 2.0, 3.0, 4.0}
    assert hours.min() == pytest.approx(0.4)


def test_a_roof_above_or_below_the_eye():
    """A roof shades only what lies below it: on a bank higher than the roof the sun is free."""
    levels = (SpotLevel((0, 0), 0.0), SpotLevel((0, 10), 20.0))
    site = crowded_site(**BARE, levels=levels)
    roof = cover_caster(box(-50, -50, 100, 100), 8.0, 1.0)
    points = np.array([[0.0, 1.0], [0.0, 9.0]])
    assert sun_hours(site, points, NOON, extra=(roof,)) == pytest.approx([0.0, 1.0])


def test_a_wall_holds_back_the_low_sun():
    """A new wall in the west takes the evening, not the noon; a screen of half takes half of it."""
    site, point = crowded_site(**BARE), np.array([[20.0, 60.0]])
    evening = SunWish("sun", 18.0, 19.0, (6,))
    wall = Caster(LineString([(10, -500), (10, 500)]), 0, 12, 1.0)
    assert sun_hours(site, point, evening, extra=(wall,)) == pytest.approx([0.0])
    assert sun_hours(site, point, evening, extra=(replace(wall, share=0.5),)) == pytest.approx([0.5])
    assert sun_hours(site, point, NOON, extra=(wall,)) == pytest.approx([1.0])


@pytest.mark.parametrize(
    ("latitude", "evergreen", "month", "lit"),
    [(40, False, 6, 0.2), (40, False, 12, 0.7), (40, True, 12, 0.2), (-40, False, 6, 0.7), (-40, False, 12, 0.2)],
)
def test_leaves_fall_in_winter_on_both_hemispheres(latitude, evergreen, month, lit):
    """0.8 of the sun is held back in leaf, 0.3 by bare branches."""
    tree = Tree("tree", (50, 50), 0.5, 30, height_ft=12, evergreen=evergreen)
    site = crowded_site(**{**BARE, "trees": (tree,)}, place=Place(latitude, 0.0, "UTC"))
    assert sun_hours(site, np.array([[42.0, 50.0]]), SunWish("sun", 11.5, 12.5, (month,))) == pytest.approx([lit])


def test_a_trunk_holds_back_all():
    """On the side away from the noon sun a trunk stands before it, below a crown far above."""
    site = crowded_site(**{**BARE, "trees": (Tree("tree", (50, 50), 4, 4, height_ft=60),)}, place=Place(40, 0, "UTC"))
    behind = np.array([[50.0, 52.5], [50.0, 47.5]])
    assert sun_hours(site, behind, SunWish("sun", 12.0, 12.25, (12,))) == pytest.approx([0.0, 0.25])


def test_a_building_without_height_has_the_usual_one():
    """20 ft, as the notes of a scenario say."""
    site = crowded_site(**BARE)
    points = np.random.default_rng(8).uniform((0, 0), (100, 120), (300, 2))
    wish = SunWish("sun", 9, 17, (3,))
    unknown, usual, low = (
        sun_hours(replace(site, buildings=(Building("b", box(40, 40, 20, 20), height_ft=h),)), points, wish)
        for h in (None, 20.0, 9.0)
    )
    assert (unknown == usual).all()
    assert usual.sum() < low.sum()


def test_the_grid_covers_the_yard_row_by_row():
    """Middles of cells, x along a row; the same hours as point by point, and a room's mean over them."""
    site, wish = crowded_site(), SunWish("sun", 15, 18, (9,))
    xs, ys, hours = sun_grid(site, wish, 5.0)
    assert (xs[0], xs[-1], ys[0], ys[-1]) == (2.5, 97.5, 2.5, 117.5)
    assert hours.shape == (24, 20)
    assert hours[17, 3] == pytest.approx(sun_hours(site, np.array([[xs[3], ys[17]]]), wish)[0])
    _, _, fine = sun_grid(site, wish, 1.0)
    assert room_sun_hours(site, wish, low=(10, 70), high=(24, 84)) == pytest.approx(fine[70:84, 10:24].mean())
