"""Two concepts side by side: what differs, and what does not."""

from dataclasses import dataclass
from math import dist
from typing import Final

from optimizer.concepts import Option
from optimizer.concepts.walked import trip_words, walked_by_both
from optimizer.concepts.words import capital, choice_words
from optimizer.layout import Layout
from optimizer.scenario import Scenario
from ui.view_models.card import Card, card
from ui.view_models.words import Words, share_words, words_of

_SAME_PLACE_FT: Final = 0.5


@dataclass(frozen=True, slots=True)
class ComparisonRow:
    """One thing of both concepts, in words."""

    label: str
    first: str
    second: str

    @property
    def differs(self) -> bool:
        """Whether the two say different things."""
        return self.first != self.second


@dataclass(frozen=True, slots=True)
class Comparison:
    """What differs between two concepts, what is the same in both, and which rooms moved how far."""

    first: Card
    second: Card
    differing: tuple[ComparisonRow, ...]
    same: tuple[ComparisonRow, ...]
    moved: tuple[str, ...]


def compare(first: Option, second: Option, scenario: Scenario, *, for_designer: bool = False) -> Comparison:
    """Comparison of two concepts of a yard, for an owner unless for a designer."""
    words = words_of(scenario, for_designer=for_designer)
    cards = (card(first, scenario, words), card(second, scenario, words))
    rows = (
        *_card_rows(*cards, words),
        *_walking_rows(first, second, scenario, words),
        *_measure_rows(first, second, words),
        *_room_rows(first.layout, second.layout),
    )
    return Comparison(
        *cards,
        differing=tuple(row for row in rows if row.differs),
        same=tuple(row for row in rows if not row.differs),
        moved=_moved(first.layout, second.layout, words),
    )


def _card_rows(first: Card, second: Card, words: Words) -> tuple[ComparisonRow, ...]:
    ideas = (ComparisonRow("Idea", first.idea or "none", second.idea or "none"),)
    return (
        *(ideas if first.idea or second.idea else ()),
        ComparisonRow("Cost, phase 1", first.cost, second.cost),
        ComparisonRow("Worth" if words.for_designer else "Points of your wish list", first.worth, second.worth),
        ComparisonRow("Seats", first.seats, second.seats),
    )


def _walking_rows(first: Option, second: Option, scenario: Scenario, words: Words) -> tuple[ComparisonRow, ...]:
    """Walking, where one has a trip more on the trips that both have, and the trips that it has more."""
    walked = walked_by_both(scenario.brief, first, second)
    if walked.is_all:
        lengths = (words.length(option.appraisal.walking_ft) for option in (first, second))
        return (ComparisonRow("Walking", *lengths),)
    only = (trip_words(trips) or "none" for trips in (walked.only_first, walked.only_second))
    return (
        ComparisonRow("Walking on trips that both have", words.length(walked.first_ft), words.length(walked.second_ft)),
        ComparisonRow("Trips that the other lacks", *only),
    )


def _measure_rows(first: Option, second: Option, words: Words) -> tuple[ComparisonRow, ...]:
    one, other = first.appraisal, second.appraisal
    return (
        ComparisonRow("Cost, all phases", words.money(one.cost.total), words.money(other.cost.total)),
        ComparisonRow("Aligned edges", share_words(one.aligned_share), share_words(other.aligned_share)),
        ComparisonRow("Land without a use", share_words(one.leftover_share), share_words(other.leftover_share)),
        ComparisonRow("Paved", share_words(one.paved_share), share_words(other.paved_share)),
    )


def _room_rows(first: Layout, second: Layout) -> tuple[ComparisonRow, ...]:
    rooms = dict.fromkeys(place.room for place in (*first.placements, *second.placements))
    return tuple(ComparisonRow(capital(room), _choice(first, room), _choice(second, room)) for room in rooms)


def _choice(layout: Layout, room: str) -> str:
    place = layout.of(room)
    return (choice_words(place.choice) or "there") if place else "left out"


def _moved(first: Layout, second: Layout, words: Words) -> tuple[str, ...]:
    pairs = ((place, second.of(place.room)) for place in first.placements)
    moves = ((place.room, dist(place.centre, there.centre)) for place, there in pairs if there)
    far = sorted((move for move in moves if move[1] > _SAME_PLACE_FT), key=lambda move: -move[1])
    return tuple(f"{room} by {words.length(moved_ft)}" for room, moved_ft in far)
