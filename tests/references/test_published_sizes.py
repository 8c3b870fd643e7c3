"""Sizes of people and furniture against published figures, the source beside each value."""

import pytest

from optimizer.brief import Choice, RoomWish
from optimizer.catalogue import clearance_ft, least_table_length_ft, sized_room, table_length_ft
from optimizer.catalogue.sizing.table import table_size_ft

NKBA = {
    "behind_seated": 32,  # NKBA Kitchen Planning Guideline 8: no traffic behind the diner
    "past_seated_edge": 36,  # the same: to edge past
    "walk_past_seated": 44,  # the same: to walk past
    "stool": 24,  # NKBA Guideline 9: width per diner or stool
    "bar_overhang": 12,  # NKBA Guideline 9: knee space at 42 in
    "aisle_one_cook": 42,  # NKBA Guideline 6
    "aisle_two_cooks": 48,  # NKBA Guideline 6
    "walkway": 36,  # NKBA Guideline 7
    "counter_depth": 24,  # NKBA: continuous preparation counter 36 x 24
}


@pytest.mark.parametrize(("name", "inches"), NKBA.items())
def test_kitchen_planning_guidelines(name: str, inches: float) -> None:
    """Clearances at counters and tables are those of the NKBA Kitchen Planning Guidelines."""
    assert clearance_ft(name) * 12 == pytest.approx(inches)


def test_four_stools_take_96_in_of_bar() -> None:
    """Four stools of 24 in are 96 in of counter (NKBA Guideline 9)."""
    assert 4 * clearance_ft("stool") * 12 == pytest.approx(96)


@pytest.mark.parametrize(
    ("diners", "least_in", "recommended_in"), [(4, 54, 60), (6, 79, 84), (8, 104, 109), (10, 129, 132)]
)
def test_table_lengths(diners: int, least_in: float, recommended_in: float) -> None:
    """Rectangular tables, one diner at each end: Time-Saver Standards for Building Types, passage behind chairs."""
    assert least_table_length_ft(diners) * 12 == pytest.approx(least_in)
    assert table_length_ft(diners) * 12 == pytest.approx(recommended_in)


def test_table_width_is_satisfactory() -> None:
    """36 in is the least, 36 to 44 in is satisfactory: Time-Saver Standards for Building Types."""
    assert 36 <= table_size_ft(6)[1] * 12 <= 44


def test_bench_for_four_is_10_ft() -> None:
    """2.5 ft a person, 1.5 ft deep: functional size requirements, landscape designers' wiki (CC BY-SA)."""
    assert 4 * clearance_ft("bench_seat") == pytest.approx(10)
    assert clearance_ft("bench_depth") == pytest.approx(1.5)


def test_two_chairs_fit_5_by_5_ft() -> None:
    """Two chairs take 5 x 5 ft, 25 sq ft: functional size requirements, landscape designers' wiki (CC BY-SA)."""
    assert 2 * clearance_ft("lounge_chair") <= 5


def test_two_chairs_and_a_bench_fit_10_by_10_ft() -> None:
    """Two chairs and a bench take 10 x 10 ft: functional size requirements, landscape designers' wiki (CC BY-SA)."""
    given = (Choice("given", 10, 10, 4, 1.0),)
    (choice,) = sized_room(RoomWish("nook", "nook", choices=given)).choices
    assert sorted(item.role for item in choice.furniture if item.seats) == ["bench", "lounge chair", "lounge chair"]


def test_a_table_of_8_ft_with_both_ends_used_takes_14_ft() -> None:
    """8 ft and 3 ft behind the chair at either end: designingeden.com, planning for outdoor entertaining."""
    assert 8 + 2 * clearance_ft("past_seated_edge") == pytest.approx(14)


def test_fire_pit_with_its_surround_is_16_to_17_ft() -> None:
    """4 to 5 ft and 6 ft on all sides: a home magazine's guide to a patio around a fire pit."""
    pits = (clearance_ft("fire_pit_least"), clearance_ft("fire_pit_largest"))
    assert [pit + 2 * clearance_ft("fire_surround") for pit in pits] == pytest.approx([16, 17])
