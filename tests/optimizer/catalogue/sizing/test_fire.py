"""Fire features."""

from math import hypot, pi

import pytest

from optimizer.brief import Choice, RoomWish
from optimizer.catalogue import SizedChoice
from optimizer.catalogue.sizing.sized_rooms import sized_room


def choices(seats: int, fuel: str = "gas") -> tuple[SizedChoice, ...]:
    """The three levels of a fire for so many."""
    return sized_room(RoomWish("f", "fire", seats=seats, fuel=fuel)).choices


def test_a_fire_for_eight_is_16_to_18_ft() -> None:
    """A pit of 4 to 5 ft with 6 ft all round makes a square of 16 to 17 ft, 18 with a seat wall."""
    assert [(choice.width_ft, choice.depth_ft) for choice in choices(8)] == [(16, 16), (17, 17), (18, 18)]


@pytest.mark.parametrize(("fuel", "least_ft"), [("gas", 2.0), ("wood", 3.0)])
def test_seats_keep_clear_of_the_flame(fuel: str, least_ft: float) -> None:
    """Seat fronts are at least 24 in from the edge of a gas pit, 36 in of a wood pit (common practice)."""
    for choice in choices(8, fuel):
        pit = next(item for item in choice.furniture if item.role == "fire pit")
        seats = [item for item in choice.furniture if item.role == "fire seat"]
        middle = (choice.width_ft / 2, choice.depth_ft / 2)
        away = [hypot(s.x_ft + s.width_ft / 2 - middle[0], s.y_ft + s.depth_ft / 2 - middle[1]) for s in seats]
        assert min(away) - seats[0].depth_ft / 2 - pit.width_ft / 2 >= least_ft - 1e-6


def test_many_seats_make_a_wider_ring() -> None:
    """Fourteen people at 36 in each need a larger circle than eight."""
    assert choices(14)[0].width_ft > choices(8)[0].width_ft


def test_fuel_decides_the_feature_and_its_supplies() -> None:
    """Gas needs a gas branch, wood does not."""
    gas = {quantity.item for quantity in choices(6, "gas")[0].quantities}
    wood = {quantity.item for quantity in choices(6, "wood")[0].quantities}
    assert {"gas fire feature", "gas branch"} <= gas
    assert "wood fire feature" in wood
    assert "gas branch" not in wood


def test_a_square_too_small_seats_fewer() -> None:
    """In 11 x 11 ft no eight people sit round a fire."""
    room = sized_room(RoomWish("f", "fire", choices=(Choice("c", 11, 11, 8, 1.0),)))
    assert room.choices[0].seats < 8


def rings(shape: str) -> tuple[SizedChoice, ...]:
    """The three levels of a fire for eight."""
    return sized_room(RoomWish("f", "fire", seats=8, fuel="gas", shape=shape)).choices


def test_a_circle_pays_for_its_disc_alone() -> None:
    """As large across as the square, with all seats; paving by pi / 4 of it, no seat wall, never growing."""
    for ring, square in zip(rings("circle"), rings("rectangle"), strict=True):
        assert (ring.width_ft, ring.depth_ft, ring.seats) == (square.width_ft, square.depth_ft, 8)
        (paved,) = (quantity.amount for quantity in ring.quantities if "paving" in quantity.item)
        assert paved == pytest.approx(pi / 4 * ring.width_ft**2) == pytest.approx(ring.area_sqft)
        assert {item.role for item in ring.furniture} == {"fire pit", "fire seat"}
        assert set(dict(ring.sides).values()) == {"open"}
    assert sized_room(RoomWish("f", "fire", shape="circle")).grow == 0


def test_the_ring_of_seats_lies_in_the_disc() -> None:
    """Every corner of every seat, turned as it stands, with the ground behind; 8 seats: 16 to 18 ft across."""
    for choice, behind_ft in zip(rings("circle"), (16 / 12, 0.0, 0.0), strict=True):
        half = choice.width_ft / 2
        reach = [hypot(s.x_ft + s.width_ft / 2 - half, s.y_ft + s.depth_ft / 2 - half) for s in choice.furniture[1:]]
        assert hypot(max(reach) + 1.0, 1.0) + behind_ft <= half + 1e-9
        assert 16 <= choice.width_ft <= 18
