"""The catalogue's data files."""

import pytest

from optimizer.catalogue.data_files import data, data_text


@pytest.mark.parametrize("name", ["kinds.yaml", "tables.yaml", "equipment.yaml", "futures.yaml", "sizes.yaml"])
def test_files_of_figures_say_where_they_come_from(name: str) -> None:
    """Each file of figures names a source or says that there is none."""
    assert "source" in data_text(name).lower()
    assert data(name)


@pytest.mark.parametrize("name", ["rates.yaml", "price_book.yaml", "price_book_aud.yaml"])
def test_files_of_money_say_that_they_are_invented(name: str) -> None:
    """Rates and prices are invented, and their files say so."""
    assert "invented" in data_text(name).lower()
