"""Distances and rings: the scenario's own, else the usual; by what is built."""

from typing import get_args

import pytest

from optimizer.catalogue import (
    distance_ft,
    fire_clear_ft,
    keep_out_ft,
    line_clear_ft,
    root_rings,
    usual_distance,
    usual_rings,
)
from optimizer.site import DistanceName, RootRings, UtilityLine
from tests.yards import PLAIN_SITE, on_site, plain_yard


def site(**changes):
    """The plain site with some parts replaced."""
    return on_site(plain_yard(), **changes).site


@pytest.mark.parametrize("name", get_args(DistanceName))
def test_every_distance_has_words_and_a_source(name):
    """The file knows each distance, what it means, who keeps it, and what local code may change."""
    usual = usual_distance(name)
    assert usual.feet > 0
    assert all((usual.meaning, usual.where, usual.source, usual.local))
    assert distance_ft(PLAIN_SITE, name) == usual.feet
    assert distance_ft(site(distances=((name, 0.0),)), name) == 0


def test_fuel():
    """A fire of which nothing is said burns gas."""
    yard = site(distances=(("wood_fire", 50.0),))
    assert [fire_clear_ft(yard, fuel) for fuel in (None, "gas", "wood")] == [10, 10, 50]


def test_a_line_keeps_its_own_width():
    """A line's own width wins over the site's, and that over the usual."""
    line, own = UtilityLine("main", "water", ((0, 0), (9, 9))), UtilityLine("main", "gas", ((0, 0), (9, 9)), 4.0)
    yard = site(distances=(("utility_line", 2.0),))
    assert [line_clear_ft(yard, line), line_clear_ft(yard, own), line_clear_ft(PLAIN_SITE, line)] == [2, 4, 1.5]


@pytest.mark.parametrize(
    ("kind", "built", "feet"),
    [
        ("septic tank", ("paving",), 5),
        ("septic tank", ("water",), 5),
        ("septic tank", (), 0),
        ("septic field", ("paving", "fire"), 10),
        ("septic field", ("water",), 25),
        ("septic field", ("paving", "water"), 25),
        ("overhead line", ("water",), 10),
        ("overhead line", ("paving", "roof"), 0),
        ("plain", ("water",), 0),
    ],
)
def test_kept_out_ground_by_what_is_built(kind, built, feet):
    """The largest of the distances that bind what is built."""
    assert keep_out_ft(PLAIN_SITE, kind, built) == feet


def test_rings():
    """Each figure by itself is the scenario's own or the usual; the outer ring never lies inside the inner."""
    assert root_rings(PLAIN_SITE) == usual_rings()
    assert root_rings(site(root_rings=RootRings(outer=12, paved_share=0.0))).outer_trunks == 12
    assert root_rings(site(root_rings=RootRings(paved_share=0.0))).paved_share == 0
    assert root_rings(site(root_rings=RootRings(inner=20))).outer_trunks == 20
