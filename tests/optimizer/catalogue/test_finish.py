"""Materials, patterns and the palette that a yard gets."""

from decimal import Decimal
from typing import get_args

import pytest

from optimizer.brief import Finish, FinishWish, Material, Pattern
from optimizer.catalogue import PAVING_ITEMS, book_for, cuts_share, finished_book, material_facts, palette_of
from optimizer.catalogue.data_files import data, data_text


def test_the_file_knows_every_material_and_pattern_and_no_other() -> None:
    """What a scenario may say is what the file has."""
    assert set(data("finishes.yaml")["materials"]) == set(get_args(Material))
    assert set(data("finishes.yaml")["cuts"]) == set(get_args(Pattern))
    assert {p for m in get_args(Material) for p in material_facts(m).patterns} == set(get_args(Pattern))
    assert "invented" in data_text("finishes.yaml")
    assert "no source" in data_text("finishes.yaml")


def test_a_yard_that_says_nothing_pays_what_the_book_says() -> None:
    """The usual field leaves every price as it is."""
    book = book_for("USD")
    assert finished_book(book, FinishWish()) is book


@pytest.mark.parametrize("material", get_args(Material))
def test_only_paving_goes_by_the_material_of_the_field(material: Material) -> None:
    """Price, low and high of each paving item are the book's times the ratio, to the cent; all else stays."""
    book, ratio = book_for("USD"), material_facts(material).price_ratio
    finished = finished_book(book, FinishWish(field=Finish(material)))
    for before, after in zip(book.prices, finished.prices, strict=True):
        factor = ratio if before.item in PAVING_ITEMS else Decimal(1)
        assert abs(after.price - before.price * factor) <= Decimal("0.005")
        assert after.low <= after.price <= after.high
    assert {price.item for price in book.prices} >= set(PAVING_ITEMS)


def test_own_parts_win_and_the_first_color_and_pattern_are_usual() -> None:
    """A part that is named takes its usual color; the pattern is the usual one of the field."""
    palette = palette_of(FinishWish(field=Finish("natural flag"), cap=Finish("clay brick", "buff")))
    assert (palette.field.material, palette.field.color) == (
        "natural flag",
        material_facts("natural flag").colors[0][0],
    )
    assert palette.pattern == "random flag"
    assert palette.cap.words == "clay brick, buff"
    assert palette.border == palette_of(FinishWish()).border


def test_turned_and_crossed_courses_waste_twice_as_much() -> None:
    """5 % where courses run with the edges, 10 % where they do not; common practice, no source."""
    assert cuts_share("running bond") == 0.05
    assert cuts_share("running bond", turned=True) == cuts_share("herringbone") == 0.10
