"""Kitchens: an L of counter with its bar, stools and aisle."""

from itertools import pairwise
from math import ceil

import pytest

from optimizer.brief import Choice, Equipment, RoomWish
from optimizer.catalogue import SizedChoice
from optimizer.catalogue.sizing.sized_rooms import sized_room

WISH = RoomWish(
    "kitchen",
    "kitchen",
    equipment=(
        Equipment("grill", 3.0),
        Equipment("preparation", 3.0),
        Equipment("sink"),
        Equipment("refrigerator", 2.0),
        Equipment("trash drawer", 1.5),
    ),
    bar_seats=4,
)


def items(choice: SizedChoice, role: str) -> list[tuple[float, float, float, float]]:
    """Left, back, right and front of every item of a role."""
    return [(i.x_ft, i.y_ft, i.x_ft + i.width_ft, i.y_ft + i.depth_ft) for i in choice.furniture if i.role == role]


def at_level(wish: RoomWish, label: str) -> SizedChoice:
    """The choice of a wish that is called so."""
    choice = sized_room(wish).choice(label)
    assert choice is not None
    return choice


@pytest.fixture(params=["modest", "comfortable", "generous"])
def choice(request: pytest.FixtureRequest) -> SizedChoice:
    """The example's kitchen at each level."""
    return at_level(WISH, request.param)


def test_size_is_about_15_by_13(choice: SizedChoice) -> None:
    """The example's equipment with four stools is an L in about 15 x 13 ft (common practice, no source)."""
    assert 13 <= choice.width_ft <= 17
    assert 11 <= choice.depth_ft <= 15


def test_people_can_walk_past_the_stools(choice: SizedChoice) -> None:
    """From the bar's edge to the room's front there are 44 in (NKBA Guideline 8)."""
    ((_, _, _, edge),) = items(choice, "ledge")
    assert choice.depth_ft - edge >= 44 / 12 - 1e-6


def test_stools_have_their_width(choice: SizedChoice) -> None:
    """Each of the four stools has at least 24 in of bar (NKBA Guideline 9)."""
    middles = [(left + right) / 2 for left, _, right, _ in items(choice, "stool")]
    assert len(middles) == 4
    assert min(b - a for a, b in pairwise(middles)) >= 2.0 - 1e-6


def test_the_cook_has_an_aisle(choice: SizedChoice) -> None:
    """Behind the bar's counter there are at least 42 in (NKBA Guideline 6), open to the cook's right."""
    counter_back = min(back for _, back, _, _ in items(choice, "sink"))
    assert counter_back >= 42 / 12 - 1e-6
    assert choice.width_ft - max(right for _, _, right, _ in items(choice, "ledge")) >= 3.0 - 1e-6


def test_counter_is_counted_with_its_equipment() -> None:
    """The modest L: 24 in corner, 8.5 ft along the bar, 4 ft on the side leg, so 14.5 ft of counter."""
    amounts = {quantity.item: quantity.amount for quantity in at_level(WISH, "modest").quantities}
    assert amounts["kitchen counter, plain"] == pytest.approx(14.5)


def test_supplies_follow_the_equipment() -> None:
    """A sink brings water, a grill gas; a kitchen without a sink has no water."""
    with_sink = {quantity.item for quantity in at_level(WISH, "modest").quantities}
    dry = {q.item for q in sized_room(RoomWish("k", "kitchen", equipment=(Equipment("grill"),))).choices[0].quantities}
    assert {"gas branch", "electric branch", "water branch"} <= with_sink
    assert "water branch" not in dry


def test_the_front_is_the_bar() -> None:
    """The bar is on the front; the side leg stands on the left; the other sides are open."""
    sides = dict(at_level(WISH, "modest").sides)
    assert sides == {"front": "bar", "left": "counter", "back": "open", "right": "open"}


def test_many_hot_pieces_widen_the_room() -> None:
    """Four hot pieces and no stools make a side leg of 14.5 ft; the room is widened to stay within 2.2 to 1."""
    hot = tuple(Equipment(name) for name in ("grill", "griddle", "pizza oven", "smoker"))
    modest = at_level(RoomWish("k", "kitchen", equipment=hot), "modest")
    leg = 1.0 + 3.0 + 3.0 + 3.0 + 2.5
    assert modest.depth_ft == ceil(leg + 2.0 + 3.0)
    assert modest.width_ft == ceil(modest.depth_ft / 2.2)


@pytest.mark.parametrize(("width_ft", "seats"), [(13.6, 4), (13.4, 0)])
def test_a_given_size_need_not_be_whole_feet(width_ft: float, seats: int) -> None:
    """10.5 ft of bar and a way out of 3 ft need 13.5 ft: 13.6 ft hold all four stools, 13.4 ft are too narrow."""
    given = (Choice("given", width_ft, 10.7, 4, 2.0),)
    (choice,) = sized_room(RoomWish("k", "kitchen", equipment=WISH.equipment, choices=given)).choices
    assert choice.seats == seats


def test_a_size_too_small_loses_stools_first_and_then_the_l() -> None:
    """A narrow kitchen seats nobody at the bar, and the smallest is one run of counter."""
    sizes = (Choice("narrow", 14, 9, 4, 2.0), Choice("tiny", 9, 5, 4, 1.0))
    tiny, narrow = sized_room(RoomWish("k", "kitchen", equipment=WISH.equipment, choices=sizes)).choices
    assert narrow.seats == 0
    assert len(items(narrow, "grill")) == 1
    assert [item.role for item in tiny.furniture] == ["counter"]


def test_a_starter_is_a_grill_with_a_few_feet_of_counter() -> None:
    """The grill with its landing, and 6 to 8 ft of counter beside it, without stools; no starter for what is no more."""
    starter = at_level(WISH, "starter")
    (grill,) = [item for item in starter.furniture if item.role == "grill"]
    counter = sum(max(item.width_ft, item.depth_ft) for item in starter.furniture if item.role != "grill")
    assert 6 <= counter <= 8
    assert (grill.depth_ft, starter.seats) == (3.0, 0)
    assert starter.width_ft * starter.depth_ft < at_level(WISH, "modest").width_ft * at_level(WISH, "modest").depth_ft
    less = RoomWish("k", "kitchen", equipment=(Equipment("grill"), Equipment("preparation")))
    assert sized_room(less).choice("starter") is None


def test_equipment_by_choice_is_sized_by_the_catalogue() -> None:
    """Each choice holds its own equipment and stools, in the size that it needs; a size that is given stays."""
    small = Choice("grill counter", None, None, 0, 6.0, equipment=WISH.equipment[:2])
    full = Choice("full", None, None, 0, 9.0, equipment=WISH.equipment, bar_seats=4)
    given = Choice("given", 16.0, 14.0, 0, 9.5, equipment=WISH.equipment, bar_seats=4)
    choices = sized_room(RoomWish("k", "kitchen", choices=(small, full, given))).choices
    usual = at_level(WISH, "comfortable")
    assert [choice.seats for choice in choices] == [0, 4, 4]
    assert [len(items(choice, "sink")) for choice in choices] == [0, 1, 1]
    assert (choices[1].width_ft, choices[1].depth_ft) == (usual.width_ft, usual.depth_ft)
    assert (choices[2].width_ft, choices[2].depth_ft) == (16.0, 14.0)
    assert choices[0].width_ft < choices[1].width_ft
