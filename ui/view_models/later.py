"""What may come later on ground that is held for it, future by future, in words."""

from collections.abc import Iterator
from dataclasses import dataclass

from optimizer.appraisal import Outlook
from optimizer.concepts import Option
from optimizer.concepts.future_cautions import future_cautions
from optimizer.concepts.future_words import now_or_later_words, pays_words, rounded_later, standing_words
from optimizer.scenario import Scenario
from optimizer.units import metres_from_feet
from ui.view_models.figure import Figure
from ui.view_models.words import Words, words_of


def later_figures(option: Option, words: Words) -> tuple[Figure, ...]:
    """A row for each future: whether it stays possible, its way in, and money now against later."""
    return tuple(
        Figure(f"{outlook.future}, on the {outlook.room}", standing_words(outlook), _meaning(outlook, words))
        for outlook in option.futures
    )


@dataclass(frozen=True, slots=True)
class LaterWords:
    """One future in full: whether it stays possible, what its picture shows, money now against later and what it
    means, and what misses, bars or is to be kept free.
    """

    standing: str
    shows: str
    money: tuple[Figure, ...]
    pays: str
    told: tuple[str, ...]


def later_words(outlook: Outlook, scenario: Scenario, *, for_designer: bool = False) -> LaterWords:
    """All that is said beside the picture of one future."""
    words = words_of(scenario, for_designer=for_designer)
    return LaterWords(
        standing=f"A later {outlook.future} on the {outlook.room} {standing_words(outlook)}.",
        shows=" ".join(_shows(outlook, for_designer=for_designer)),
        money=tuple(_sums(outlook, words)),
        pays=pays_words(outlook) if outlook.fit.is_kept else "Nobody prepares for what does not fit.",
        told=tuple(words.signed(told) for told in future_cautions(scenario, (outlook,))),
    )


def _shows(outlook: Outlook, *, for_designer: bool) -> Iterator[str]:
    """What the lines and colours of a picture without a legend are."""
    parts = ["water and deck"]
    parts += ["the pad of its equipment"] if outlook.fit.pad else []
    parts += ["its barrier"] if outlook.fit.barrier else []
    yield f"Dashed: {', '.join(parts)}; nothing of it is built yet."
    if outlook.access.is_found:
        yield f"Brown: the way in of the {outlook.access.vehicle}."
    red = ["what stands in the way"] if any(barred.grounds for barred in outlook.access.barred) else []
    red += ["what is too near"] if any(not one.is_kept for one in outlook.fit.distances) else []
    if red:
        yield f"Red: {' and '.join(red)}."
    if for_designer and any(one.is_kept for one in outlook.fit.distances):
        yield "Figures: the distances that its water keeps."


def _sums(outlook: Outlook, words: Words) -> Iterator[Figure]:
    money = outlook.money
    if outlook.fit.is_kept:
        yield Figure("Prepared for now", words.money(rounded_later(money.now)), "in phase 1")
        yield Figure("Later, prepared", words.money(rounded_later(money.later_with)), "at today's prices")
        yield Figure("Later, unprepared", words.money(rounded_later(money.later_without)), "at today's prices")


def _meaning(outlook: Outlook, words: Words) -> str:
    """What misses, the way in, and money: nobody prepares for what does not fit."""
    money = words.signed(now_or_later_words(outlook, words.currency))
    return " ".join((*_misses(outlook, words), _way(outlook), money)).strip()


def _misses(outlook: Outlook, words: Words) -> Iterator[str]:
    """What misses most; the cautions name the rest and the reasons."""
    for miss in outlook.fit.misses[:1]:
        lacks = f"{miss.short_ft:.1f} ft" if words.units == "ft" else f"{metres_from_feet(miss.short_ft):.1f} m"
        yield f"{lacks} are missing, by the {miss.name}."


def _way(outlook: Outlook) -> str:
    access = outlook.access
    return f"Comes in from the {access.gate} by {access.vehicle}." if access.is_found else "Nothing drives in."
