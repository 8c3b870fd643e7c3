"""Rules about lines, septic ground, root rings and the paved share, at their limits."""

import math
from dataclasses import replace

import pytest

from optimizer.appraisal import appraise
from optimizer.catalogue import Cover, book_for
from optimizer.check import check_layout
from optimizer.derived import Derived
from optimizer.layout import placed_of
from optimizer.site import KeepOut, RootRings, Setbacks, Tree, UtilityLine
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized, stand

ALLOW = ("gathering", "nook", "reserve", "lawn", "fire")


def rules(*changed, rooms=None, without=(), **site):
    """Rule, ends and amount of every finding, in a yard with parts of its site replaced."""
    layout = plain_layout(*changed, without=without)
    findings = check_layout(on_site(plain_yard(), **site), placed_of(rooms or plain_rooms(), layout))
    return {(f.rule, *f.rooms): round(f.amount, 2) for f in findings}


def strip(kind, low, high):
    """Ground across the yard between two heights, which allows every kind."""
    return KeepOut("ground", ((0, low), (56, low), (56, high), (0, high)), ALLOW, kind)


def septic_of_the_nook(area, rooms=None):
    """What the nook lacks of its distance from kept-out ground, or None."""
    return rules(rooms=rooms, keep_outs=(area,)).get(("septic", "nook", "ground"))


@pytest.mark.parametrize(("y_ft", "short_ft"), [(39.5, None), (39.0, 0.5), (36.0, 1.5)])
def test_beside_and_over_a_line(y_ft, short_ft):
    """The nook's edge at 38 ft keeps 1.5 ft from a line; one that runs through it lacks all of it."""
    found = rules(utility_lines=(UtilityLine("main", "gas", ((20, y_ft), (44, y_ft))),))
    assert found == ({} if short_ft is None else {("utility_lines", "nook", "main"): short_ft})


def test_a_lawn_lies_on_a_line():
    """Lawn may lie on a line; a line's own width of 0 lets anything."""
    grass = plain_rooms(sized("grass", "lawn", 8, 8))
    main = UtilityLine("main", "water", ((0, 35.2), (20, 35.2)))
    laid = rules(stand("grass", 10, 31, 8, 8), rooms=grass, utility_lines=(main,), without=("fire",), trees=())
    assert laid == {}
    through = UtilityLine("main", "water", ((20, 36), (44, 36)), clear_ft=0.0)
    assert rules(utility_lines=(through,)) == {}


def test_septic_ground_by_what_is_built():
    """A nook of paving keeps 5 ft from a tank and 10 from a field, a pool 25 from a field."""
    assert rules(keep_outs=(strip("septic tank", 39, 40),)) == {("septic", "nook", "ground"): 4}
    assert septic_of_the_nook(strip("septic field", 39, 40)) == 9
    pool = plain_rooms(sized("nook", "reserve", 8, 7))
    assert septic_of_the_nook(strip("septic field", 39.5, 40), rooms=pool) == 23.5
    assert septic_of_the_nook(strip("overhead line", 39.5, 40), rooms=pool) == 8.5
    assert rules(keep_outs=(strip("overhead line", 37, 40),)) == {}


def test_nothing_is_built_on_a_field_whatever_it_allows():
    """With all distances at 0 and every kind allowed, paving on the field is still a fault, and lawn is none."""
    none = (("septic_field", 0.0), ("septic_field_to_water", 0.0))
    field = strip("septic field", 37, 40)
    assert rules(keep_outs=(field,), distances=none) == {("septic", "nook", "ground"): 8.0}
    assert rules(keep_outs=(strip("septic field", 38, 40),), distances=none) == {}
    grass = plain_rooms(sized("nook", "lawn", 8, 7))
    assert septic_of_the_nook(field) == 10
    assert septic_of_the_nook(field, rooms=grass) is None


def test_the_share_of_a_ring_that_rooms_take_together():
    """Two rooms that each take less than the share of a ring take more together; the amount is what is too much."""
    tree = Tree("elm", (23, 34.5), trunk_diameter_ft=0.8, canopy_radius_ft=1)
    table, nook = stand("table", 24, 16, 14, 12), stand("nook", 28, 31, 8, 7)
    ring = math.pi * (12**2 - 4.8**2)
    alone = rules(table, nook, trees=(tree,), without=("fire", "cooker"), root_rings=RootRings(paved_share=0.0))
    both = alone["root_ring", "table", "nook", "elm"]
    one = rules(nook, trees=(tree,), without=("fire", "cooker", "table"), root_rings=RootRings(paved_share=0.0))
    assert 0 < one["root_ring", "nook", "elm"] < both
    share = (both - 1.0) / ring
    assert ("root_ring", "nook", "elm") not in rules(
        nook, trees=(tree,), without=("fire", "cooker", "table"), root_rings=RootRings(paved_share=share)
    )
    over = rules(table, nook, trees=(tree,), without=("fire", "cooker"), root_rings=RootRings(paved_share=share))
    assert over == {("root_ring", "table", "nook", "elm"): pytest.approx(1.0, abs=0.1)}


def test_the_paved_share_is_that_of_the_appraisal():
    """A limit at just the share that the appraisal measures is kept, one a thousandth lower is not."""
    yard = plain_yard()
    share = appraise(Derived(yard, placed_of(plain_rooms(), plain_layout())), book_for("USD")).paved_share
    assert rules(paved_share_limit=share) == {}
    assert rules(paved_share_limit=share - 0.001) == {("paved_share",): pytest.approx(0.001 * 1920, abs=0.01)}


def test_a_roof_that_is_bought_keeps_the_setback_of_roofs():
    """The same nook with a shade structure stands behind the setback of roofs."""
    setbacks = (Setbacks(paving=1, roof=5),) * 4
    nook = sized("nook", "nook", 8, 7)
    roofed = replace(nook, choices=(replace(nook.choices[0], cover=Cover(9.0, 0.7)),))
    assert rules(setbacks=setbacks) == {}
    found = rules(rooms=plain_rooms(roofed), setbacks=setbacks)
    assert found["inside_setbacks", "nook", "rear"] == 3
