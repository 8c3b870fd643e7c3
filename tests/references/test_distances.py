"""Usual distances and root rings against published figures, the source and how it was seen beside each value."""

import math

import pytest
from shapely import Point

from optimizer.catalogue import fire_clear_ft, root_rings, usual_distance, usual_rings
from optimizer.check import check_layout
from optimizer.layout import placed_of
from optimizer.site import RootRings, Setbacks
from tests.yards import PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, sized, stand

PUBLISHED = {
    "wood_fire": 25,  # IFC 307.4.2, recreational fire to structure or combustible: seen quoted by cities
    "gas_fire": 10,  # no model-code number; popular pages and several cities' fire-pit rules: common practice
    "utility_line": 1.5,  # 811 tolerance zone, 18 in each side: seen (nwga.org)
    "septic_tank": 5,  # tank to building, Idaho septic answers: seen
    "septic_field": 10,  # leach field, Connecticut practice: seen (glscully.com)
    "septic_field_to_water": 25,  # the same, pool in the ground: seen
    "overhead_line_to_water": 10,  # NEC 680.9, horizontal limit: seen
}


@pytest.mark.parametrize(("name", "feet"), PUBLISHED.items())
def test_usual_distances(name, feet):
    """Each usual distance is the published one, and says where it is from."""
    assert usual_distance(name).feet == feet
    assert usual_distance(name).source


@pytest.mark.parametrize(
    ("ft_per_inch", "trunk_in", "radius_ft"),
    [
        (1.25, 12, 15),  # NC State Extension, fig. 3: seen
        (1.5, 10, 15),  # Edina MN, FAQ 975: seen
        (1.5, 20, 30),  # NC Urban Forest Council: seen
        (1.0, 10, 10),  # Vancouver WA, VMC 20.170.100: seen
        (1.0, 12, 12),  # 12 stem diameters, BS 5837: seen; a foot of radius for each inch is the same ring
    ],
)
def test_root_radius_for_each_inch_of_trunk(ft_per_inch, trunk_in, radius_ft):
    """Feet of radius for each inch of trunk are twelve times as many trunk diameters, and can be asked for."""
    site = on_site(plain_yard(), root_rings=RootRings(outer=12 * ft_per_inch)).site
    assert root_rings(site).outer_trunks * trunk_in / 12 == pytest.approx(radius_ft)


def test_the_usual_ring_is_15_ft_for_12_in():
    """1.25 ft for each inch: NC State Extension, seen."""
    assert usual_rings().outer_trunks * 1.0 == 15


def test_root_area_of_12_stem_diameters():
    """A stem of 0.45 m has a radius of 5.4 m and 91.6 sq m: BS 5837 RPA tables, seen. The check measures it."""
    metre = 1 / 0.3048
    oak = PLAIN_SITE.trees[0]
    site = on_site(plain_yard(), root_rings=RootRings(inner=0, outer=12)).site
    radius_ft = root_rings(site).outer_trunks * 0.45 * metre
    assert radius_ft / metre == pytest.approx(5.4)
    assert Point(oak.at).buffer(radius_ft, quad_segs=64).area / metre**2 == pytest.approx(91.6, abs=0.05)
    assert math.pi * 15**2 == pytest.approx(706.9, abs=0.05)  # the cap of the same standard, 15 m


@pytest.mark.parametrize(("fuel", "feet"), [("wood", 25.0), ("gas", 10.0)])
def test_fire_at_its_distance_and_an_inch_nearer(fuel, feet):
    """A fire at just its distance from the house passes, an inch nearer it does not."""
    assert fire_clear_ft(PLAIN_SITE, fuel) == feet
    wide = on_site(plain_yard(), boundary=((-60, 0), (120, 0), (120, 90), (-60, 90)), structures=(), trees=())
    rooms = plain_rooms(sized("fire", "fire", 8, 8, fuel=fuel))
    for y_ft, kept in ((12 + feet, True), (12 + feet - 1 / 12, False)):
        found = check_layout(wide, placed_of(rooms, plain_layout(stand("fire", 10, y_ft, 8, 8))))
        assert (("fire_clear", ("fire", "house")) not in {(f.rule, f.rooms) for f in found}) == kept


@pytest.mark.parametrize("feet", [4.0, 5.0, 10.0, 15.0, 18.0])
def test_published_pool_setbacks_can_be_said(feet):
    """Pool to lot line: Riverton IL 4, Yuma AZ 5, Palos Heights IL 10, Westfield OH 15, Bloomington MN 18: seen."""
    yard = on_site(plain_yard(), setbacks=(Setbacks(water=feet),) * 4, structures=(), keep_outs=())
    rooms = plain_rooms(sized("pool", "reserve", 8, 8))
    for x_ft, kept in ((60 - 8 - feet, True), (60 - 8 - feet + 1 / 12, False)):
        found = check_layout(
            yard, placed_of(rooms, plain_layout(stand("pool", x_ft, 20, 8, 8), without=("cooker", "table")))
        )
        assert (("inside_setbacks", ("pool", "east")) not in {(f.rule, f.rooms) for f in found}) == kept
