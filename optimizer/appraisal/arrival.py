"""How guests come in: where, what steps they see from there, and how far it is to the gathering."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from optimizer.brief import Trip
from optimizer.catalogue.sight import sight_figure
from optimizer.circulation import Network, way_between
from optimizer.fields import ground_at_ft
from optimizer.fields.room_screens import layout_screens
from optimizer.fields.sight import Eye, Screen, visible_share
from optimizer.fields.sight_ends import site_screens
from optimizer.layout import Placed
from optimizer.site import Entrance, Point, Site

APPROACH_FT: Final = 2.0
"""How far inside the entrance one first looks round; common practice, no source."""


def arrival_of(site: Site, trips: Sequence[Trip] = ()) -> Entrance | None:
    """Entrance of the guests: of those that they use, the first that a trip starts at, else the first; None without."""
    entrances = [entrance for entrance in site.entrances if "guests" in entrance.used_by]
    starts = {trip.start for trip in trips}
    return next((entrance for entrance in entrances if entrance.name in starts), entrances[0] if entrances else None)


def approach_point(entrance: Entrance) -> Point:
    """Where one stands on having come in [ft]."""
    (x, y), (in_x, in_y) = entrance.at, entrance.inward
    return (x + APPROACH_FT * in_x, y + APPROACH_FT * in_y)


@dataclass(frozen=True, slots=True)
class ArrivalView:
    """What a guest who stands just inside the entrance looks from, and what may hide the yard from there."""

    eye: Eye
    screens: tuple[Screen, ...]

    def sees(self, at: Point, z_ft: float, more: Sequence[Screen] = ()) -> bool:
        """Whether a point at a height above the file's datum [ft] is seen, past `more` screens too."""
        return visible_share((self.eye,), np.array([(*at, z_ft)]), (*self.screens, *more)) > 0


def arrival_view(site: Site, placed: Placed, arrival: Entrance) -> ArrivalView:
    """View of a standing guest past what stands on the site and in the rooms; nobody need be kept from seeing."""
    at = approach_point(arrival)
    eye = Eye(at, ground_at_ft(site, at) + sight_figure("standing_eye"))
    standing = (screen for _, screen in site_screens(site))
    return ArrivalView(eye, (*standing, *layout_screens(site, placed, lookers={}, ends=())))


def risers_seen_share(
    flights: Sequence[tuple[Point, float, int]], sees: Callable[[Point, float], bool]
) -> float | None:
    """Share of all risers that lie in flights seen on arrival; None without a riser.

    Parameters
    ----------
    flights
        Where each flight is [ft], its height above the file's datum [ft], and its risers.
    sees
        Whether a point at a height is seen.
    """
    total = sum(risers for _, _, risers in flights)
    if total == 0:
        return None
    return sum(risers for at, z_ft, risers in flights if sees(at, z_ft)) / total


def arrival_length_ft(network: Network, arrival: Entrance, placed: Placed) -> float | None:
    """Length of the shortest way from the arrival to a placed gathering [ft]; None where no way leads to one."""
    start = network.access.stop(arrival.name)
    ends = [network.access.stop(room.name) for room in placed.of_kind("gathering")]
    ways = (way_between(network, start, end) for end in ends if start and end)
    return min((way.length_ft for way in ways if way is not None), default=None)
