"""The keys of the budget."""

from decimal import Decimal

import pytest

from optimizer.brief import Allowances, Budget, Later
from optimizer.scenario import read_scenario
from tests.small_yard import SMALL, problems


def test_all_keys_are_read():
    """Each key reaches the budget; what is not said is as usual."""
    text = f"""{SMALL}budget:
  ceiling: 90000
  contingency: 0.1
  overhead: 0.12
  markup: 0.08
  tax: 0.0625
  later: {{years: 2.5, escalation: 0.04}}
  allowances: {{appliances: out, furniture: 8000}}
  estimate_class: 3
"""
    assert read_scenario(text, "yard.yaml").brief.budget == Budget(
        ceiling=Decimal(90000),
        contingency=Decimal("0.1"),
        overhead=Decimal("0.12"),
        markup=Decimal("0.08"),
        tax=Decimal("0.0625"),
        later=Later(Decimal("2.5"), Decimal("0.04")),
        allowances=Allowances(appliances=False, furniture=Decimal(8000)),
        estimate_class=3,
    )
    assert read_scenario(SMALL, "yard.yaml").brief.budget == Budget()


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("overhead: 12", "a share from 0 to 1"),
        ("tax: -0.1", "a share from 0 to 1"),
        ("later: {years: -1}", "at least 0"),
        ("later: {years: 60}", "at most 50"),
        ("allowances: {appliances: maybe}", "in or out"),
        ("allowances: {furniture: -5}", "an amount of money of at least 0"),
        ("estimate_class: 6", "at most 5"),
    ],
)
def test_wrong_values_are_refused(line, words):
    """One problem each, in its place."""
    (told,) = problems(f"{SMALL}budget:\n  {line}\n")
    assert words in told
