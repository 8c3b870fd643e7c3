"""Hours of sun that rooms get, and what they miss of their wish."""

from dataclasses import replace
from typing import Literal

import pytest

from optimizer.appraisal import sun_of
from optimizer.brief import RoomWish, SunWish
from optimizer.catalogue import sized_room
from optimizer.derived import Derived
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import Scenario

WINDOW_H = 2.0
OPEN = Placement("nook", "modest", 24, 30, 8, 7, "+y")


def measured(
    scenario: Scenario, want: Literal["sun", "shade"], *placements: Placement, from_h: float = 11.0
) -> tuple[tuple[str, float, float], ...]:
    """Sun of a nook with such a wish in June, two hours long."""
    wish = RoomWish("nook", "nook", sun=SunWish(want, from_h, from_h + WINDOW_H, (6,)))
    return sun_of(
        Derived(scenario, placed_of((sized_room(wish), sized_room(RoomWish("green", "lawn"))), Layout(placements)))
    )


def test_open_ground_at_noon_has_all_the_sun(scenario: Scenario) -> None:
    """In the open nothing of a wish for sun is missed, and all of a wish for shade."""
    assert measured(scenario, "sun", OPEN) == (("nook", WINDOW_H, 0.0),)
    assert measured(scenario, "shade", OPEN) == (("nook", WINDOW_H, WINDOW_H),)


def test_before_sunrise_there_is_none(scenario: Scenario) -> None:
    """From 2 to 4 in the morning a wish for sun misses the whole window, a wish for shade nothing."""
    assert measured(scenario, "sun", OPEN, from_h=2.0) == (("nook", 0.0, WINDOW_H),)
    assert measured(scenario, "shade", OPEN, from_h=2.0) == (("nook", 0.0, 0.0),)


def test_a_roof_takes_its_share(scenario: Scenario) -> None:
    """Under a low roof that holds back half of the sun, half of the window is got and half is missed."""
    roof = replace(scenario.site.structures[0], height_ft=0.01)
    site = replace(scenario.site, structures=(roof,))
    under = replace(OPEN, x_ft=44.0, y_ft=22.0)
    ((_, hours, missed),) = measured(replace(scenario, site=site), "sun", under)
    assert hours == pytest.approx(WINDOW_H / 2)
    assert missed == pytest.approx(WINDOW_H / 2)


def test_rooms_left_out_or_without_a_wish_are_passed_over(scenario: Scenario) -> None:
    """Nothing is measured where nothing stands, nor where nothing is wished."""
    assert measured(scenario, "sun") == ()
    assert measured(scenario, "sun", Placement("green", "modest", 24, 20, 16, 12, "+y")) == ()
