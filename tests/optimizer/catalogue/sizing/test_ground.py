"""Arrivals, lawns, beds, storage and play."""

from optimizer.brief import RoomWish
from optimizer.catalogue.sizing.ground import ARRIVAL, BED, LAWN, PLAY, STORAGE
from optimizer.catalogue.sizing.sized_rooms import sized_room


def test_arrival_is_8_to_12_ft_across() -> None:
    """Where ways join, 8 to 12 ft across (common practice, no source)."""
    sizes = ARRIVAL.sizes(RoomWish("a", "arrival"))
    assert [(size.width_ft, size.depth_ft) for size in sizes] == [(8, 8), (10, 10), (12, 12)]


def test_a_lawn_is_at_least_10_ft_on_its_least_side() -> None:
    """A lawn can be played and mown on: 10 ft at its least side (common practice, no source)."""
    assert min(min(size.width_ft, size.depth_ft) for size in LAWN.sizes(RoomWish("l", "lawn"))) >= 10


def test_ground_is_counted_by_area() -> None:
    """Lawn, planting, play surface and sheds are counted by their area."""
    items = {"lawn": "lawn", "bed": "planting bed", "play": "play surface", "storage": "storage shed"}
    for sizer, kind in ((LAWN, "lawn"), (BED, "bed"), (PLAY, "play"), (STORAGE, "storage")):
        wish = RoomWish("r", kind)
        for size, choice in zip(sizer.sizes(wish), sized_room(wish).choices, strict=True):
            amounts = {quantity.item: quantity.amount for quantity in choice.quantities}
            assert amounts[items[kind]] == size.area_sqft
