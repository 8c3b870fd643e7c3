"""The everyday guests sit at one table."""

from collections.abc import Iterator

from optimizer.catalogue import PriceBook, table_is_held
from optimizer.engine.amounts import Amount
from optimizer.engine.grid.context import Context
from optimizer.engine.rules.given import given
from optimizer.engine.rules.part import Part, Variants


def _one_table(context: Context, variants: Variants, _book: PriceBook) -> Iterator[Amount]:
    guests = context.scenario.brief.guests
    if table_is_held(context.rooms, guests):
        tables = given(context, variants, lambda choice: int(choice.table >= guests.everyday))
        yield Amount("everyday_table", tables, least=1)


PART = Part(amounts=_one_table)
