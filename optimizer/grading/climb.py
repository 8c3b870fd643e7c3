"""How many risers one climbs from one place to another."""

from optimizer.circulation import Network, way_between
from optimizer.grading.flights import risers_along
from optimizer.grading.grading import Grading
from optimizer.grading.paved import paved_rooms
from optimizer.layout import Placed
from optimizer.site import Site


def climbed(site: Site, placed: Placed, grading: Grading, network: Network, start: str, end: str) -> int | None:
    """Risers on the shortest way between two stops, with those at a door that it starts from; None without a way."""
    starts, ends = network.access.stop(start), network.access.stop(end)
    way = way_between(network, starts, ends) if starts and ends else None
    if way is None:
        return None
    levels = [level for _, level in grading.levels_ft]
    return risers_along(paved_rooms(site, placed), levels, way)
