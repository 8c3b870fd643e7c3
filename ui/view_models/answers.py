"""What owners ask of every concept, answered without being asked: from what was measured, and from common practice."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from optimizer.brief import Relation
from optimizer.catalogue import sized_rooms
from optimizer.catalogue.upkeep import Upkeep, upkeep_of
from optimizer.check.sight import sight_share
from optimizer.concepts import Option, OptionSet
from optimizer.concepts.future_cautions import counted_futures, counted_words
from optimizer.concepts.words import listed
from optimizer.layout import placed_of
from optimizer.scenario import Scenario
from ui.view_models.words import Words, number_words, sentence, share_words, words_of

SEEN: Final = 0.1
"""Of a place that is seen to a smaller share nothing is said; common practice, no source."""
_PHASES: Final = {"fire": "after the meal"}


@dataclass(frozen=True, slots=True)
class Answer:
    """A question of owners, and what this concept says to it."""

    question: str
    answer: str


def answers(
    option: Option, option_set: OptionSet, scenario: Scenario, *, for_designer: bool = False
) -> tuple[Answer, ...]:
    """The six questions and their answers."""
    words = words_of(scenario, for_designer=for_designer)
    return (
        Answer("Is that all in?", _all_in(option, scenario, words)),
        Answer("Where do we sit at a party?", _seats(option, scenario, words)),
        Answer("Who sees us?", _seen(option, scenario)),
        Answer("What is not known yet?", _unknown(option, scenario, words)),
        Answer("Which would you build?", _advice(option, option_set, words)),
        Answer("How long does it take, and what does it ask of us each year?", _time(option, scenario)),
    )


def _all_in(option: Option, scenario: Scenario, words: Words) -> str:
    cost, budget = option.appraisal.cost, scenario.brief.budget
    first, later = cost.phase(1), cost.total - cost.phase(1)
    share = budget.contingency
    kept = f", {share_words(float(share))} {words.term('contingency')} included" if share else ""
    within = "" if budget.ceiling is None else f" Your {words.term('ceiling')} is {words.money(budget.ceiling)}."
    after = f" What comes later is another {words.money(later)}{_counted(option)}." if later else ""
    after = " ".join([after, *counted_words(cost, option.futures)])
    return (
        f"What is built now costs {words.money(first)}{kept}; all phases together may come to {words.money(cost.low)} "
        f"to {words.money(cost.high)}.{within}{after} Only what has a line in the cost table is in it: loose "
        "furniture, for one, is not. Prices are those of the price book, not offers."
    )


def _counted(option: Option) -> str:
    """Which of what may come later is in the sum."""
    counted = [f"a {one.future}" for _, one in counted_futures(option.appraisal.cost, option.futures)]
    return f", with {listed(counted)}" if counted else ""


def _seats(option: Option, scenario: Scenario, words: Words) -> str:
    party = option.appraisal.party
    if not party.people:
        return f"{option.appraisal.seats} seats are drawn; a party was not walked through."
    later = {room.name: room.phase for room in scenario.brief.rooms if room.phase > 1}
    rooms = [
        f"{room.seats} at the {room.room}" + (f" (from phase {later[room.room]} on)" if room.room in later else "")
        for room in party.rooms
        if room.seats
    ]
    said = (
        f"For {party.people} people there are {party.seats} seats: {listed(rooms)}." if rooms else "There are no seats."
    )
    standing = party.people - party.seats - party.without
    if standing > 0:
        said += f" {standing} stand at a time, on {words.area(party.standing_sqft)} of clear paving."
    if party.without:
        said += f" For {party.without} there is neither a seat nor ground to stand on."
    seats = {room.room: room.seats for room in party.rooms}
    named = ((_PHASES.get(phase.name, phase.name), _where(phase.people, seats)) for phase in party.phases)
    phases = [f"{name}: {listed(where)}" for name, where in named if len(where) > 1]
    return f"{said} {sentence('; '.join(phases))}".strip()


def _where(people: tuple[tuple[str, int], ...], seats: Mapping[str, int]) -> list[str]:
    """How many are at each place, and how many of them have no seat there."""
    standing = {place: count - seats.get(place, count) for place, count in people}
    return [
        f"{count} at the {place}" + (f" ({standing[place]} standing)" if standing[place] > 0 else "")
        for place, count in people
        if count
    ]


def _seen(option: Option, scenario: Scenario) -> str:
    eyes = [thing.name for thing in scenario.site.surroundings if thing.eye_z_ft is not None]
    if not eyes:
        return "Not known: the file names no window or terrace of a neighbour. Stand in each place and look round."
    seen = [f"from the {eye} {listed(rooms)}" for eye in eyes if (rooms := _seen_from(eye, option, scenario))]
    if not seen:
        return f"From the {listed(eyes)} hardly anything of the rooms is seen. Only what the file names was looked at."
    return f"{sentence('; '.join(seen))} Only what the file names was looked at."


def _seen_from(eye: str, option: Option, scenario: Scenario) -> list[str]:
    """Shares of the rooms that an eye sees, in words."""
    placed = placed_of(sized_rooms(scenario.brief), option.layout)
    shares = ((room.name, sight_share(scenario, placed, Relation((room.name, eye), "out_of_view"))) for room in placed)
    return [f"{_much(share)} the {name}" for name, share in shares if share is not None and share >= SEEN]


def _much(share: float) -> str:
    return "all of" if share > 1 - SEEN else f"{share_words(share)} of"


def _unknown(option: Option, scenario: Scenario, words: Words) -> str:
    cost = option.appraisal.cost
    ground = ("the soil", "lines in the ground that nobody drew: have them marked before digging")
    may_move = words.money(max(cost.high - cost.total, cost.total - cost.low))
    return f"{sentence(listed([*_gaps(scenario), *ground]))} Prices may move the total by {may_move}."


def _gaps(scenario: Scenario) -> Iterator[str]:
    """What the file does not say."""
    site = scenario.site
    if not site.levels:
        yield "the levels of the ground, so no steps, walls or drains are in it"
    if not site.utilities:
        yield "where gas, electricity, water and drains begin"
    if not site.trees:
        yield "whether there are trees whose roots or shade matter"
    if site.wind_from_deg is None and site.wind_rose is None:
        yield "where the wind comes from"


def _advice(option: Option, option_set: OptionSet, words: Words) -> str:
    first = option_set.concepts[0] if option_set.concepts else None
    if first is None or option.rank is None:
        return "A layout of your own is not ranked; compare it with the first concept."
    if first.id == option.id:
        reason = f"{option.reason[:1].lower()}{option.reason[1:].rstrip('.')}"
        return f"By the figures, this one: {words.signed(reason)}. Whoever knows you and the yard may say otherwise."
    more = words.money(max(0.0, option.score - first.score))
    costs = f"which counts {more} against it when money, walking, sun and the rest are added up"
    behind = costs if option.score > first.score else "although its sum of figures is no worse"
    return f"By the figures, {first.title}. This one is in place {option.rank}, {behind}."


def _time(option: Option, scenario: Scenario) -> str:
    there = (place.room for place in option.layout.placements if place.room not in option.left_out_rooms)
    rooms = (scenario.brief.room(name) for name in there)
    found = upkeep_of(room.kind for room in rooms if room is not None and room.phase == 1)
    service = f" Have looked at: {listed(found.service)}." if found.service else ""
    return (
        f"About {_span(found.weeks)} weeks on the site once work begins, without waiting for permits and weather. Each "
        f"year {_span(found.hours)} hours of care: {_tasks(found)}.{service} Planting beside the rooms comes on top. "
        "Common practice, not a promise."
    )


def _span(ends: tuple[float, float]) -> str:
    low, high = ends
    return f"{number_words(max(1, int(low)))} to {number_words(max(1, round(high + 0.49)))}"


def _tasks(found: Upkeep) -> str:
    return "; ".join(f"{kind}: {tasks}" for kind, tasks in found.tasks if tasks)
