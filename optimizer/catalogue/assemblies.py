"""Assemblies: the price book's items in about fifteen groups, as an estimate shows them."""

from functools import cache
from typing import Final

from optimizer.catalogue.data_files import data

STEPS: Final = "stated steps"
"""Where an estimate shows what is added to the sum of all lines."""
OTHER: Final = "other work"
"""Where an estimate shows an item that no assembly names."""
_FILE: Final = "assemblies.yaml"


@cache
def assemblies() -> tuple[str, ...]:
    """All assemblies, in the order of an estimate."""
    return (*data(_FILE)["assemblies"], OTHER, STEPS)


def assembly_of(item: str) -> str:
    """Assembly that an item of the price book is part of."""
    return _by_item().get(item, OTHER)


@cache
def _by_item() -> dict[str, str]:
    return {item: name for name, items in data(_FILE)["assemblies"].items() for item in items}


@cache
def bought_by_owners() -> frozenset[str]:
    """Items that an owner often buys, such as appliances."""
    return frozenset(data(_FILE)["appliances"])
