"""Tables with their chairs."""

import pytest

from optimizer.catalogue.sizing.table import table_size_ft, table_with_chairs


@pytest.mark.parametrize("diners", range(1, 11))
def test_every_diner_has_a_chair(diners: int) -> None:
    """There is one table and one chair for each diner."""
    items = table_with_chairs(diners)
    assert [item.role for item in items].count("table") == 1
    assert [item.role for item in items].count("chair") == diners


def test_chairs_stand_at_the_settings() -> None:
    """Along the table for six, the two chairs of a long side stand 25 in apart (Time-Saver Standards)."""
    row = [item for item in table_with_chairs(6) if item.role == "chair" and item.y_ft < 0]
    assert row[1].x_ft - row[0].x_ft == pytest.approx(25 / 12)


def test_an_odd_diner_sits_at_the_next_table() -> None:
    """Five sit at the table for six."""
    assert table_size_ft(5) == table_size_ft(6)
