"""Room to walk past the stools, and what the cook sees."""

from dataclasses import replace

import pytest

from optimizer.appraisal.cook_outlook import past_stools_ft, watched_shares
from optimizer.brief import Equipment, RoomWish
from optimizer.catalogue import Item, clearance_ft, sized_room
from optimizer.grading import grade
from optimizer.layout import Layout, PlacedRoom, cook_stands, counter_middle, placed_of
from optimizer.site import Surrounding
from tests.yards import PLAIN_SITE, sized, stand

# Serving to +y: counter from y = 3 to 5, bar to 6, one stool before it.
BAR = (Item("counter", 0, 3, 8, 2), Item("ledge", 0, 5, 8, 1), Item("stool", 3, 6.1, 1, 1, seats=1))
ROOM = sized("cooker", "kitchen", 8, 10)
COOKER = replace(ROOM, choices=(replace(ROOM.choices[0], furniture=BAR),))
TABLE = sized("table", "gathering", 14, 12)
SEATED = replace(TABLE, choices=(replace(TABLE.choices[0], furniture=(Item("chair", 6, 2, 2, 2),)),))
FIRE = sized("fire", "fire", 8, 8)
KITCHEN = (COOKER, stand("cooker", 24, 14, 8, 10))


def past(*others, kitchen=KITCHEN):
    """Clear before the bar, whose edge lies at y = 20."""
    placed = together(kitchen, *others)
    return past_stools_ft(PLAIN_SITE, placed, grade(PLAIN_SITE, placed), placed.rooms[0])


def together(*pairs):
    """Rooms where they stand, from pairs of room and place."""
    return placed_of([room for room, _ in pairs], Layout(tuple(place for _, place in pairs)))


def test_clear_to_the_next_chair_or_room():
    """A chair at y = 26, a fire from y = 25; paving alone, or what stands aside, is no obstruction."""
    assert past((SEATED, stand("table", 21, 24, 14, 12))) == pytest.approx(6)
    assert past((FIRE, stand("fire", 24, 25, 8, 8))) == pytest.approx(5)
    assert past((TABLE, stand("table", 21, 24, 14, 12))) == 10
    assert past((FIRE, stand("fire", 32, 25, 8, 8))) == 10


def test_clear_to_the_boundary():
    """The yard ends at y = 40; 3 ft before that the bar has 3 ft."""
    assert past(kitchen=(COOKER, stand("cooker", 24, 31, 8, 10))) == pytest.approx(3)


def test_nobody_sits_there():
    """Without stools there is nobody to walk past."""
    plain = replace(ROOM, choices=(replace(ROOM.choices[0], furniture=BAR[:2]),))
    assert past(kitchen=(plain, stand("cooker", 24, 14, 8, 10))) is None


@pytest.mark.parametrize("seats", range(9))
@pytest.mark.parametrize("count", [1, 5])
def test_every_bar_has_its_44_in_inside_its_own_room(seats, count):
    """NKBA Guideline 8: 44 in from the bar's edge to walk past, whatever stands before the room; rule 18."""
    names = ("grill", "preparation", "sink", "refrigerator", "trash drawer")[:count]
    kitchen = sized_room(RoomWish("cooker", "kitchen", equipment=tuple(map(Equipment, names)), bar_seats=seats))
    for choice in (choice for choice in kitchen.choices if choice.label != "starter"):
        edges = [item.y_ft + item.depth_ft for item in choice.furniture if item.role == "ledge"]
        assert len(edges) == min(seats, 1)
        assert all(choice.depth_ft - edge >= clearance_ft("walk_past_seated") - 1e-6 for edge in edges)


@pytest.mark.parametrize(
    ("front", "size", "counter", "cook"),
    [
        ("+y", (8, 10), (28, 18), (28, 15.25)),
        ("-y", (8, 10), (28, 20), (28, 22.75)),
        ("+x", (10, 8), (28, 18), (25.25, 18)),
        ("-x", (10, 8), (30, 18), (32.75, 18)),
    ],
)
def test_where_counter_and_cook_are(front, size, counter, cook):
    """The counter's middle 4 ft from the back of 10; the cook half a counter and half of 42 in behind it."""
    kitchen = PlacedRoom(COOKER, COOKER.choices[0], stand("cooker", 24, 14, *size, front))
    assert counter_middle(kitchen) == pytest.approx(counter)
    assert cook_stands(kitchen) == pytest.approx(cook)


def test_a_corner_moves_the_middle_aside():
    """A counter of 6 ft from the left of 8 has its middle 1 ft to the left, seen towards the front."""
    choice = replace(ROOM.choices[0], furniture=(Item("counter", 0, 3, 6, 2),))
    ahead, aside = stand("cooker", 24, 14, 8, 10), stand("cooker", 24, 14, 10, 8, "+x")
    assert counter_middle(PlacedRoom(ROOM, choice, ahead)) == pytest.approx((27, 18))
    assert counter_middle(PlacedRoom(ROOM, choice, aside)) == pytest.approx((28, 19))


def watched(**site):
    """Shares of fire and table that the cook sees, the fire 8 ft before the kitchen."""
    placed = together(KITCHEN, (TABLE, stand("table", 36, 20, 14, 12)), (FIRE, stand("fire", 24, 32, 8, 8)))
    return watched_shares(replace(PLAIN_SITE, **site), placed, placed.rooms[0])


def test_the_cook_watches_fire_and_play():
    """Over the own bar the fire is seen; past a wall of 7 ft from side to side it is not; a table is not watched."""
    assert watched() == (("fire", 1.0),)
    assert watched(surroundings=(Surrounding("wall", line=((0, 28), (60, 28)), height_ft=7),)) == (("fire", 0.0),)
