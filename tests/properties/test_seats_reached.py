"""Every seat of a furnished room can be reached from an open side, whatever the kind, level and size."""

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity, box, get_parts, union_all

from optimizer.brief import Choice, RoomKind, RoomWish
from optimizer.catalogue import Item, SizedChoice, clearance_ft, kind_rules, sized_room
from optimizer.catalogue.sides import side_kind

LOOSE = ("chair", "stool", "fire seat", "lounge chair", "side table")
"""What is pushed aside by who sits down: clearances are measured without it (NKBA Guideline 8: from the table)."""
HAIR_FT = 0.01
FEET_FT = 1.5
"""Who stands so near to a seat's edge sits down on it: the gap of 9 to 18 in between a seat and a low table."""
SEATED: tuple[RoomKind, ...] = ("gathering", "kitchen", "fire", "nook")
SIZES = st.floats(6, 30)


def ground(item: Item) -> Polygon:
    """Ground of an item in the room's axes."""
    flat = box(item.x_ft, item.y_ft, item.x_ft + item.width_ft, item.y_ft + item.depth_ft)
    return affinity.rotate(flat, item.turn_deg)


def outside(choice: SizedChoice, kind: RoomKind, clear_ft: float) -> list[Polygon]:
    """Strips before the sides over which one steps in; people come to the front of a kind that serves there."""
    width, depth = choice.width_ft, choice.depth_ft
    strips = {
        "front": box(0, depth, width, depth + clear_ft),
        "back": box(0, -clear_ft, width, 0),
        "left": box(-clear_ft, 0, 0, depth),
        "right": box(width, 0, width + clear_ft, depth),
    }
    front = {"front"} if kind_rules(kind).has_front else set()
    return [strips[side] for side, use in choice.sides if side in front or side_kind(use).is_crossed]


def seats_out_of_reach(kind: RoomKind, choice: SizedChoice, clear_ft: float) -> list[str]:
    """Roles of seats to which nobody so wide can walk from outside."""
    strips = outside(choice, kind, clear_ft)
    fixed = union_all([ground(item) for item in choice.furniture if item.role not in LOOSE])
    free = union_all([box(0, 0, choice.width_ft, choice.depth_ft), *strips]).difference(fixed)
    half = clear_ft / 2 - HAIR_FT
    walked = free.buffer(-half, quad_segs=4)
    parts = [part for part in get_parts(walked) if any(part.intersects(strip) for strip in strips)]
    reached = union_all(parts).buffer(half + FEET_FT)
    return [item.role for item in choice.furniture if item.seats and not reached.intersects(ground(item))]


@given(kind=st.sampled_from(SEATED), seats=st.integers(1, 24), fuel=st.sampled_from(("gas", "wood")))
@settings(max_examples=80, deadline=None)
def test_sizes_by_use(kind: RoomKind, seats: int, fuel: str) -> None:
    """At every level 36 in lead to every seat (NKBA Guideline 7)."""
    wish = RoomWish("room", kind, seats=seats, bar_seats=min(seats, 10), fuel=fuel if kind == "fire" else None)
    for choice in sized_room(wish).choices:
        assert seats_out_of_reach(kind, choice, clearance_ft("walkway")) == []


@given(kind=st.sampled_from(SEATED), width=SIZES, depth=SIZES, seats=st.integers(1, 16))
@settings(max_examples=150, deadline=None)
def test_given_sizes(kind: RoomKind, width: float, depth: float, seats: int) -> None:
    """In any size that a brief gives, at least the 24 in that go round a table (LSU AgCenter) lead to every seat."""
    wish = RoomWish("room", kind, bar_seats=4, choices=(Choice("given", width, depth, seats, 1.0),))
    (choice,) = sized_room(wish).choices
    assert seats_out_of_reach(kind, choice, clearance_ft("around_table_least")) == []


def test_a_seat_behind_walls_is_found() -> None:
    """A bench in a room closed on all sides but for a gap of 2 ft is out of reach at 36 in, within at 24."""
    walls = (Item("seat wall", 0, 8, 4, 1), Item("seat wall", 6, 8, 4, 1))
    sides = (("front", "open"), ("back", "bench"), ("left", "seat wall"), ("right", "seat wall"))
    choice = SizedChoice("c", 10, 9, 2, 1.0, sides, (*walls, Item("bench", 2, 0, 5, 1.5, seats=2)))
    assert seats_out_of_reach("nook", choice, 3.0) == ["bench"]
    assert seats_out_of_reach("nook", choice, 2.0) == []
