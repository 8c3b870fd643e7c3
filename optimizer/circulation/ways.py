"""All ways of a layout: one for each trip, and a path of its own for each room that would float."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from optimizer.brief import Brief
from optimizer.circulation.ground import CLEAR_WIDTH_FT
from optimizer.circulation.network import Network, network_of, walking_ft
from optimizer.circulation.paving import Leg, Paved, paved_network
from optimizer.circulation.reach import cut_off
from optimizer.circulation.stops import access_of
from optimizer.circulation.way import Way, way_along, way_between
from optimizer.fields.site_walls import open_edge_ft
from optimizer.layout import TOLERANCE_FT, Placed, PlacedRoom
from optimizer.site import Site

_FLOATING_FT: Final = 4.0  # common practice, no source: with less shared edge a room needs a path
Pair = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Ways:
    """Ways of the trips whose ends are both there, paths of rooms that no trip reaches, and names no way joins.

    Ways run along the paved `legs`, which they share. `unlaid` are those for which no leg could be laid that keeps
    clear of furniture and chairs: they take the shortest way on foot instead.
    """

    trips: tuple[Way, ...]
    own_paths: tuple[Way, ...]
    legs: tuple[Leg, ...]
    unlaid: tuple[Pair, ...]
    unreached: tuple[str, ...]
    network: Network
    """Shortest ways on foot between all stops, paved or not."""

    @property
    def ways(self) -> tuple[Way, ...]:
        """All ways, trips first."""
        return self.trips + self.own_paths


def ways(site: Site, brief: Brief, placed: Placed, network: Network | None = None) -> Ways:
    """Ways of a layout. What cannot be reached has no way, and its name is in `unreached`.

    `network` is that of the layout on foot, where the caller has it already.
    """
    network = network or network_of(access_of(site, placed))
    floating = tuple(_own_paths(network, site, _floating(site, brief, placed)))
    paved = paved_network(site, brief, placed, floating)
    trips = _ways(network, paved, dict.fromkeys(_walked(brief, placed)))
    own_paths = _ways(network, paved, floating)
    walked = (*trips, *own_paths)
    unlaid = tuple(way for way in walked if way.between not in paved.routes)
    return Ways(
        trips,
        own_paths,
        (*paved.legs, *(Leg(way.points, way.width_ft, "main", (way.between,)) for way in unlaid)),
        tuple(way.between for way in unlaid),
        cut_off(site, brief, network.access),
        network,
    )


def _ways(network: Network, paved: Paved, pairs: Sequence[Pair] | dict[Pair, None]) -> tuple[Way, ...]:
    """Way of each pair along the paved legs, else on foot by the shortest; none where nothing joins the two."""
    found = (_way(network, paved, pair) for pair in pairs)
    return tuple(way for way in found if way is not None)


def _way(network: Network, paved: Paved, pair: Pair) -> Way | None:
    if pair in paved.routes:
        widths = (leg.width_ft for leg in paved.legs if pair in leg.trips)
        return way_along(pair, paved.routes[pair].points, width_ft=min(widths, default=CLEAR_WIDTH_FT))
    start, end = (network.access.stop(name) for name in pair)
    return way_between(network, start, end) if start and end else None


def _walked(brief: Brief, placed: Placed) -> list[Pair]:
    """Ends of the trips that are walked once every phase is built."""
    pairs = [(trip.start, trip.end) for trip in brief.trips]
    return [pair for pair in pairs if placed.unwalked.isdisjoint(pair)]


def _floating(site: Site, brief: Brief, placed: Placed) -> tuple[str, ...]:
    """Placed rooms that no trip reaches and that do not lean on another paved room."""
    reached = {name for pair in _walked(brief, placed) for name in pair}
    return tuple(room.name for room in placed if room.name not in reached and not _leans(site, room, placed))


def _leans(site: Site, room: PlacedRoom, placed: Placed) -> bool:
    return any(
        open_edge_ft(site, room.placement, other.placement) >= _FLOATING_FT - TOLERANCE_FT
        for other in placed.paved
        if other.name != room.name
    )


def _own_paths(network: Network, site: Site, floating: Sequence[str]) -> Iterator[Pair]:
    """Each floating room with the door or entrance that is nearest on foot."""
    openings = [door.name for door in site.doors] + [entrance.name for entrance in site.entrances]
    ends = [stop for stop in network.access.stops if stop.name in openings]
    for room in (stop for stop in network.access.stops if stop.name in floating):
        lengths = {end.name: walking_ft(network, room, end) for end in ends}
        nearest = min(lengths, key=lambda name: lengths[name], default=None)
        if nearest is not None and lengths[nearest] < float("inf"):
            yield (room.name, nearest)
