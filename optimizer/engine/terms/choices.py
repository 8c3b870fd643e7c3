"""What a choice costs and lacks, whatever its place, and what it costs to do without a room."""

from collections.abc import Sequence

from optimizer.catalogue import PriceBook, SizedRoom, rates, worth_rate
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.budget import costs_of
from optimizer.engine.terms.term import CENTS


def choice_losses(
    context: Context, room: SizedRoom, variants: Sequence[Variant], book: PriceBook
) -> tuple[tuple[int, ...], int]:
    """Loss of each variant, and of leaving the room out [cents]."""
    weights = context.scenario.brief.weights
    point = CENTS * worth_rate(context.scenario.brief.budget.ceiling, context.rooms) * weights.worth
    most = max(choice.worth for choice in room.choices)
    of_variants = tuple(
        round(weights.cost * rates().cost * cents + point * (most - room.choices[variant.choice].worth))
        for variant, cents in zip(variants, costs_of(context, room, variants, book), strict=True)
    )
    # People go elsewhere for what a room that is left out would have been walked to.
    walked = weights.walking * rates().walking * rates().stands_in * context.scenario.brief.ends_at({room.name})
    return of_variants, round(point * most + CENTS * walked)
