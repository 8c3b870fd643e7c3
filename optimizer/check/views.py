"""What every relation of sight comes to in a layout, kept or not."""

from collections.abc import Sequence

from optimizer.catalogue import SizedRoom
from optimizer.check.sight import sight_share
from optimizer.layout import Layout
from optimizer.scenario import Scenario

SeenShare = tuple[str, str, str, float]
"""The two ends of a relation of sight, its kind, and the share that is seen, 0 to 1."""


def seen_shares(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout) -> tuple[SeenShare, ...]:
    """Share of sight of each relation whose ends are both there."""
    views = (relation for relation in scenario.brief.relations if relation.kind in ("in_view", "out_of_view"))
    shares = ((relation, sight_share(scenario, rooms, layout, relation)) for relation in views)
    return tuple((*view.between, view.kind, round(share, 4)) for view, share in shares if share is not None)
