"""Reserves for what may come later."""

import pytest

from optimizer.brief import RoomWish
from optimizer.catalogue import Quantity, book_for
from optimizer.catalogue.sizing.reserve import RESERVE
from optimizer.catalogue.sizing.sized_rooms import sized_room
from optimizer.errors import ScenarioError

NEEDS_FT = {"hot tub": (11, 11), "swim spa": (21, 12), "plunge pool": (24, 16), "pool": (36, 22)}
"""With decks and service space; common practice, no source."""


@pytest.mark.parametrize(
    "futures", [("hot tub",), ("hot tub", "swim spa"), ("hot tub", "swim spa", "plunge pool"), ("swim spa", "pool")]
)
def test_every_future_fits(futures: tuple[str, ...]) -> None:
    """It takes any one of the futures, and no size is larger than that: more ground would hold no more."""
    sizes = RESERVE.sizes(RoomWish("r", "reserve", phase=2, futures=futures))
    widest, deepest = (max(NEEDS_FT[name][axis] for name in futures) for axis in (0, 1))
    assert [(size.width_ft - widest, size.depth_ft - deepest) for size in sizes] == [(0, 0)] * 3


def test_what_keeps_the_ground_free_is_paid_for_now() -> None:
    """Which of its futures comes later depends on what fits where the ground is held: the take-off knows that."""
    room = sized_room(RoomWish("r", "reserve", phase=2, futures=("hot tub", "pool")))
    held = (Quantity("reserve kept clear", 1, phase=1), Quantity("reserve ground", 36 * 22, phase=1))
    assert [choice.quantities for choice in room.choices] == [held]


@pytest.mark.parametrize("currency", ["USD", "AUD"])
def test_the_future_that_takes_most_room_is_the_dearest(currency: str) -> None:
    """In every book a future that needs more ground costs more, so that the largest one bounds what may come."""
    by_ground = sorted(NEEDS_FT, key=lambda name: NEEDS_FT[name][0] * NEEDS_FT[name][1])
    prices = [book_for(currency).of(f"future {name}").price for name in by_ground]
    assert prices == sorted(prices)
    assert len(set(prices)) == len(prices)


def test_built_at_once_it_keeps_nothing_clear() -> None:
    """In phase 1 the future itself is built, and there is nothing to keep free."""
    room = sized_room(RoomWish("r", "reserve", futures=("hot tub",)))
    assert room.choices[0].quantities == (Quantity("future hot tub", 1),)


@pytest.mark.parametrize("futures", [("lagoon",), ()])
def test_unknown_futures_are_named(futures: tuple[str, ...]) -> None:
    """A future that the catalogue does not know, or none at all, is an error that lists what it knows."""
    with pytest.raises(ScenarioError, match="hot tub, swim spa, plunge pool, pool"):
        sized_room(RoomWish("r", "reserve", futures=futures))
