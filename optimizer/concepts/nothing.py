"""Why nothing fits, found by letting go of one thing at a time; and ways out, each tried before it is offered."""

import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import get_args

from optimizer.brief import RULES, Guests, Relation, RelationKind, RuleId
from optimizer.catalogue import party_is_held
from optimizer.concepts.case import Case
from optimizer.concepts.floor import floor_price
from optimizer.concepts.held import hold_words, why_not_held
from optimizer.concepts.option import Conflict, WayOut
from optimizer.engine.explorer import Explorer, board_of
from optimizer.engine.portfolio import Purse, first_tours
from optimizer.engine.problem import Problem, build_problem, layout_of
from optimizer.engine.prover import anything_fits
from optimizer.engine.rules import PARTS
from optimizer.scenario import Scenario

MOST_WAYS_OUT = 4
ABOVE_THE_FLOOR = (Decimal("1.1"), Decimal("1.25"), Decimal("1.5"))
"""Ceilings to try, as shares of the floor: ways and runs are in no floor."""
Broken = tuple[str, str, tuple[str, ...]]
"""A rule that would have to give: its id, its sentence, and the rooms it binds."""
OF_THE_YARD: tuple[RuleId, ...] = (
    *(rule for rule, part in PARTS.items() if (part.kept_off or part.positions) and rule not in get_args(RelationKind)),
    "proportion",
    "paved_share",
)
"""Rules that bind a room by itself; relations are let go one by one instead."""


@dataclass(frozen=True, slots=True)
class Release:
    """A change of the scenario that lets go of one thing, and the rule that it eases."""

    rule: RuleId
    rooms: tuple[str, ...]
    way_out: WayOut
    scenario: Scenario


def why_nothing(case: Case, problem: Problem, *, seconds: float, stop: threading.Event) -> Conflict:
    """Rules of which one must give, and changes with which concepts were really found."""
    until = time.monotonic() + seconds
    helpful: list[Release] = []
    placeless = placeless_rooms(problem)
    # What binds a room that fits nowhere comes first, a hold before all: nothing else would help.
    for release in sorted(releases(case), key=lambda r: (set(placeless).isdisjoint(r.rooms), r.rule != "held")):
        told = release.rule == "budget" and any(other.rule == "budget" for other in helpful)
        if not told and not _late(until, stop) and _gives_concepts(release, stop):
            helpful.append(release)
    rules: list[Broken] = [(r.rule, RULES[r.rule].sentence, r.rooms) for r in helpful if r.rule != "required_rooms"]
    rules += _more_paved_than_allowed(problem)
    rules += [
        (rule, RULES[rule].sentence, tuple(placeless))
        for rule in OF_THE_YARD
        if rule not in {told for told, _, _ in rules} and not _late(until, stop) and _fits_without(case, rule, stop)
    ]
    ways_out = tuple(release.way_out for release in helpful[:MOST_WAYS_OUT])
    words = _words(case, placeless, rules, all_tried=not _late(until, stop))
    return Conflict(tuple(dict.fromkeys(rules)), words, ways_out)


def placeless_rooms(problem: Problem) -> list[str]:
    """Names of the required rooms that may stand nowhere, whatever the others do."""
    return [room.name for room in problem.rooms if room.required and not any(c.any() for c in room.allowed)]


def releases(case: Case) -> Iterator[Release]:
    """Changes to try: a higher ceiling, each hard relation let go, each required room left to choice, fewer guests."""
    brief = case.scenario.brief
    if brief.budget.ceiling is not None and floor_price(case) > brief.budget.ceiling:
        required = tuple(room.name for room in case.rooms if room.required)
        for share in ABOVE_THE_FLOOR:
            ceiling = (floor_price(case) * share).quantize(Decimal(1))
            way_out = WayOut(
                f"raise the ceiling to {ceiling:,} {case.scenario.currency}",
                (("replace", "/budget/ceiling", int(ceiling)),),
            )
            budget = replace(brief.budget, ceiling=ceiling)
            yield Release("budget", required, way_out, _with(case.scenario, budget=budget))
    for index, relation in enumerate(brief.relations):
        if relation.is_hard:
            kept = (*brief.relations[:index], *brief.relations[index + 1 :])
            way_out = WayOut(f"leave out: {_named(relation)}", (("remove", f"/brief/relations/{index}", None),))
            yield Release(relation.kind, relation.between, way_out, _with(case.scenario, relations=kept))
    for index, hold in enumerate(brief.holds):
        kept_holds = (*brief.holds[:index], *brief.holds[index + 1 :])
        way_out = WayOut(f"let go of the hold: {hold_words(case, hold)}", (("remove", f"/brief/holds/{index}", None),))
        yield Release("held", (hold.room,), way_out, _with(case.scenario, holds=kept_holds))
    for index, room in enumerate(brief.rooms):
        if room.required:
            yield _left_to_choice(case, index)
    yield from _smaller_party(case)


def _smaller_party(case: Case) -> Iterator[Release]:
    """A party of no more than the everyday guests, where the one that was asked for binds."""
    guests = case.scenario.brief.guests
    if guests.party > guests.everyday and party_is_held(case.rooms, guests):
        smaller = replace(guests, party=guests.everyday)
        way_out = WayOut(f"plan for a party of {smaller.party}", (_party_of(smaller),))
        yield Release("party_seats", (), way_out, _with(case.scenario, guests=smaller))


def _left_to_choice(case: Case, index: int) -> Release:
    """A required room left to choice, with as much of the party as the other rooms hold without it."""
    brief, room = case.scenario.brief, case.scenario.brief.rooms[index]
    rooms = (*brief.rooms[:index], replace(room, required=False), *brief.rooms[index + 1 :])
    words = f"leave the {room.name} to choice"
    patch: list[tuple[str, str, object]] = [("replace", f"/brief/rooms/{index}/required", False)]
    others = [sized for sized in case.rooms if sized.name != room.name]
    guests = brief.guests
    if party_is_held(case.rooms, guests) and not party_is_held(others, guests):
        parties = (replace(guests, party=people) for people in range(guests.party, -1, -1))
        guests = next(smaller for smaller in parties if party_is_held(others, smaller))
        words += f", and plan for a party of {guests.party}"
        patch.append(_party_of(guests))
    scenario = _with(case.scenario, rooms=rooms, guests=guests)
    return Release("required_rooms", (room.name,), WayOut(words, tuple(patch)), scenario)


def _party_of(guests: Guests) -> tuple[str, str, object]:
    return ("replace", "/brief/guests/party", guests.party)


def _gives_concepts(release: Release, stop: threading.Event) -> bool:
    """Whether at least one room is placed, and reality agrees, once this is let go."""
    case = Case.of(release.scenario)
    problem = build_problem(case.scenario, case.rooms, case.book)
    explorer = Explorer(board_of(problem))
    seed = case.scenario.brief.options.seed
    for tour in first_tours(seed, (), Purse(problem).set_aside(0)):  # as a run of it begins
        explorer.run(tour, stop=stop)
    for _, state in explorer.pool.ranked():
        if stop.is_set():
            return False
        if any(state) and not case.judged(layout_of(problem, state)).findings:
            return True
    return False


def _more_paved_than_allowed(problem: Problem) -> Iterator[Broken]:
    """The paved share, where the required rooms alone pave more than it allows: known without asking the solver."""
    paved = next((amount for amount in problem.amounts if amount.rule == "paved_share"), None)
    required = [index for index, room in enumerate(problem.rooms) if room.required]
    if paved is not None and paved.most is not None:
        needed = sum(paved.range_of(index)[0] for index in required)
        if needed > paved.most:
            yield "paved_share", RULES["paved_share"].sentence, tuple(problem.rooms[index].name for index in required)


def _fits_without(case: Case, rule: RuleId, stop: threading.Event) -> bool:
    problem = build_problem(case.scenario, case.rooms, case.book, without=frozenset({rule}))
    return anything_fits(problem, seconds=2.0, stop=stop).state is not None


def _words(case: Case, placeless: list[str], rules: list[Broken], *, all_tried: bool) -> str:
    ceiling, floor = case.scenario.brief.budget.ceiling, floor_price(case)
    reasons = [why_not_held(case, name) or _fits_nowhere(case, name) for name in placeless]
    if ceiling is not None and floor > ceiling:
        reasons.append(
            f"What is required, including seats for the guests, costs at least {floor:,.0f} {case.scenario.currency} "
            f"with the fixed work; the ceiling is {ceiling:,.0f} {case.scenario.currency}."
        )
    if reasons:
        return " ".join(reasons)
    if rules:
        return "The required rooms cannot all stand in this yard; one of these rules would have to give."
    if not all_tried:
        return "The required rooms cannot all stand in this yard; which rule is to blame takes longer to find out."
    return "The required rooms cannot all stand in this yard, and no single rule is to blame."


def _fits_nowhere(case: Case, name: str) -> str:
    where = "as it is held" if case.scenario.brief.holds_of(name) else "in this yard"
    return f"The {name} fits nowhere {where}, whatever the other rooms do."


def _with(scenario: Scenario, **changes: object) -> Scenario:
    return replace(scenario, brief=replace(scenario.brief, **changes))  # type: ignore[arg-type]


def _named(relation: Relation) -> str:
    return f"{relation.between[0]} {relation.kind.replace('_', ' ')} {relation.between[1]}"


def _late(until: float, stop: threading.Event) -> bool:
    return stop.is_set() or time.monotonic() > until
