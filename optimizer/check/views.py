"""What every relation of sight comes to in a layout, kept or not."""

from typing import Final

from optimizer.check.case import CheckCase
from optimizer.check.sight import look_for

SIGHT: Final = ("in_view", "out_of_view")
SeenShare = tuple[str, str, str, float]
"""Who looks, what is looked at, the kind of the relation, and the share that is seen, 0 to 1."""


def seen_shares(case: CheckCase) -> tuple[SeenShare, ...]:
    """Share of sight of each relation whose ends are both there."""
    found = []
    for relation in case.scenario.brief.relations:
        share = case.sight_share(relation) if relation.kind in SIGHT else None
        if share is not None:
            look = look_for(case.scenario, case.placed.wished, relation)
            found.append((look.looker, look.seen, relation.kind, round(share, 4)))
    return tuple(found)
