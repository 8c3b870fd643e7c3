"""Figures of the cook's work against published ones, the source beside each; seen or memory as the check values say."""

from math import ceil

import pytest

from optimizer.appraisal import work_zone
from optimizer.appraisal.work_zone import ROUND_FT, SIDE_FT
from optimizer.brief import Equipment, RoomWish
from optimizer.catalogue import clearance_ft, most_stools, sized_room
from optimizer.concepts.cook_cautions import COOKING_CLEAR_FT

NAMES = ("grill", "preparation", "sink", "refrigerator")
# NKBA Kitchen Planning Guidelines: 17 (check values, seen at second hand), 16 and 12 (LSU AgCenter, seen), 11 (24 and
# 18 seen in LSU AgCenter's guidelines).
LANDINGS_IN = {"grill": (12, 15), "sink": (18, 24), "refrigerator": (0, 15), "preparation": (0, 36)}


def test_work_triangle() -> None:
    """26 ft in all, 4 to 9 ft a side; NKBA Guideline 3 as quoted in a home magazine's kitchen planning guidelines, seen."""
    assert ROUND_FT == 26
    assert SIDE_FT == (4, 9)


@pytest.mark.parametrize(("piece", "inches"), LANDINGS_IN.items())
def test_landings(piece: str, inches: tuple[float, float]) -> None:
    """What is asked beside each piece is what is published."""
    kitchen = sized_room(RoomWish("cooker", "kitchen", equipment=tuple(map(Equipment, NAMES))))
    (asked,) = {landing.asked_in for landing in work_zone(kitchen.choices[-1]).landings if landing.at == piece}
    assert asked == inches


def test_eight_stools_fill_the_longest_run() -> None:
    """24 in each (NKBA Guideline 9, seen at second hand) in 16 ft (layout rule 18, common practice)."""
    assert most_stools() * 24 == 16 * 12


def test_room_before_a_full_bar() -> None:
    """Four stools take 96 in of a bar 12 in deep, with 44 in from its edge to the next obstruction: check value T5."""
    kitchen = sized_room(RoomWish("cooker", "kitchen", equipment=(Equipment("preparation"),), bar_seats=4)).choice(
        "modest"
    )
    (bar,) = (item for item in kitchen.furniture if item.role == "ledge")
    assert (bar.width_ft * 12, bar.depth_ft * 12) == pytest.approx((96, 12))
    need_ft = clearance_ft("aisle_one_cook") + 2 + 1 + 44 / 12
    assert kitchen.depth_ft == ceil(need_ft)


def test_open_flames_keep_10_ft_from_what_burns() -> None:
    """IFC 308.1.4: 10 ft, exempt at one- and two-family dwellings; a city's fire questions, seen, check value T10."""
    assert COOKING_CLEAR_FT == 10
