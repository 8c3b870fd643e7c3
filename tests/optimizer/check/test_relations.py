"""Relations, hard and wished, at their limits."""

import pytest

from optimizer.brief import Relation
from optimizer.check import check_layout, wishes_missed
from optimizer.check.case import CheckCase
from optimizer.derived import Derived
from optimizer.layout import placed_of
from optimizer.site import Building, Surrounding
from tests.yards import PLAIN_SITE, on_site, plain_layout, plain_rooms, plain_yard, stand


def broken(*relations: Relation, layout=None, **site) -> list[tuple[str, ...]]:
    """Ends of every relation that is missed."""
    yard = on_site(plain_yard(*relations), **site)
    findings = check_layout(yard, placed_of(plain_rooms(), layout or plain_layout()))
    return [finding.rooms for finding in findings if finding.rule in {relation.kind for relation in relations}]


@pytest.mark.parametrize(("between", "straight_ft"), [
    (("nook", "table"), 3.0),
    (("cooker", "table"), 0.0),
    (("fire", "house"), 10.0),
    (("fire", "oak"), 32**0.5),
    (("table", "kitchen door"), 32**0.5),
    (("nook", "street eye"), 37.0013),
])  # fmt: skip
def test_straight_distances(between, straight_ft):
    """Near and apart measure from edge to edge; doors, trees and eyes are points."""
    assert broken(Relation(between, "near", within_ft=straight_ft + 0.01)) == []
    assert broken(Relation(between, "apart", at_least_ft=straight_ft - 0.01)) == []
    assert broken(Relation(between, "apart", at_least_ft=straight_ft + 0.1)) == [between]
    if straight_ft:
        assert broken(Relation(between, "near", within_ft=straight_ft - 0.1)) == [between]


def test_on_foot_round_the_house():
    """On foot the distance goes round a building that the straight line crosses; it is never less than straight.

    1.5 ft to the fire's gate, 11.11 to one corner, 3.96 to the next, 4.51 to the table.
    """
    wall = Building("wall", ((30, 12), (31, 12), (31, 31), (30, 31)))
    layout = plain_layout(stand("table", 33, 16, 14, 12), without=("cooker", "nook"))
    here = {"layout": layout, "buildings": (*PLAIN_SITE.buildings, wall)}
    between = ("fire", "table")
    assert broken(Relation(between, "near", within_ft=15.01), **here) == []
    assert broken(Relation(between, "near", within_ft=21, by="walking"), **here) == [between]
    assert broken(Relation(between, "near", within_ft=21.2, by="walking"), **here) == []
    assert broken(Relation(between, "apart", at_least_ft=21, by="walking"), **here) == []


def test_on_foot_between_rooms_that_touch():
    """Rooms that touch are at no distance, on foot as well."""
    assert broken(Relation(("cooker", "table"), "near", within_ft=0, by="walking")) == []


def test_on_foot_to_what_cannot_be_reached():
    """Where no way leads, a room is not near on foot, what shuts it in is to blame too, and it is apart."""
    shut_in = {"layout": plain_layout(stand("cooker", 38, 18, 6, 8, "+x"), stand("nook", 44, 18, 8, 7))}
    assert broken(Relation(("cooker", "gate"), "near", within_ft=500, by="walking"), **shut_in) == [
        ("cooker", "gate", "nook")
    ]
    assert broken(Relation(("cooker", "gate"), "apart", at_least_ft=500, by="walking"), **shut_in) == []


@pytest.mark.parametrize("name", ["house", "old roof", "oak", "bath window", "gate"])
def test_on_foot_to_anything_on_the_site(name):
    """A walking distance exists to all that a relation may name, and is at least the straight one."""
    far = Relation(("nook", name), "near", within_ft=80, by="walking")
    assert broken(far) == []
    assert broken(Relation(("nook", name), "near", within_ft=1, by="walking")) == [("nook", name)]


def test_touching_a_building():
    """A room touches a building along its wall."""
    along = plain_layout(stand("nook", 52, 5, 8, 7), stand("table", 24, 12, 14, 12))
    assert broken(Relation(("table", "house"), "touching", shared_edge_ft=14), layout=along) == []
    assert broken(Relation(("table", "house"), "touching", shared_edge_ft=15), layout=along) == [("table", "house")]
    assert broken(Relation(("nook", "house"), "touching"), layout=along) == [("nook", "house")]


def test_a_neighbour_hides():
    """A building outside the yard counts for and against sight alike; an end does not hide itself."""
    screen = Surrounding("shed next door", ((20, 42), (40, 42), (40, 46), (20, 46)))
    seen = {"surroundings": (*PLAIN_SITE.surroundings, screen)}
    assert broken(Relation(("nook", "rear eye"), "out_of_view"), **seen) == []
    assert broken(Relation(("nook", "rear eye"), "in_view"), **seen) == [("nook", "rear eye")]
    assert broken(Relation(("nook", "shed next door"), "out_of_view"), **seen) == [("nook", "shed next door")]
    assert broken(Relation(("nook", "house"), "in_view"), **seen) == []


@pytest.mark.parametrize(("front", "faces"), [("-x", True), ("+x", False), ("+y", False), ("-y", False)])
def test_facing(front, faces):
    """A room faces what lies wholly beyond its front and beside no more than that."""
    layout = plain_layout(stand("cooker", 38, 18, 6, 8, front))
    assert (broken(Relation(("cooker", "table"), "faces"), layout=layout) == []) is faces
    assert broken(Relation(("cooker", "gate"), "faces")) == []


def test_an_end_that_is_left_out():
    """A relation does not bind, and its wish is not missed, when a room of it is left out."""
    relation = Relation(("nook", "table"), "near", within_ft=1)
    wish = Relation(("nook", "table"), "near", within_ft=1, wish=2)
    without = plain_layout(without=("nook",))
    assert broken(relation) == [("nook", "table")]
    assert broken(relation, layout=without) == []
    assert wishes_missed(CheckCase(Derived(plain_yard(wish), placed_of(plain_rooms(), plain_layout())))) == (wish,)
    assert wishes_missed(CheckCase(Derived(plain_yard(wish), placed_of(plain_rooms(), without)))) == ()


def test_a_wish_is_no_rule():
    """A wish that is missed is no finding; one that is kept, and a hard relation, are no missed wish."""
    missed = Relation(("fire", "nook"), "touching", wish=1)
    kept = Relation(("fire", "nook"), "apart", at_least_ft=5, wish=1)
    hard = Relation(("fire", "nook"), "near", within_ft=1)
    yard = plain_yard(missed, kept)
    assert check_layout(yard, placed_of(plain_rooms(), plain_layout())) == ()
    assert wishes_missed(
        CheckCase(Derived(plain_yard(missed, kept, hard), placed_of(plain_rooms(), plain_layout())))
    ) == (missed,)
