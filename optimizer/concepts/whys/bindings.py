"""What binds layouts of a yard, one thing at a time: each can be let go, to see whether anything fits without it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, get_args

import numpy as np

from optimizer.brief import RULES, Hold, Relation, RelationKind, RuleId
from optimizer.concepts.case import Case
from optimizer.concepts.held import hold_words
from optimizer.concepts.whys.words import relation_words, sentence
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.problem import Problem, build_problem
from optimizer.engine.rules import PARTS

OF_THE_SET: Final[tuple[RuleId, ...]] = ("budget", "paved_share", "party_seats", "everyday_table")
"""Rules on sums over all rooms."""
GUESTS: Final[tuple[RuleId, ...]] = ("party_seats", "everyday_table")
"""Those of them for which rooms may be needed that could be left out."""
_BETWEEN: Final[tuple[RuleId, ...]] = ("no_overlap", "no_slivers")
OF_PLACES: Final[tuple[RuleId, ...]] = (
    *(
        rule
        for rule, part in PARTS.items()
        if (part.sizes or part.kept_off or part.positions or part.contact or part.conditions or rule == "root_ring")
        and rule not in {*get_args(RelationKind), *OF_THE_SET, *_BETWEEN, "held", "known_choice"}
    ),
    *_BETWEEN,
)
"""Rules of the yard that the solver knows, those that say least to an owner last; a room's size cannot be let go."""
_ANY_DISTANCE_FT: Final = 10_000.0


@dataclass(frozen=True, slots=True)
class Binding:
    """One thing that binds: a rule, what it says here, and the rooms that it speaks of, empty for all.

    At most one of `relation`, `hold` and `required` is the part of the brief that it is; none for a rule of the yard.
    `is_asked`: it is what was asked for, which is never let go.
    """

    rule: RuleId
    sentence: str
    rooms: tuple[str, ...] = ()
    relation: Relation | None = None
    hold: Hold | None = None
    required: str | None = None
    is_asked: bool = False

    @property
    def is_of_the_yard(self) -> bool:
        """Whether it is a rule that binds every room."""
        return self.relation is None and self.hold is None and self.required is None


@dataclass(frozen=True, slots=True)
class Asked:
    """What a question itself asks for: holds, names of rooms that must be there, rules of the yard."""

    holds: tuple[Hold, ...] = ()
    rooms: tuple[str, ...] = ()
    rules: tuple[RuleId, ...] = ()

    def has(self, one: Binding) -> bool:
        """Whether it is a thing that was asked for."""
        if one.is_of_the_yard:
            return one.rule in self.rules
        return one.hold in self.holds or one.required in self.rooms


NOTHING_ASKED: Final = Asked()


def bindings_of(case: Case, *, asked: Asked = NOTHING_ASKED) -> tuple[Binding, ...]:
    """All that binds in a case, each marked that was asked for."""
    found = (*_required(case), *_holds(case), *_relations(case), *_rules(OF_PLACES), *_rules(OF_THE_SET))
    return tuple(replace(one, is_asked=asked.has(one)) for one in found)


def problem_of(case: Case, kept: Sequence[Binding]) -> Problem:
    """The problem in which nothing binds but what is kept, without any loss.

    Rooms that may be left out are not in it where neither the guests nor what is kept asks for them.
    """
    brief, rules = case.scenario.brief, {one.rule for one in kept if one.is_of_the_yard}
    relations, holds = ({getattr(one, part) for one in kept} for part in ("relation", "hold"))
    required = {one.required for one in kept}
    changed = replace(
        brief,
        relations=tuple(r if not r.is_hard or r in relations else _let_go(r) for r in brief.relations),
        holds=tuple(hold for hold in brief.holds if hold in holds),
    )
    rooms = tuple(replace(room, required=room.name in required) for room in case.rooms)
    if rules.isdisjoint(GUESTS):
        rooms = tuple(room for room in rooms if room.required)
    without = frozenset({*OF_PLACES, *OF_THE_SET} - rules)
    problem = build_problem(replace(case.scenario, brief=changed), rooms, case.book, without=without, rules_only=True)
    if all(one.required or one.rule in OF_THE_SET for one in kept):
        problem = _in_one_place(problem)
    # Two rooms between which nothing is asked would only keep the solver busy.
    return replace(problem, pairs=tuple(pair for pair in problem.pairs if pair.contact.binds or pair.stamps))


def _in_one_place(problem: Problem) -> Problem:
    """The problem with one place for each variant: where nothing is asked of places the solver shall not try them."""

    def first(allowed: Cells) -> Cells:
        kept = np.zeros_like(allowed)
        kept.flat[np.flatnonzero(allowed)[:1]] = True
        return kept

    rooms = (replace(room, allowed=tuple(map(first, room.allowed))) for room in problem.rooms)
    return replace(problem, rooms=tuple(rooms))


def _required(case: Case) -> Iterator[Binding]:
    for room in case.rooms:
        if room.required:
            yield Binding("required_rooms", f"The {room.name} must be there.", (room.name,), required=room.name)


def _holds(case: Case) -> Iterator[Binding]:
    for hold in case.scenario.brief.holds:
        yield Binding("held", f"Held: {hold_words(case, hold)}.", (hold.room,), hold=hold)


def _relations(case: Case) -> Iterator[Binding]:
    for relation in case.scenario.brief.relations:
        if relation.is_hard and relation.kind != "accessible":
            words = sentence(relation_words(case.scenario, relation))
            yield Binding(relation.kind, words, relation.between, relation=relation)


def _rules(rules: Sequence[RuleId]) -> Iterator[Binding]:
    yield from (Binding(rule, RULES[rule].sentence) for rule in rules)


def _let_go(relation: Relation) -> Relation:
    """The relation so that it asks for nothing. A distance stays a distance: without any, a usual one would be asked
    for in its place, and less would be allowed, not more.
    """
    if relation.kind == "near":
        return replace(relation, within_ft=_ANY_DISTANCE_FT, by="straight")
    return replace(relation, wish=1.0)
