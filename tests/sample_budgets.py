"""What each budget buys, made up by hand: for tests of what is written, drawn and printed."""

from dataclasses import replace
from decimal import Decimal

from optimizer.concepts.budgets import BudgetPoint, BudgetSet, NextThing
from tests.sample_run import sample_option


def sample_budgets() -> BudgetSet:
    """Two points on the demonstration yard; the figures are made up."""
    table, fire = ("gathering area", "table for eight"), ("fire feature", "six seats")
    first = BudgetPoint(
        ceiling=Decimal(64_000),
        worth=20.0,
        bound=22.0,
        cost=Decimal("63957.10"),
        status="bounded",
        rooms=(table,),
        enters=(table,),
        leaves=(),
        next=NextThing(*fire, Decimal(31_000)),
        concept="budget-01",
    )
    second = BudgetPoint(
        ceiling=Decimal(95_000),
        worth=30.0,
        bound=30.0,
        cost=Decimal("94800.00"),
        status="proven",
        rooms=(table, fire),
        enters=(fire,),
        leaves=(),
        next=None,
        concept="budget-02",
    )
    reasons = ("The least that was found to work: the table.", "For about 31,000 USD more: the fire.")
    options = tuple(
        replace(sample_option(f"budget-{rank:02}", rank=rank), reason=reason, proof=None)
        for rank, reason in enumerate(reasons, 1)
    )
    return BudgetSet(
        points=(first, second),
        possible=((Decimal(41_000), 20.0), (Decimal(60_000), 22.0), (Decimal(90_000), 30.0)),
        options=options,
        lowest=Decimal(40_000),
        highest=Decimal(130_000),
        seconds=49.5,
        seed=7,
        repeatable=False,
        stopped=False,
        layouts_found=98,
    )
