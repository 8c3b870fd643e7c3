"""One line of the list of concepts in order."""

from dataclasses import dataclass

from optimizer.appraisal import Appraisal
from optimizer.concepts import Option
from optimizer.concepts.walked import trips_walked
from optimizer.concepts.words import capital
from optimizer.scenario import Scenario
from ui.view_models.words import Words, number_words, sentence


@dataclass(frozen=True, slots=True)
class Card:
    """A concept as the list shows it, in ready words."""

    id: str
    rank: int | None
    title: str
    """What the concept is called."""
    cost: str
    """Phase 1 with its contingency: what the ceiling speaks of."""
    walking: str
    walking_words: str
    """The same with what is walked: on so many of the trips where it has not all of them."""
    worth: str
    worth_words: str
    """What it is worth, as the list says it to a designer; an owner reads what is left out instead."""
    seats: str
    left_out: tuple[str, ...]
    idea: str
    """Name of the scheme that it follows; empty for none."""
    reason: str

    @property
    def key(self) -> str:
        """What its widgets are known by."""
        return str(self.rank or self.id)


def card(option: Option, scenario: Scenario, words: Words) -> Card:
    """Return the line of one concept."""
    appraisal = option.appraisal
    return Card(
        id=option.id,
        rank=option.rank,
        title=option.title,
        cost=words.money(appraisal.cost.phase(1)),
        walking=words.length(appraisal.walking_ft),
        walking_words=_walking_words(option, scenario, words),
        worth=number_words(appraisal.worth),
        worth_words=_worth_words(appraisal, words),
        seats=str(appraisal.seats),
        left_out=tuple(left_out.room for left_out in option.left_out),
        idea=capital(option.idea.name) if option.idea else "",
        reason=sentence(words.signed(option.reason)),
    )


def _walking_words(option: Option, scenario: Scenario, words: Words) -> str:
    walking = words.length(option.appraisal.walking_ft)
    some, every = trips_walked(scenario.brief, option)
    return f"{walking} walking" + (f" on {some} of {every} trips" if some < every else "")


def _worth_words(appraisal: Appraisal, words: Words) -> str:
    if words.for_designer:
        return f"worth {number_words(appraisal.worth)}"
    return ""
