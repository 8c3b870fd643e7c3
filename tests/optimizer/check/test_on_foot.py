"""Near on foot is measured round the furniture of a terrace that lies between."""

from dataclasses import replace
from math import hypot

import pytest
from shapely import box

from optimizer.brief import Relation
from optimizer.catalogue import Item
from optimizer.check.case import CheckCase
from optimizer.check.on_foot import on_foot_ft, round_furniture_ft
from optimizer.check.relations import relation_check
from optimizer.derived import Derived
from optimizer.layout import Layout, placed_of
from tests.yards import PLAIN_SITE, plain_rooms, plain_yard, sized, stand

BARE = replace(PLAIN_SITE, buildings=(), structures=(), trees=(), keep_outs=())
BETWEEN = Layout((stand("nook", 6, 20, 8, 7), stand("table", 18, 12, 14, 24), stand("fire", 36, 20, 8, 8)))
"""The nook ends at x = 14 and the fire begins at x = 36; between them lies a terrace."""


def case_of(*furniture, layout=BETWEEN, kind="gathering", within_ft=24.0):
    room = sized("table", kind, 14, 24)
    rooms = plain_rooms(replace(room, choices=(replace(room.choices[0], furniture=furniture),)))
    yard = replace(plain_yard(Relation(("nook", "fire"), "near", within_ft=within_ft, by="walking")), site=BARE)
    return CheckCase(Derived(yard, placed_of(rooms, layout)))


def ends(case):
    return tuple((name, case.shape_of(name)) for name in ("nook", "fire"))


def findings(case):
    return list(relation_check("near")(case))


def test_straight_where_nothing_stands_in_the_way():
    """An empty terrace, and a chair 3 ft aside of the straight walk, leave it as it is."""
    aside = Item("chair", 6, 0, 2, 2)
    for case in (case_of(), case_of(aside)):
        assert on_foot_ft(case, ends(case)) == pytest.approx(22, abs=0.05)
        assert round_furniture_ft(case, ends(case)) == pytest.approx(22, abs=0.05)
        assert findings(case) == []


def test_round_a_table():
    """A table of 6 by 12 ft in the terrace's middle is passed 1.5 ft off its corners, below it, as a hand sketch says.

    On the plan it takes x 22 to 28 and y 18 to 30. One steps out of the middle of the nook's side and into that of the
    fire's, 1.5 ft before them.
    """
    case = case_of(Item("table", 4, 6, 6, 12))
    assert case.placed.of("table").items("table")[0].equals(box(22, 18, 28, 30))
    below = 1.5 + hypot(20.5 - 15.5, 23.5 - 16.5) + 9 + hypot(34.5 - 29.5, 24 - 16.5) + 1.5
    assert round_furniture_ft(case, ends(case)) == pytest.approx(below, abs=0.1)
    (finding,) = findings(case)
    assert set(finding.rooms) == {"nook", "fire", "table"}
    assert findings(case_of(Item("table", 4, 6, 6, 12), within_ft=30.0)) == []


def test_only_rooms_that_are_walked_through_and_lie_between():
    """A store is gone round as a whole anyway; furniture of the two ends is not on the way."""
    table = Item("table", 4, 6, 6, 12)
    case = case_of(table, kind="storage")
    assert round_furniture_ft(case, ends(case)) == on_foot_ft(case, ends(case))
    own = case_of(table)
    pair = tuple((name, own.shape_of(name)) for name in ("nook", "table"))
    assert round_furniture_ft(own, pair) == pytest.approx(4)


def test_furniture_from_edge_to_edge_of_the_yard_is_walked_past():
    """Where it leaves no clear way the distance past it counts: that a way is blocked is said by another rule."""
    across = Layout((stand("nook", 6, 20, 8, 7), stand("table", 18, 0, 14, 40), stand("fire", 36, 20, 8, 8)))
    case = case_of(Item("table", 4, -8, 6, 40), layout=across)
    assert round_furniture_ft(case, ends(case)) == pytest.approx(22, abs=0.05)
