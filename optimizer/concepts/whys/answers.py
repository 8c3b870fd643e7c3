"""What an answer is, and the sentences that it is made of."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from optimizer.concepts.case import Case
from optimizer.concepts.option import Option, WayOut
from optimizer.concepts.reasons import Teller
from optimizer.concepts.whys.nothing import Told
from optimizer.concepts.whys.stands import Stand
from optimizer.concepts.whys.trying import Found
from optimizer.concepts.whys.words import above_ceiling, money, place
from optimizer.concepts.words import listed

SAME_MONEY: Final = 100
"""Less than so much more or less is not told."""


@dataclass(frozen=True, slots=True)
class Answer:
    """`rules` are those that stand against it, from which none can be dropped; each way out was solved and judged.

    `is_answered` is False where the time ended before it was known whether it can be.
    """

    question: str
    answer: str
    rules: tuple[Told, ...] = ()
    ways_out: tuple[WayOut, ...] = ()
    is_answered: bool = True


def it_costs(case: Case, found: Found, option: Option | None) -> str:
    """What a plan costs, and what it changes; without a concept to compare with, what it is."""
    ceiling, cost = case.scenario.brief.budget.ceiling, money(case.scenario, found.cost)
    under = "" if ceiling is None else f" (the ceiling is {money(case.scenario, ceiling)})"
    told = f"for {cost}{under}."
    return f"{told} {_alone(case, found) if option is None else _against(case, found, option)}".rstrip()


def _alone(case: Case, found: Found) -> str:
    """The sizes of a plan, and what it does without."""
    several = {room.name for room in case.rooms if len(room.sizes) > 1}
    sizes = [f"the {p.room} as {p.choice}" for p in found.layout.placements if p.room in several and not p.is_later]
    absent = case.placed(found.layout).left_out
    lacking = [f"the {room.name}" for room in case.rooms if room.name in absent]
    told = f"It has {listed(sizes)}." if sizes else ""
    return f"{told} It does without {listed(lacking)}." if lacking else told


def _against(case: Case, found: Found, option: Option) -> str:
    """What a plan costs, is worth and changes, seen from a concept."""
    scenario = case.scenario
    dearer = found.cost - option.appraisal.cost.phase(1)
    worse = found.verdict.score - option.score
    parts = []
    if abs(dearer) >= SAME_MONEY:
        parts.append(f"costs {money(scenario, abs(dearer))} {'more' if dearer > 0 else 'less'}")
    if abs(worse) >= SAME_MONEY:
        amount = f"{abs(worse):,.0f} {scenario.currency}"
        parts.append(f"comes out {amount} {'worse' if worse > 0 else 'better'} when everything is counted")
    told = f"Against {option.title.lower()} it {' and '.join(parts) or 'costs about the same'}"
    changes = Teller(scenario, case.book.currency).difference(found.layout, option.layout)
    return f"{told}. What changes: {changes}."


def stands_there(case: Case, stand: Stand, found: Found, option: Option) -> str:
    """That the room can stand there with all others where they are."""
    cost = money(case.scenario, found.cost)
    told = f"In {option.title.lower()}, with all other rooms where they are, it can stand there"
    told += f" as {stand.placement.choice}, opening to {stand.placement.front}; the plan then costs {cost}."
    return f"{told} {_against(case, found, option)}"


def cannot_stand(stand: Stand, option: Option | None) -> str:
    """What the room breaks there, with all other rooms where they are or wherever they are."""
    broken = "; ".join(dict.fromkeys(finding.words for finding in stand.findings))
    if option is None:
        return f"It cannot stand there, wherever the other rooms are: {broken}."
    return f"In {option.title.lower()}, with all other rooms where they are, it cannot stand there: {broken}."


def cannot_be(asked: Case, rules: Sequence[Told], *, is_least: bool) -> str:
    """That nothing fits with it, and what cannot be kept together."""
    if (dearer := above_ceiling(asked)) is not None:
        return f"It cannot be: with it, {dearer}."
    end = "" if is_least else " Time ended before it was known whether less than this is in the way."
    if len(rules) == 1:
        return f"It cannot be, because of one rule: {rules[0][1]}{end}"
    sentences = "; ".join(sentence.removesuffix(".") for _, sentence, _ in rules)
    return f"It cannot be: no layout of this yard keeps all of this together with it: {sentences}.{end}"


def unknown(refused: Sequence[Told]) -> str:
    """That none was found and none ruled out; and what was broken most often, with the rooms that broke it."""
    told = "No plan with it was found in this time, and none is ruled out."
    named = "; ".join(_named(sentence.removesuffix("."), rooms) for _, sentence, rooms in refused)
    return f"{told} What the plans that were tried broke most often: {named}." if refused else told


def above_the_ceiling(case: Case, found: Sequence[Found]) -> str:
    """What the cheapest plan costs of those found, where all of them pass the ceiling; nothing is proven by it."""
    ceiling, cost = case.scenario.brief.budget.ceiling, min(one.cost for one in found)
    if ceiling is None or cost <= ceiling:
        return ""
    more = f"{money(case.scenario, cost)}, {money(case.scenario, cost - ceiling)} above the ceiling"
    return f"The cheapest plan with it that was found costs {more}. That none is cheaper is not proven."


def _named(words: str, rooms: Sequence[str]) -> str:
    """A rule with the rooms that broke it, where it does not name them itself."""
    is_named = all(room.lower() in words.lower() for room in rooms)
    return words if is_named else f"{words} ({listed(rooms)})"


def elsewhere(case: Case, at_ft: tuple[float, float], room: str) -> str:
    """Where the nearest place is."""
    return f"The nearest place that was found for the {room} is {place(case.scenario, at_ft)}."
