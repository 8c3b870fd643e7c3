"""The pieces of a kitchen."""

import pytest

from optimizer.brief import Equipment
from optimizer.catalogue.sizing.run import known, legs_of, length_ft


def test_widths_are_the_briefs_or_the_catalogues() -> None:
    """A width in the brief counts; without one the catalogue's does: a sink 24 in."""
    legs = legs_of((Equipment("sink"), Equipment("refrigerator", 2.5)), "modest")
    assert [(piece.role, piece.width_ft) for piece in legs.bar] == [("sink", 2.0), ("refrigerator", 2.5)]


def test_a_grill_has_landings_of_24_and_12_in() -> None:
    """Beside a grill are 24 and 12 in of counter (trade articles, common practice), away from the stools."""
    legs = legs_of((Equipment("grill", 3.0),), "comfortable")
    assert [piece.width_ft for piece in legs.side] == [1.0, 3.0, 2.0]
    assert legs.bar == ()


def test_the_modest_level_lets_the_corner_be_the_wider_landing() -> None:
    """At the modest level the grill stands next to the corner's 24 in of counter."""
    legs = legs_of((Equipment("grill", 3.0),), "modest")
    assert [piece.role for piece in legs.side] == ["counter", "grill"]


def test_no_run_is_longer_than_16_ft() -> None:
    """What would make the bar's run longer than 16 ft with its corner goes to the side leg."""
    legs = legs_of(tuple(Equipment(f"thing {i}", 4.0) for i in range(5)), "modest")
    assert length_ft(legs.bar) == pytest.approx(12.0)
    assert length_ft(legs.side) == pytest.approx(8.0)


def test_pieces_of_one_size_are_not_lost() -> None:
    """Ten like pieces are ten pieces on the two legs."""
    legs = legs_of((Equipment("storage", 2.0),) * 10, "modest")
    assert len(legs.bar) + len(legs.side) == 10


def test_unknown_equipment_counts_as_any_other() -> None:
    """A name that the catalogue does not know takes a cabinet's width and the price of another appliance."""
    assert known(Equipment("waffle iron"))["item"] == "other appliance"
    assert known(Equipment(" Sink "))["item"] == "sink"
