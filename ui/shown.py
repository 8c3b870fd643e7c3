"""A concept in hand: of which search, in which yard, and by which name the page knows it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import dist
from typing import Final

from optimizer.concepts import Option
from optimizer.errors import InputError
from optimizer.layout import Layout, Placement
from optimizer.results import Result
from optimizer.scenario import Scenario
from ui.searches import Search, Searching

_OF: Final = "."
MOVED_FT: Final = 6.0
"""A room that moved no further while its concept was polished counts as where it was [ft]."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A concept of a search's result."""

    search: Search
    result: Result
    option: Option

    @property
    def name(self) -> str:
        """What an address calls it."""
        return name_of(self.search.id, self.option.id)

    @property
    def key(self) -> str:
        """What is remembered of it is known by this; the best so far of a running search changes under its name."""
        return f"{self.name}/{hash(self.option.layout):x}"

    @property
    def scenario(self) -> Scenario:
        """The yard and brief that it was found for."""
        return self.result.scenario


def name_of(search_id: str, concept_id: str) -> str:
    """What an address calls a concept of a search."""
    return f"{search_id}{_OF}{concept_id}"


def concepts_of(search: Search) -> tuple[Shown, ...]:
    """All concepts of a search and layouts of one's own; none where there is no result yet.

    Raises
    ------
    InputError
        If the result cannot be read.
    """
    result = search.result()
    return () if result is None else tuple(Shown(search, result, option) for option in result.option_set.options)


def shown_by(name: str | None, searching: Searching) -> Shown | None:
    """Return the concept that an address names, or None where it is not there any more."""
    search_id, _, option_id = (name or "").partition(_OF)
    search = searching.get(search_id)
    try:
        result = search.result() if search is not None else None
    except InputError:
        return None
    option = result.option(option_id) if result is not None else None
    return None if search is None or result is None or option is None else Shown(search, result, option)


def follow(layout: Layout, concepts: Sequence[Shown]) -> Shown | None:
    """Find the concept that a layout has become while its search went on: the same choices, hardly moved; or None."""
    rooms = {place.room: place for place in layout.base.placements}
    alike = [
        (max(moves, default=0.0), shown)
        for shown in concepts
        if (moves := _moves(rooms, shown.option.layout.base)) is not None and max(moves, default=0.0) <= MOVED_FT
    ]
    return min(alike, key=lambda entry: entry[0])[1] if alike else None


def _moves(rooms: Mapping[str, Placement], layout: Layout) -> list[float] | None:
    """How far each room moved [ft]; None where rooms or choices are others."""
    there = {place.room: place for place in layout.placements}
    if {name: place.choice for name, place in rooms.items()} != {name: place.choice for name, place in there.items()}:
        return None
    return [dist(place.centre, there[name].centre) for name, place in rooms.items()]
