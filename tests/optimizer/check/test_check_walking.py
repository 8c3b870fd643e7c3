"""The kitchen's way to its door, and what no clear way joins."""

import pytest

from optimizer.brief import Relation
from optimizer.check import check_layout
from optimizer.layout import Layout, placed_of
from optimizer.site import Building
from tests.yards import PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, sized, stand

FAR = plain_layout(stand("cooker", 46, 17, 6, 8, "-x"))


@pytest.mark.parametrize(
    ("relation", "found"),
    [
        (Relation(("cooker", "kitchen door"), "near", within_ft=40, by="walking"), set()),
        (Relation(("kitchen door", "cooker"), "near", within_ft=28, by="walking"), {"near"}),
        (Relation(("cooker", "kitchen door"), "near", within_ft=40, wish=1), {"kitchen_walk"}),
        (Relation(("cooker", "house"), "near", within_ft=40), {"kitchen_walk"}),
    ],
)
def test_a_brief_that_says_how_near(relation, found):
    """A hard relation that holds a kitchen near a door speaks instead of the rule; a wish does not."""
    assert {finding.rule for finding in check_layout(plain_yard(relation), placed_of(plain_rooms(), FAR))} == found


def test_a_yard_cut_in_two():
    """What lies beyond a wall from the gate is named: the rooms there, and the door that a trip names."""
    wall = Building("wall", ((6, 0), (7, 0), (7, 40), (6, 40)))
    yard = on_site(plain_yard(), buildings=(*PLAIN_SITE.buildings, wall))
    found = [
        finding.rooms
        for finding in check_layout(yard, placed_of(plain_rooms(), plain_layout()))
        if finding.rule == "reachable"
    ]
    assert found == [("kitchen door",), ("table",), ("cooker",), ("fire",), ("nook",)]


def test_what_stands_in_the_kitchens_way_is_blamed_with_it():
    """A bed of 38 ft across the yard sends the cook round its far end; without it the kitchen would be near enough. A
    kitchen that is far by itself is blamed alone.
    """
    bed = sized("hedge", "bed", 38, 4)
    cooker = stand("cooker", 14, 30, 8, 6, "-y")
    yard, rooms = plain_yard(), plain_rooms(bed)

    def blamed(layout):
        found = check_layout(yard, placed_of(rooms, layout))
        return [finding.rooms for finding in found if finding.rule == "kitchen_walk"]

    assert blamed(Layout((cooker, stand("hedge", 2, 20, 38, 4)))) == [("cooker", "kitchen door", "hedge")]
    assert blamed(Layout((cooker,))) == []
    assert blamed(Layout((stand("cooker", 46, 17, 6, 8, "-x"),))) == [("cooker", "kitchen door")]
