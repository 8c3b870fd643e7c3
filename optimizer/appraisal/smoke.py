"""How much of the using season doors, windows and seats lie in the smoke of the layout's fires and grills."""

from collections.abc import Iterator, Sequence

import numpy as np

from optimizer.appraisal.site_measures import SmokeShare
from optimizer.brief import Brief
from optimizer.catalogue import SizedRoom
from optimizer.fields.smoke import SmokedPlace, SmokeSource, openings_to_air, smoke_factor, smoke_share, smoke_source
from optimizer.fields.wind import wind_rose
from optimizer.layout import Placed, PlacedRoom
from optimizer.scenario import Scenario


def smoke_shares(scenario: Scenario, placed: Placed) -> tuple[SmokeShare, ...]:
    """Share of every source against every place but itself, none left out for being 0; empty where no wind is known.

    Smoke rises from the middle of a fire, or of a kitchen with something hot in it.
    """
    if wind_rose(scenario.site) is None:
        return ()
    places = (*openings_to_air(scenario.site), *_seated(placed))
    sources = ((room, smoke_source(scenario.brief, room.room)) for room, _ in placed.chosen)
    return tuple(
        SmokeShare(room.name, place.name, _share(scenario, source, place, room))
        for room, source in sources
        if source is not None
        for place in places
        if place.name != room.name
    )


def smoke_loss_units(brief: Brief, rooms: Sequence[SizedRoom], shares: Sequence[SmokeShare]) -> float:
    """Sum over places of their share, a gas fire's or a grill's counting less than a wood fire's."""
    sources = {room.name: smoke_source(brief, room) for room in rooms}
    found = ((sources.get(entry.source), entry.share) for entry in shares)
    return sum(smoke_factor(source) * share for source, share in found if source is not None)


def _seated(placed: Placed) -> Iterator[SmokedPlace]:
    """Placed rooms with seats."""
    return (SmokedPlace(room.name, room.shape) for room, choice in placed.chosen if choice.seats > 0)


def _share(scenario: Scenario, source: SmokeSource, place: SmokedPlace, room: PlacedRoom) -> float:
    x, y = room.placement.base.centre
    return float(smoke_share(scenario.site, source, place, np.array([x]), np.array([y]))[0])
