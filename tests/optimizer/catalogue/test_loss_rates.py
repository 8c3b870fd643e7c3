"""Rates of losses in money."""

from dataclasses import asdict

from optimizer.catalogue import rates


def test_rates_are_positive() -> None:
    """Every loss counts something."""
    figures = [value if isinstance(value, tuple) else (value,) for value in asdict(rates()).values()]
    assert min(min(values) for values in figures) > 0


def test_money_saved_is_worth_less_than_money_well_used() -> None:
    """A unit of money kept counts less than one, or nothing would ever be built."""
    assert rates().cost < 1
