"""A later phase costs at most its own ceiling: here its rooms and coming back for them, the judge adds steps."""

from collections.abc import Iterator

from optimizer.catalogue import PriceBook
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.rules.budget import CENTS, costs_of
from optimizer.engine.rules.part import Part, Variants
from optimizer.quantities import RETURN


def _spendable(context: Context, variants: Variants, book: PriceBook) -> Iterator[Amount]:
    """Least cost of each variant in each phase that has a ceiling of its own, with contingency, in cents."""
    budget = context.scenario.brief.budget
    more = (1 + budget.contingency) * (1 + book.of(RETURN).price)
    for phase, ceiling in budget.phases:
        uses = tuple(
            costs_of(context, room, own, book, phase=phase, more=more)
            for room, own in zip(context.rooms, variants, strict=True)
        )
        # The share for coming back, and contingency, are rounded to the cent each.
        yield Amount("later_phases", uses, most=int(ceiling * CENTS) + 2)


PART = Part(amounts=_spendable)
