"""The party's evening in a layout: people in rooms, people on ways, and where it pinches."""

from collections.abc import Sequence
from itertools import combinations, pairwise
from math import dist
from typing import Final

from optimizer.appraisal.arrival import arrival_of
from optimizer.appraisal.party.measures import PartyMeasures, PartyPhase, PartyRoom
from optimizer.appraisal.party.moves import loads, moves
from optimizer.appraisal.party.pinch import Walk, badness, edge_pinches, leg_pinches, remedy_of
from optimizer.appraisal.party.places import OUTSIDE, Room, people_by_phase
from optimizer.catalogue import Phase, PriceBook, held, holds, party_phases
from optimizer.circulation import CLEAR_WIDTH_FT, Ways
from optimizer.fields.site_walls import open_edge_ft
from optimizer.layout import Placed
from optimizer.scenario import Scenario
from optimizer.site import Site

_LEAST_EDGE_FT: Final = CLEAR_WIDTH_FT
"""Rooms that share less edge are not walked between across it."""
_ROUNDING_FT: Final = 0.01
Lengths = dict[str, dict[str, float]]


def party_measures(scenario: Scenario, placed: Placed, book: PriceBook, laid: Ways) -> PartyMeasures:
    """Seats, standing room, people by phase, and the narrowest walk with what would ease it.

    People walk from place to place along the trips' ways and across shared edges, by the shortest chain of both.
    """
    party = scenario.brief.guests.party
    places = tuple(Room(there.name, there.kind, holds(there.room, choice)) for there, choice in placed.chosen)
    there = held(place.holds for place in places)
    arrival = arrival_of(scenario.site, scenario.brief.trips)
    entrance = OUTSIDE if arrival is None else arrival.name
    phases = people_by_phase(party, places, party_phases(), entrance=entrance)
    edges = _edges(scenario.site, placed)
    walks = _walks(phases, party_phases(), _links(placed, laid, edges))
    paved = {frozenset(pair) for leg in laid.legs for pair in leg.trips}
    narrow = max(leg_pinches(laid.legs, walks), key=lambda found: badness(found[0]), default=None)
    over = edge_pinches({link: width for link, width in edges.items() if link not in paved}, walks)
    return PartyMeasures(
        people=party,
        seats=there.seats,
        table=there.table,
        standing_sqft=round(there.standing_sqft, 2),
        without=max(0, party - sum(place.most for place in places)),
        rooms=tuple(_room(place, phases) for place in places),
        phases=phases,
        worst=max((*over, *((narrow[0],) if narrow else ())), key=badness, default=None),
        remedy=remedy_of(scenario, placed, book, *narrow) if narrow else None,
    )


def _room(place: Room, phases: Sequence[PartyPhase]) -> PartyRoom:
    most = max((dict(phase.people).get(place.name, 0) for phase in phases), default=0)
    return PartyRoom(place.name, place.holds.seats, round(place.holds.standing_sqft, 2), most)


def _edges(site: Site, placed: Placed) -> dict[frozenset[str], float]:
    """Edges that paved rooms share and that are wide enough to walk across [ft]."""
    pairs = combinations(placed.paved, 2)
    shared = {frozenset((a.name, b.name)): open_edge_ft(site, a.placement, b.placement) for a, b in pairs}
    return {link: width for link, width in shared.items() if width >= _LEAST_EDGE_FT - _ROUNDING_FT}


def _links(placed: Placed, laid: Ways, edges: dict[frozenset[str], float]) -> Lengths:
    """Lengths between places that a way or an edge joins [ft], each both ways."""
    lengths = {frozenset(way.between): way.length_ft for way in laid.ways if way.between[0] != way.between[1]}
    centres = {room.name: room.centre for room in placed}
    for link in edges:
        one, other = sorted(link)
        lengths.setdefault(link, dist(centres[one], centres[other]))
    links: Lengths = {}
    for link, length in lengths.items():
        one, other = sorted(link)
        links.setdefault(one, {})[other] = length
        links.setdefault(other, {})[one] = length
    return links


def _walks(found: Sequence[PartyPhase], phases: Sequence[Phase], links: Lengths) -> list[Walk]:
    """Who passes which link from one phase to the next."""
    return [
        Walk(phase.name, phase.moving_min, loads(moves(dict(before.people), dict(after.people), links), links))
        for (before, after), phase in zip(pairwise(found), phases[1:], strict=True)
    ]
