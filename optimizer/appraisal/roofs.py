"""Roofs that stand in the yard already and that no room makes use of."""

from collections.abc import Collection, Sequence

import numpy as np

from optimizer.catalogue import PriceBook, SizedRoom, cover_price, rates
from optimizer.fields.roofs import lies_under, may_use, roof_sqft
from optimizer.layout import Placed, Placement
from optimizer.site import Site, Structure


def empty_roofs(site: Site, placed: Placed) -> tuple[str, ...]:
    """Names of the structures under which no paved room with seats lies."""
    seated = [room.placement for room, choice in placed.chosen if room.rules.paved and choice.seats]
    return tuple(s.name for s in site.structures if not any(_uses(s, place) for place in seated))


def empty_roofs_loss(site: Site, rooms: Sequence[SizedRoom], empty: Collection[str], book: PriceBook) -> float:
    """What they lose in money, before weighing: a part of what a new roof of that area would cost.

    A roof that no wished room may use loses nothing: no concept could do better.
    """
    lost = [s for s in site.structures if s.name in empty and any(may_use(s, room) for room in rooms)]
    return rates().empty_roof * cover_price(book) * sum(roof_sqft(structure) for structure in lost)


def _uses(structure: Structure, place: Placement) -> bool:
    if place.room not in structure.may_hold:
        return False
    at = np.array(place.x_ft), np.array(place.y_ft)
    return bool(lies_under(structure, *at, width_ft=place.width_ft, depth_ft=place.depth_ft))
