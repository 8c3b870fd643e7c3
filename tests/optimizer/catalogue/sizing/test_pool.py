"""Pools: water in its deck, what stands on it, and what it is made of."""

import pytest

from optimizer.brief import Choice, RoomWish
from optimizer.catalogue import SizedChoice, demo_price_book, pool_figure
from optimizer.catalogue.sizing.sized_rooms import sized_room

WISH = RoomWish("pool", "pool", water_ft=(14, 28), deck_ft=4)


def decks(choice: SizedChoice) -> tuple[float, float, float, float]:
    """Deck at the left, the back, the right and the front [ft]."""
    assert choice.water
    left, low, right, top = choice.water
    return (left, low, choice.width_ft - right, choice.depth_ft - top)


@pytest.mark.parametrize("sides", [(14.0, 28.0), (28.0, 14.0)])
def test_the_wished_water_has_its_deck_and_a_wide_side(sides: tuple[float, float]) -> None:
    """Whichever side is named first, 28 ft lie along the front, with 4 ft round it and 8, 9 or 10 ft in front."""
    room = sized_room(RoomWish("pool", "pool", water_ft=sides, deck_ft=4))
    assert [decks(choice) for choice in room.choices] == [(4, 4, 4, 8), (4, 4, 4, 9), (4, 4, 4, 10)]
    assert all(choice.water and choice.water[2] - choice.water[0] == 28 for choice in room.choices)


def test_without_wished_water_each_level_has_its_own() -> None:
    """Three usual sizes of water, in the decks of their levels."""
    room = sized_room(RoomWish("pool", "pool"))
    found = [(c.water[2] - c.water[0], c.water[3] - c.water[1]) for c in room.choices if c.water]
    assert found == [tuple(sides) for sides in pool_figure("water")]
    assert [decks(choice)[3] for choice in room.choices] == [8, 9, 10]


def test_a_wider_deck_is_kept_all_round() -> None:
    """A deck of 12 ft is 12 ft wide in front too."""
    (choice, *_) = sized_room(RoomWish("pool", "pool", water_ft=(14, 28), deck_ft=12)).choices
    assert decks(choice) == (12, 12, 12, 12)


def test_a_given_size_puts_what_is_spare_in_front() -> None:
    """22 x 36 ft hold the water with 4 ft on every side; 30 ft of depth leave 12 in front."""
    choices = (Choice("tight", 36, 22, 2, 5), Choice("deep", 36, 30, 2, 6), Choice("turned", 22, 36, 0, 7))
    tight, deep, turned = sized_room(RoomWish("pool", "pool", choices=choices, water_ft=(14, 28))).choices
    assert decks(tight) == (4, 4, 4, 4)
    assert decks(deep) == (4, 4, 4, 12)
    assert turned.water == (4, 4, 18, 32)


@pytest.mark.parametrize(("width", "depth"), [(14, 14), (15, 15), (14, 20), (30, 15)])
def test_a_tight_size_keeps_4_ft_of_deck(width: float, depth: float) -> None:
    """Less would be refused wherever it stands."""
    (choice,) = sized_room(RoomWish("pool", "pool", choices=(Choice("tight", width, depth, 0, 5),))).choices
    assert min(decks(choice)) >= 4


def test_choices_may_differ_by_their_water() -> None:
    """A choice with water alone is sized by it."""
    choices = (
        Choice("small", None, None, 2, 5, water_ft=(10, 20)),
        Choice("large", None, None, 4, 9, water_ft=(16, 32)),
    )
    small, large = sized_room(RoomWish("pool", "pool", choices=choices)).choices
    assert (small.width_ft, small.depth_ft, small.seats) == (28, 23, 2)
    assert (large.width_ft, large.depth_ft, large.seats) == (40, 29, 4)


def test_loungers_are_counted_and_leave_a_walk_by_the_water() -> None:
    """Four loungers on the front deck, 3 ft and more from the water, with 4 ft free in the middle to step in."""
    for choice in sized_room(WISH).choices:
        loungers = [item for item in choice.furniture if item.role == "lounger"]
        assert choice.seats == len(loungers) == 4
        assert choice.water
        assert min(item.y_ft for item in loungers) >= choice.water[3] + 3
        middle = choice.width_ft / 2
        assert not [i for i in loungers if i.x_ft < middle + 2 and i.x_ft + i.width_ft > middle - 2]


def test_steps_and_bench_lie_in_the_water() -> None:
    """Every pool has steps, the larger levels a bench too; coping runs along all four edges."""
    roles = [{item.role for item in choice.furniture} for choice in sized_room(WISH).choices]
    assert ["pool bench" in found for found in roles] == [False, True, True]
    assert all({"water", "pool steps", "coping", "lounger"} <= found for found in roles)
    assert all(sum(i.role == "coping" for i in choice.furniture) == 4 for choice in sized_room(WISH).choices)


def test_deck_is_paved_and_water_is_not() -> None:
    """Shell by the water, paving by what is left of the room, plain at the modest level."""
    for choice, paving in zip(sized_room(WISH).choices, ("plain paving", "unit paving", "unit paving"), strict=True):
        amounts = {quantity.item: quantity.amount for quantity in choice.quantities}
        assert amounts["pool shell"] == 14 * 28
        assert amounts[paving] == choice.width_ft * choice.depth_ft - 14 * 28


def test_a_concrete_pool_of_14_by_28_costs_what_layout_rules_say() -> None:
    """75,000 to 110,000 with its equipment; the orders of money are invented, at the end of the layout rules."""
    book = demo_price_book()
    shell, equipment = book.of("pool shell"), book.of("pool equipment")
    assert [float(14 * 28 * getattr(shell, end) + getattr(equipment, end)) for end in ("low", "high")] == pytest.approx(
        [75_000, 110_000], rel=0.001
    )


def test_no_roof_is_bought_over_a_pool() -> None:
    """Shade wished for beside it is another room's."""
    from optimizer.brief import Brief, Guests, SunWish
    from optimizer.catalogue import sized_rooms

    wish = RoomWish("pool", "pool", sun=SunWish("shade", 12, 14, (7,)))
    (room,) = sized_rooms(Brief(Guests(4, 12), (wish,)))
    assert not [choice for choice in room.choices if choice.cover]
