"""What every relation of sight comes to in a layout, kept or not."""

from typing import Final

from optimizer.check.sight import look_for, sight_share
from optimizer.layout import Placed
from optimizer.scenario import Scenario

SIGHT: Final = ("in_view", "out_of_view")
SeenShare = tuple[str, str, str, float]
"""Who looks, what is looked at, the kind of the relation, and the share that is seen, 0 to 1."""


def seen_shares(scenario: Scenario, placed: Placed) -> tuple[SeenShare, ...]:
    """Share of sight of each relation whose ends are both there."""
    found = []
    for relation in scenario.brief.relations:
        share = sight_share(scenario, placed, relation) if relation.kind in SIGHT else None
        if share is not None:
            look = look_for(scenario, placed.wished, relation)
            found.append((look.looker, look.seen, relation.kind, round(share, 4)))
    return tuple(found)
