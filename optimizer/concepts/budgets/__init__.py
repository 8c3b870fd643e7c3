"""What each budget buys. Here are the data; `run.py`, which needs the solver, is imported by who runs it."""

from optimizer.concepts.budgets.points import BudgetPoint, BudgetSet, NextThing

__all__ = ["BudgetPoint", "BudgetSet", "NextThing"]
