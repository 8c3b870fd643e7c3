"""How much of the using season doors, windows and seats lie in the smoke of the layout's fires and grills."""

from collections.abc import Iterator, Sequence

import numpy as np

from optimizer.appraisal.seats import chosen
from optimizer.appraisal.site_measures import SmokeShare
from optimizer.brief import Brief
from optimizer.catalogue import SizedRoom
from optimizer.circulation import rectangle
from optimizer.fields.smoke import SmokedPlace, SmokeSource, openings_to_air, smoke_factor, smoke_share, smoke_source
from optimizer.fields.wind import wind_rose
from optimizer.layout import Layout
from optimizer.scenario import Scenario


def smoke_shares(scenario: Scenario, rooms: Sequence[SizedRoom], layout: Layout) -> tuple[SmokeShare, ...]:
    """Share of every source against every place but itself, none left out for being 0; empty where no wind is known.

    Smoke rises from the middle of a fire, or of a kitchen with something hot in it.
    """
    if wind_rose(scenario.site) is None:
        return ()
    places = (*openings_to_air(scenario.site), *_seated(rooms, layout))
    sources = ((room, smoke_source(scenario.brief, room)) for room, _ in chosen(rooms, layout))
    return tuple(
        SmokeShare(room.name, place.name, _share(scenario, source, place, layout, room.name))
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


def _seated(rooms: Sequence[SizedRoom], layout: Layout) -> Iterator[SmokedPlace]:
    """Placed rooms with seats."""
    seats = {room.name for room, choice in chosen(rooms, layout) if choice.seats > 0}
    return (SmokedPlace(p.room, rectangle(p)) for p in layout.placements if p.room in seats)


def _share(scenario: Scenario, source: SmokeSource, place: SmokedPlace, layout: Layout, room: str) -> float:
    placement = layout.of(room)
    if placement is None:
        return 0.0
    x, y = placement.centre
    return float(smoke_share(scenario.site, source, place, np.array([x]), np.array([y]))[0])
