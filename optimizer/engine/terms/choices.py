"""What a choice costs and lacks, whatever its place, and what it costs to do without a room."""

from collections.abc import Sequence
from math import prod

from optimizer.catalogue import PriceBook, SizedRoom, rates, worth_rate
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.variants import Variant
from optimizer.engine.rules.budget import costs_of
from optimizer.engine.terms.term import CENTS
from optimizer.quantities import RETURN


def choice_losses(
    context: Context, room: SizedRoom, variants: Sequence[Variant], book: PriceBook
) -> tuple[tuple[int, ...], int]:
    """Loss of each variant, and of leaving the room out [cents]."""
    weights = context.scenario.brief.weights
    point = CENTS * worth_rate(context.scenario.brief.budget.ceiling, context.rooms) * weights.worth
    most = max(choice.worth for choice in room.choices)
    of_variants = tuple(
        round(weights.cost * rates().cost * cents + point * (most - room.choices[variant.choice].worth))
        for variant, cents in zip(variants, _costs(context, room, variants, book), strict=True)
    )
    # People go elsewhere for what a room that is left out would have been walked to.
    walked = weights.walking * rates().walking * rates().stands_in * context.scenario.brief.ends_at({room.name})
    return of_variants, round(point * most + CENTS * walked)


def _costs(context: Context, room: SizedRoom, variants: Sequence[Variant], book: PriceBook) -> tuple[int, ...]:
    """What each variant costs in phase 1, and in the later phase that it waits for, with coming back for it [cents]."""
    budget = context.scenario.brief.budget
    costs = costs_of(context, room, variants, book)
    for phase in {variant.phase for variant in variants if variant.phase is not None}:
        more = (1 + book.of(RETURN).price) * prod(1 + share for _, share in budget.steps(phase))
        later = costs_of(context, room, variants, book, phase=phase, more=more)
        costs = tuple(
            now + then if variant.phase == phase else now
            for variant, now, then in zip(variants, costs, later, strict=True)
        )
    return costs
