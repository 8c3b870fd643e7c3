"""Jogs of the paved outline, on plans where they can be counted by eye: layout rule 28, common practice, no source."""

from dataclasses import replace
from types import SimpleNamespace

import pytest
from shapely import Polygon, affinity, box, union_all

from optimizer.appraisal.jogs import paved_jogs
from optimizer.grading import Flight
from optimizer.layout import Layout, placed_of
from optimizer.site import Tree
from tests.yards import PLAIN_SITE, plain_rooms, stand

BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=())
TABLE = stand("table", 24, 16, 14, 12)


def jogs(*placements, site=BARE, paths=(), flights=()):
    placed = placed_of(plain_rooms(), Layout(placements))
    grading = SimpleNamespace(flights=flights)
    return paved_jogs(SimpleNamespace(site=site, placed=placed, paths=union_all(list(paths)), grading=grading))


@pytest.mark.parametrize(("up", "count"), [(0, 0), (1, 1), (2, 2), (4, 1), (5, 0)])
def test_two_rooms_whose_edges_nearly_line_up(up, count):
    """A nook of 7 ft beside a table of 12 ft: below it is so far in, above it 5 ft less."""
    assert jogs(TABLE, stand("nook", 38, 16 + up, 8, 7)) == count


def test_steps_of_4_ft_and_corners_alone_are_no_jogs():
    """Rectangles apart, an L, and a way of 3 ft that ends in the open."""
    assert jogs(TABLE, stand("nook", 48, 16, 8, 7)) == 0
    assert jogs(TABLE, paths=[box(38, 20, 50, 23)]) == 0


def test_a_notch_has_two():
    """A way and its gap leave a notch of 2 by 1 ft in a straight edge."""
    assert jogs(TABLE, paths=[box(24, 28, 28, 29), box(30, 28, 38, 29)]) == 2


def test_inner_outlines_count():
    """A bed inside the paving has edges too: here a corner that is stepped back by 2 ft both ways."""
    ring = box(2, 2, 20, 20).difference(Polygon([(6, 6), (14, 6), (14, 8), (16, 8), (16, 16), (6, 16)]))
    assert jogs(paths=[ring]) == 2


def test_a_slight_bend_and_what_rounding_leaves_are_none():
    """An edge that turns by less than 20 degrees, and two that miss each other by half an inch."""
    assert jogs(paths=[Polygon([(2, 2), (10, 2), (13, 2.9), (20, 2.9), (20, 10), (2, 10)])]) == 0
    assert jogs(paths=[box(2, 2, 10, 10), box(10, 2, 20, 10.04)]) == 0


def test_corners_with_a_reason_do_not_count():
    """At the house, at a landing, at a kept tree, at steps."""
    step = box(30, 12, 36, 20), box(36, 14, 44, 20)
    assert jogs(paths=step) == 1
    house = replace(PLAIN_SITE.buildings[0], doors=())
    by_house = affinity.translate(union_all(step), 0, 2)
    assert jogs(paths=[by_house]) == 1
    assert jogs(site=replace(BARE, buildings=(house,)), paths=[by_house]) == 1
    assert jogs(site=replace(BARE, buildings=(house,)), paths=step) == 0
    tree = Tree("oak", (36, 11), trunk_diameter_ft=0.8, canopy_radius_ft=5)
    assert jogs(site=replace(BARE, trees=(tree,)), paths=step) == 0
    flight = Flight(("a", "b"), 2, 6, 14, 4, (36, 14), (-1, 0), landings=0, needs_handrail=False, needs_guard=False)
    assert jogs(paths=step, flights=(flight,)) == 0


def test_a_landing_is_part_of_the_ground():
    """A room half a foot wider than the landing beside it makes no jog: the corner is the landing's."""
    assert jogs(stand("nook", 22.5, 12, 8, 7), site=PLAIN_SITE) == 0


def test_a_turned_plan_has_as_many():
    """Mirrored and turned by a quarter the same outline has the same jogs."""
    plan = union_all([box(10, 10, 20, 20), box(20, 12, 30, 23), box(12, 20, 14, 28)])
    for turned in (plan, affinity.scale(plan, -1, 1), affinity.rotate(plan, 90)):
        assert jogs(paths=[turned]) == 3
