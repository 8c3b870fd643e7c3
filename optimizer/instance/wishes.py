"""Wishes between two rooms: relations with a weight, and where destinations lie by common practice."""

from dataclasses import replace

from optimizer.brief import Relation
from optimizer.catalogue import rates
from optimizer.instance.context import Context
from optimizer.instance.pairs import Pair, PairWish
from optimizer.instance.rules.relations import end_of, joins
from optimizer.instance.sight import view_of

CENTS = 100


def with_wishes(context: Context, pair: Pair) -> Pair:
    """The pair with the loss of every wish between its rooms."""
    wishes = [
        _wish(context, pair, relation)
        for relation in context.scenario.brief.relations
        if not relation.is_hard and joins(context, relation, pair)
    ]
    return replace(pair, wishes=tuple(wishes))


def wish_loss(context: Context, relation: Relation) -> int:
    """What a wish that is not kept costs [cents]."""
    return round(CENTS * rates().sight * context.scenario.brief.weights.sight * (relation.wish or 0.0))


def _wish(context: Context, pair: Pair, relation: Relation) -> PairWish:
    loss = wish_loss(context, relation)
    match relation.kind:
        case "near":
            return PairWish("near", relation.within_ft or 0.0, loss)
        case "apart":
            return PairWish("apart", relation.at_least_ft or 0.0, loss)
        case "touching":
            return PairWish("touching", relation.shared_edge_ft or 3.0, loss)
        case "faces":
            return PairWish("faces", 0.0, loss, opens=end_of(context, relation, pair, 0))
        case "in_view":
            return PairWish("seen", 0.0, loss, view=view_of(context, relation, pair))
        case "out_of_view":
            return PairWish("hidden", 0.0, loss, view=view_of(context, relation, pair))
        case "accessible":
            # Asked for between a door or entrance and a room, never between two rooms.
            raise ValueError(relation.kind)
