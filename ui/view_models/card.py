"""One line of the list of concepts in order."""

from dataclasses import dataclass

from optimizer.concepts import Option
from ui.view_models.words import Words, number_words, sentence


@dataclass(frozen=True, slots=True)
class Card:
    """A concept as the list shows it, in ready words."""

    id: str
    title: str
    """What the concept is called."""
    cost: str
    """Phase 1 with its contingency: what the ceiling speaks of."""
    walking: str
    worth: str
    seats: str
    left_out: tuple[str, ...]
    reason: str
    broken: tuple[str, ...] = ()
    """What a layout of one's own breaks."""


def card(option: Option, words: Words) -> Card:
    """Return the line of one concept."""
    appraisal = option.appraisal
    return Card(
        id=option.id,
        title=option.title,
        cost=words.money(appraisal.cost.phase(1)),
        walking=words.length(appraisal.walking_ft),
        worth=number_words(appraisal.worth),
        seats=str(appraisal.seats),
        left_out=tuple(left_out.room for left_out in option.left_out),
        reason=sentence(words.signed(option.reason)),
        broken=tuple(finding.words for finding in option.findings),
    )
