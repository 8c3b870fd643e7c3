"""Nooks."""

import pytest

from optimizer.brief import Choice, RoomWish
from optimizer.catalogue.sizing.nook import NOOK
from optimizer.catalogue.sizing.sized_rooms import sized_room


@pytest.mark.parametrize(("size", "seats"), [((8, 7), 2), ((10, 10), 4), ((10, 8), 4), ((7, 8), 2)])
def test_usual_sizes_seat_what_they_promise(size: tuple[float, float], seats: int) -> None:
    """Two chairs, or two chairs and a bench for two, fit the usual sizes (common practice, no source)."""
    room = sized_room(RoomWish("n", "nook", choices=(Choice("c", *size, seats, 1.0),)))
    assert room.choices[0].seats == seats


def test_sizes_for_two() -> None:
    """A nook for two is 8 x 7, 10 x 8 or 12 x 10 ft (common practice, no source)."""
    sizes = NOOK.sizes(RoomWish("n", "nook", seats=2))
    assert [(size.width_ft, size.depth_ft) for size in sizes] == [(8, 7), (10, 8), (12, 10)]


def test_bench_faces_the_chairs() -> None:
    """The bench stands at the back, the chairs in front of it with room for knees."""
    room = sized_room(RoomWish("n", "nook", seats=4))
    items = {item.role: item for item in room.choices[0].furniture}
    bench, chair = items["bench"], items["lounge chair"]
    assert chair.y_ft - (bench.y_ft + bench.depth_ft) == pytest.approx(2.0)
