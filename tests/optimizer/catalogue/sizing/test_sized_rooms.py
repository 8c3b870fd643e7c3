"""Rooms sized from wishes: what holds for every kind and every size."""

from itertools import combinations
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, box
from shapely.affinity import rotate

from optimizer.brief import Brief, Choice, Equipment, Guests, RoomKind, RoomWish
from optimizer.catalogue import PREPARED, Item, SizedChoice, SizedRoom, demo_price_book
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sizing.sized_rooms import SIZERS, sized_room, sized_rooms

KINDS = get_args(RoomKind)
LEAST_AREA_SQFT = 40
EXAMPLE_EQUIPMENT = (
    Equipment("grill", 3.0),
    Equipment("preparation", 3.0),
    Equipment("sink"),
    Equipment("refrigerator", 2.0),
    Equipment("trash drawer", 1.5),
)
WISHES = (
    *(RoomWish("room", "gathering", seats=seats) for seats in (1, 2, 4, 5, 6, 8, 10, 11, 16, 22, 30)),
    *(RoomWish("room", "kitchen", equipment=EXAMPLE_EQUIPMENT, bar_seats=seats) for seats in (0, 2, 4, 7)),
    RoomWish("room", "kitchen", equipment=(Equipment("grill"), Equipment("pizza oven"))),
    *(RoomWish("room", "fire", seats=seats, fuel=fuel) for seats in (2, 4, 8, 14) for fuel in ("gas", "wood")),
    *(RoomWish("room", "nook", seats=seats) for seats in (1, 2, 3, 4, 6)),
    *(RoomWish("room", "reserve", futures=(name,)) for name in ("hot tub", "swim spa", "plunge pool", "pool")),
    *(RoomWish("room", kind) for kind in KINDS if kind != "reserve"),
)


def shape(item: Item) -> Polygon:
    """Outline of an item in the room's axes."""
    if item.shape == "circle":
        return Point(item.x_ft + item.width_ft / 2, item.y_ft + item.depth_ft / 2).buffer(item.width_ft / 2)
    flat = box(item.x_ft, item.y_ft, item.x_ft + item.width_ft, item.y_ft + item.depth_ft)
    return rotate(flat, item.turn_deg, origin="centroid")


def assert_furniture_fits(choice: SizedChoice) -> None:
    """Every item lies in the room, no two overlap, and the seats are those that are drawn."""
    room = box(0, 0, choice.width_ft, choice.depth_ft).buffer(0.005)
    shapes = [(item.role, shape(item)) for item in choice.furniture]
    assert not [role for role, outline in shapes if not room.covers(outline)]
    assert not [(a, b) for (a, one), (b, other) in combinations(shapes, 2) if one.intersection(other).area > 0.001]
    assert sum(item.seats for item in choice.furniture) == choice.seats


def assert_can_be_built(room: SizedRoom) -> None:
    """Every choice keeps its kind's proportion and 40 sq ft, its furniture fits, and all it needs has a price."""
    book = demo_price_book()
    for choice in room.choices:
        short, long = sorted((choice.width_ft, choice.depth_ft))
        assert long / short <= room.rules.longest_ratio + 1e-6
        assert short * long >= LEAST_AREA_SQFT
        assert_furniture_fits(choice)
        assert all(book.of(quantity.item) and quantity.amount > 0 for quantity in choice.quantities)


def test_every_kind_has_a_sizer() -> None:
    """The catalogue can size every kind that a brief may name."""
    assert set(SIZERS) == set(KINDS)


@pytest.mark.parametrize("wish", WISHES, ids=str)
def test_rooms_by_use(wish: RoomWish) -> None:
    """A wish by use gives three sizes with 0.85, 0.93 and 1 of its worth, none smaller than the one before; a kitchen
    has its pad and stubs with 0.15 and a starter with 0.6 before them, and of sizes that come out the same there is one.
    """
    room = sized_room(wish)
    worths = {PREPARED: 0.75, "starter": 3.0, "modest": 4.25, "comfortable": 4.65, "generous": 5.0, "one size": 5.0}
    labels = [choice.label for choice in room.choices]
    assert [choice.worth for choice in room.choices] == pytest.approx([worths[label] for label in labels])
    assert labels == [label for label in worths if label in labels]
    assert (PREPARED in labels) == (wish.kind == "kitchen")
    assert ("starter" in labels) == (wish.kind == "kitchen" and (wish.bar_seats > 0 or len(wish.equipment) != 2))
    assert ("one size" in labels) == (wish.kind == "reserve") == (len(labels) == 1)
    areas = [choice.width_ft * choice.depth_ft for choice in room.sizes]
    assert areas == sorted(areas)


@pytest.mark.parametrize("wish", WISHES, ids=str)
def test_rooms_by_use_can_be_built(wish: RoomWish) -> None:
    """Every size by use keeps its kind's proportion and 40 sq ft, its furniture fits, and everything has a price."""
    assert_can_be_built(sized_room(wish))


@settings(max_examples=100, deadline=None)
@given(
    equipment=st.lists(
        st.builds(Equipment, st.sampled_from(list(data("equipment.yaml"))), st.floats(0.5, 9)), max_size=12
    ),
    bar_seats=st.integers(0, 12),
)
def test_any_kitchen_can_be_built(equipment: list[Equipment], bar_seats: int) -> None:
    """Whatever a kitchen is to hold, hot or cold, narrow or wide, it keeps its proportion; its bar seats up to eight."""
    room = sized_room(RoomWish("room", "kitchen", equipment=tuple(equipment), bar_seats=bar_seats))
    assert_can_be_built(room)
    assert {choice.seats for choice in room.sizes if choice.label != "starter"} == {min(bar_seats, 8)}


@pytest.mark.parametrize("wish", [wish for wish in WISHES if wish.seats or wish.bar_seats], ids=str)
def test_rooms_by_use_seat_all_that_are_asked_for(wish: RoomWish) -> None:
    """Sized by use, every level draws a seat for everybody."""
    seats = {choice.seats for choice in sized_room(wish).sizes if choice.label != "starter"}
    assert seats == {wish.seats or wish.bar_seats}


@settings(max_examples=150, deadline=None)
@given(
    kind=st.sampled_from(KINDS),
    width=st.floats(4, 40),
    depth=st.floats(4, 40),
    seats=st.integers(0, 30),
)
def test_given_sizes_promise_only_what_is_drawn(kind: RoomKind, width: float, depth: float, seats: int) -> None:
    """Whatever size a brief gives, the furniture fits it, and no seat is promised that is not drawn."""
    room = sized_room(RoomWish("room", kind, choices=(Choice("given", width, depth, seats, 1.0),)))
    (choice,) = room.choices
    assert (choice.width_ft, choice.depth_ft) == (width, depth)
    assert choice.seats <= seats
    assert_furniture_fits(choice)


def test_choices_come_by_worth() -> None:
    """Choices are ordered by worth, whatever their order in the brief."""
    choices = (Choice("large", 16, 13, 8, 9.0), Choice("small", 14, 12, 6, 6.0))
    room = sized_room(RoomWish("table", "gathering", choices=choices))
    assert [choice.label for choice in room.choices] == ["small", "large"]


def test_rooms_keep_the_order_and_the_facts_of_the_brief() -> None:
    """Names, phases, fuel and what is required are taken over, in the brief's order."""
    wishes = (
        RoomWish("later", "reserve", phase=2, futures=("pool",)),
        RoomWish("fire", "fire", required=True, fuel="wood"),
    )
    later, fire = sized_rooms(Brief(Guests(4, 12), wishes))
    assert (later.name, later.phase, later.required) == ("later", 2, False)
    assert (fire.name, fire.fuel, fire.required) == ("fire", "wood", True)
