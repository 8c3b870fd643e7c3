"""What is said of heat under roofs and near buildings."""

from dataclasses import replace

import pytest

from optimizer.catalogue import Cover, Item, SizedChoice, SizedRoom
from optimizer.concepts import cautions_for
from optimizer.concepts.cook_cautions import cook_cautions
from optimizer.layout import placed_of
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized, stand


def grilling(**changes: object) -> SizedRoom:
    """A kitchen of 8 x 6 ft with a grill of 2 x 3 ft in its left back corner."""
    room = sized("cooker", "kitchen", 8, 6)
    choice: SizedChoice = replace(room.choices[0], furniture=(Item("grill", 0, 0, 2, 3),), **changes)  # type: ignore[arg-type]
    return replace(room, choices=(choice,))


def told(room: SizedRoom, x_ft: float, y_ft: float, **site: object) -> list[str]:
    """Cautions about heat with the kitchen serving to +y from so far up; the house ends at y = 12."""
    layout = plain_layout(stand("cooker", x_ft, y_ft, 8, 6))
    return list(cook_cautions(on_site(plain_yard(), **site), placed_of(plain_rooms(room), layout)))


@pytest.mark.parametrize(("y_ft", "said"), [(21.9, True), (22.1, False)])
def test_heat_within_10_ft_of_a_building(y_ft: float, said: bool) -> None:
    """IFC 308.1.4 asks 10 ft, but not of one- and two-family houses; the grill's back is the kitchen's."""
    assert [words[:20] for words in told(grilling(), 24, y_ft)] == ["Heat near a building"] * said


def test_the_figures_are_in_the_scenarios_words() -> None:
    """9 ft from the house; the window's middle (40, 12) lies 9 ft straight behind the grill."""
    (words,) = told(grilling(), 39, 21)
    assert "cooker: 9.0 ft from house and 9.0 ft from bath window; 10.0 ft from what burns" in words


def test_heat_under_a_roof() -> None:
    """Under its own cover, or under the old roof from (44, 30) to (54, 38)."""
    assert len(told(grilling(cover=Cover(9, 1.0)), 24, 30)) == 1
    assert len(told(grilling(), 43, 31)) == 1
    assert told(grilling(), 43, 31, structures=()) == []


def test_no_heat_no_caution() -> None:
    """A counter without equipment is only served at."""
    assert told(sized("cooker", "kitchen", 8, 6), 24, 14) == []


def test_a_gas_fire_alone_has_its_supplies_told() -> None:
    """Once with and without a kitchen; never for wood."""
    wood = plain_rooms(sized("fire", "fire", 8, 8, fuel="wood"))
    alone = plain_layout(without=("cooker",))
    found = [
        cautions_for(plain_yard(), placed_of(rooms, layout))
        for rooms, layout in ((plain_rooms(), plain_layout()), (plain_rooms(), alone), (wood, alone))
    ]
    assert [sum("Gas and electricity" in words for words in cautions) for cautions in found] == [1, 1, 0]
