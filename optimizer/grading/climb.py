"""How many risers one climbs from one place to another."""

from optimizer.circulation import Network, way_between
from optimizer.grading.flights import risers_along
from optimizer.grading.grade import Levelled


def climbed(levelled: Levelled, network: Network, start: str, end: str) -> int | None:
    """Risers on the shortest way between two stops, with those at a door that it starts from; None without a way."""
    starts, ends = network.access.stop(start), network.access.stop(end)
    way = way_between(network, starts, ends) if starts and ends else None
    return None if way is None else risers_along(levelled.paved, levelled.levels_ft, way)
