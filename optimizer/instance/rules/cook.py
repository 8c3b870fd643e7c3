"""The cook's rule between a kitchen and a gathering."""

from dataclasses import replace

from optimizer.brief import RuleId
from optimizer.instance.context import Context
from optimizer.instance.pairs import Pair
from optimizer.instance.rules.part import Part


def _ahead(context: Context, pair: Pair) -> Pair:
    kinds = [context.rooms[index].rules.kind for index in (pair.first, pair.second)]
    ends = tuple(end for end in (0, 1) if (kinds[end], kinds[1 - end]) == ("kitchen", "gathering"))
    return replace(pair, ahead=(*pair.ahead, *ends))


PARTS: dict[RuleId, Part] = {"cook_looks_at_table": Part(pair=_ahead)}
