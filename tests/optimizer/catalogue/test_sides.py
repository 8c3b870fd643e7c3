"""Kinds of sides: what stands along an edge of a room."""

import pytest

from optimizer.brief import RoomWish
from optimizer.catalogue import Item, demo_price_book, sized_room
from optimizer.catalogue.data_files import data, data_text
from optimizer.catalogue.sides import side_kind, side_of_item, side_quantities
from optimizer.catalogue.sight import eye_height_ft

NAMES = tuple(data("sides.yaml"))


def amounts(name: str, kind, level: str, **wish) -> dict[str, float]:
    """Quantities of a level, by item; each item once."""
    choice = sized_room(RoomWish(name, kind, **wish)).choice(level)
    assert choice is not None
    items = [quantity.item for quantity in choice.quantities]
    assert len(items) == len(set(items))
    return {quantity.item: quantity.amount for quantity in choice.quantities}


@pytest.mark.parametrize("name", NAMES)
def test_each_side_can_be_paid_and_says_where_its_figures_come_from(name: str) -> None:
    """A side that has an item has a price by the same unit; every entry has a source."""
    side = side_kind(name)
    assert data("sides.yaml")[name]["source"]
    if side.item:
        assert demo_price_book().of(side.item).unit == side.by


@pytest.mark.parametrize(("name", "least_in", "most_in"), [
    ("seat wall", 18, 20), ("pier", 20, 28), ("bench", 16, 18), ("counter", 36, 36), ("bar", 42, 42),
])  # fmt: skip
def test_heights_are_those_of_the_layout_rules(name: str, least_in: float, most_in: float) -> None:
    """Edges: seat wall 18 to 20 in, pier or ledge 20 to 28, counter 36, bar 42; bench 16 to 18."""
    assert least_in <= side_kind(name).height_ft * 12 <= most_in


def test_only_a_screen_or_a_shed_hides_who_sits() -> None:
    """One sees over everything lower than a seated eye, also over a bar."""
    tall = {name for name in NAMES if side_kind(name).height_ft >= eye_height_ft("gathering")}
    assert tall == {"screen", "back"}


def test_one_steps_over_nothing_but_an_open_side() -> None:
    """Gates lie on open sides alone."""
    assert {name for name in NAMES if side_kind(name).is_crossed} == {"open"}


def test_sides_of_furniture() -> None:
    """In a kitchen the ledge is the bar and all but stools the counter; elsewhere an item goes by its name."""
    names = {
        (kind, role): (side := side_of_item(kind, Item(role, 0, 0, 1, 1))) and side.name
        for kind, role in (("kitchen", "ledge"), ("kitchen", "grill"), ("kitchen", "stool"), ("nook", "bench"))
    }
    assert list(names.values()) == ["bar", "counter", None, "bench"]
    assert side_of_item("fire", Item("fire pit", 0, 0, 4, 4)) is None


def test_sides_are_paid_by_what_is_drawn() -> None:
    """A wall with two piers is one length of wall; a bed is paid by its ground, a bench not at all."""
    items = (
        Item("pier", 0, 0, 1.5, 1.5),
        Item("seat wall", 1.5, 0, 7, 1.5),
        Item("pier", 8.5, 0, 1.5, 1.5),
        Item("bed", 0, 5, 10, 2),
        Item("bench", 0, 8, 5, 1.5),
    )
    assert {q.item: q.amount for q in side_quantities("nook", items)} == {"seat wall": 10.0, "planting bed": 20.0}


def test_a_fire_pays_for_its_wall_once() -> None:
    """Its wall is as long as the room less a step at each end, with piers or without."""
    for level, side in (("comfortable", 17), ("generous", 18)):
        assert amounts("f", "fire", level, seats=8)["seat wall"] == pytest.approx(side - 4)
    assert "seat wall" not in amounts("f", "fire", "modest", seats=8)


def test_a_bed_is_not_paved() -> None:
    """A nook's paving and its bed together are its ground."""
    found = amounts("n", "nook", "comfortable", seats=2)
    assert found["plain paving"] + found["planting bed"] == pytest.approx(10 * 8)
    assert found["planting bed"] == pytest.approx(10 * 2)


def test_files_name_their_sources() -> None:
    """Files of sides and of backs say where their figures come from."""
    assert "source" in data_text("sides.yaml")
    assert "ources" in data_text("enclosure.yaml")
