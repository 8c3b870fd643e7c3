"""Every stated step is in the engine's floors, as contingency is."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Budget
from optimizer.catalogue import book_for
from optimizer.engine.problem import build_problem
from tests.yards import plain_rooms, plain_yard

CEILING = Decimal(40_000)


def money(budget: Budget) -> tuple[int, tuple[tuple[int, ...], ...], int, tuple[tuple[int, ...], ...]]:
    """What the engine counts of money under a budget: what may be spent, by choice, set aside for ways, losses."""
    yard = plain_yard()
    yard = replace(yard, brief=replace(yard.brief, budget=budget))
    problem = build_problem(yard, plain_rooms(), book_for("USD"))
    (spent,) = [amount for amount in problem.amounts if amount.rule == "budget"]
    assert spent.most is not None
    return spent.most, spent.uses, problem.guide.ways, tuple(room.losses for room in problem.rooms)


@pytest.mark.parametrize(
    "steps",
    [
        {"contingency": Decimal(0), "tax": Decimal("0.32")},
        {"contingency": Decimal("0.2"), "overhead": Decimal("0.1")},
        {"contingency": Decimal(0), "overhead": Decimal("0.1"), "markup": Decimal("0.2")},
    ],
)
def test_steps_of_one_product_are_one_floor(steps: dict[str, Decimal]) -> None:
    """Steps that multiply to 1.32 make the engine count as a contingency of 0.32 does, but for cents of rounding."""
    most, *others = money(Budget(CEILING, **steps))
    least, *same = money(Budget(CEILING, contingency=Decimal("0.32")))
    assert others == same
    assert 0 <= most - least <= 10


def test_estimates_have_every_step() -> None:
    """Ways, runs and steps of stairs are set aside at what they will cost with the stated steps."""
    with_steps, without = (
        money(Budget(CEILING, contingency=Decimal("0.5"))),
        money(Budget(CEILING, contingency=Decimal(0))),
    )
    assert without[2] > 0
    assert with_steps[2] == pytest.approx(1.5 * without[2], abs=2)


def test_dearer_steps_leave_less() -> None:
    """A tax on top of the usual contingency."""
    assert money(Budget(CEILING, tax=Decimal("0.1")))[0] < money(Budget(CEILING))[0]
