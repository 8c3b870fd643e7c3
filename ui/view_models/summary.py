"""What was read of a scenario, before anything is searched; and how a search ended."""

from dataclasses import dataclass

from optimizer.brief import Brief, RoomWish
from optimizer.catalogue import palette_of
from optimizer.concepts import OptionSet
from optimizer.concepts.words import capital, listed
from optimizer.scenario import Scenario
from ui.view_models.words import sentence, words_of


@dataclass(frozen=True, slots=True)
class Summary:
    """A scenario in a few lines: who, what, how much."""

    name: str
    lines: tuple[tuple[str, str], ...]


def scenario_summary(scenario: Scenario, *, for_designer: bool = False) -> Summary:
    """Summary of a scenario as read, for an owner unless for a designer."""
    words = words_of(scenario, for_designer=for_designer)
    brief, site = scenario.brief, scenario.site
    ceiling = brief.budget.ceiling
    money = f"No {words.term('ceiling')}" if ceiling is None else f"{words.money(ceiling)} for phase 1"
    stays = [
        *(building.name for building in site.buildings),
        *(structure.name for structure in site.structures),
        *(wall.name for wall in site.walls),
        *(paving.name for paving in site.paving if paving.then == "keep"),
        *(tree.name for tree in site.trees),
    ]
    goes = [paving.name for paving in site.paving if paving.then == "lift"]
    later = [room for room in brief.rooms if room.phase > 1]
    all_kept = all(room.kind == "reserve" for room in later)
    lines = (
        ("Guests", f"{brief.guests.everyday} on a usual day, {brief.guests.party} at a party"),
        ("Budget", f"{money}, {brief.budget.contingency:.0%} {words.term('contingency')} included"),
        ("Wanted now", sentence(listed([room.name for room in brief.rooms if room.phase == 1]))),
        ("May wait for a later phase", sentence(listed([room.name for room in brief.rooms if room.may_wait]))),
        (
            capital(words.term("reserve")) if all_kept else "Later",
            sentence(listed([_with_futures(room) for room in later])),
        ),
        ("Materials", _materials(brief)),
        ("Stays as it is", sentence(listed(stays))),
        ("Lifted", sentence(listed(goes))),
        ("Prices", scenario.book.said.removeprefix("Prices: ")),
        ("Concepts asked for", str(brief.options.count)),
    )
    return Summary(scenario.name, tuple(line for line in lines if line[1]))


def _materials(brief: Brief) -> str:
    """What the paved ground is made of, and the levels that may be tried; nothing where the file offers none."""
    offered = [f"{level.name} ({palette_of(level.finish).field.material})" for level in brief.finish_levels]
    made = f"; concepts are made in {brief.finish_level}" if brief.finish_level else ""
    return sentence(f"{listed(offered)}{made}") if offered else ""


def _with_futures(room: RoomWish) -> str:
    """A room, and what could go there where it is ground that is kept."""
    return f"{room.name} ({' or '.join(room.futures)})" if room.futures else room.name


def ending(option_set: OptionSet) -> str:
    """How a search ended, in two sentences at most."""
    search, count = option_set.search, len(option_set.concepts)
    if search.status == "nothing_fits":
        return "Nothing fits: the wishes cannot all be kept in this yard."
    if not count:
        return (
            f"Undecided after {search.seconds:.0f} s: nothing was found and nothing was ruled out. Give it more time."
        )
    stopped = ", stopped by you" if search.stopped else ""
    return (
        f"{count} concept{'' if count == 1 else 's'} after {search.seconds:.0f} s{stopped}. {_bound_words(option_set)}"
    )


def _bound_words(option_set: OptionSet) -> str:
    """What is proven of the first concept; a bound speaks of the solver's count, and says so."""
    search, first = option_set.search, option_set.concepts[0]
    if search.bound is None or first.proof is None:
        return "How much better a layout could be is not known."
    if search.status == "proven" and search.option == first.id:
        return "Proven: by the solver's own count, no layout of this yard and brief is better than the first."
    objective = first.proof.objective
    share = 0.0 if objective <= 0 else max(0.0, (objective - search.bound) / objective)
    return f"By the solver's own count, no layout can be better than the first by more than {share:.0%}."
