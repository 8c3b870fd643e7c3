"""Rates of losses in money."""

from dataclasses import asdict

from optimizer.catalogue import rates


def test_rates_are_positive() -> None:
    """Every loss counts something."""
    assert min(asdict(rates()).values()) > 0


def test_money_saved_is_worth_less_than_money_well_used() -> None:
    """A unit of money kept counts less than one, or nothing would ever be built."""
    assert rates().cost < 1
