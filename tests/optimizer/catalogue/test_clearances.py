"""Clearances by name."""

import pytest

from optimizer.catalogue import clearance_ft
from optimizer.catalogue.data_files import data


def test_inches_become_feet() -> None:
    """42 in is 3.5 ft."""
    assert clearance_ft("aisle_one_cook") == 3.5


def test_a_name_that_is_not_there() -> None:
    """An unknown name is a fault, not a zero."""
    with pytest.raises(KeyError):
        clearance_ft("elbow room")


def test_every_figure_names_its_source() -> None:
    """Every clearance has a meaning and a source, be it that there is none."""
    assert not [name for name, entry in data("clearances.yaml").items() if not (entry["source"] and entry["meaning"])]
