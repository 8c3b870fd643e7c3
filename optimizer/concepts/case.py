"""A scenario with its sized rooms and prices, and what is measured of a layout in it."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cached_property
from typing import Any

from optimizer.appraisal import Appraisal, Cost, Given, appraise, outlooks, priced, uncertainty_of
from optimizer.brief import Relation, RuleId
from optimizer.catalogue import (
    PriceBook,
    SizedRoom,
    sized_rooms,
    worth_rate,
)
from optimizer.check import CHECKS, CheckCase, Finding, all_findings, first_findings, fits, seen_shares, wishes_missed
from optimizer.check.water_sites import equipment, held_for_later, later_water
from optimizer.concepts import (
    NOT_ASKED,
    LeftOut,
    Losses,
    Option,
    cautions_for,
    idea_of,
    losses_of,
    permits_for,
    remedies_for,
)
from optimizer.concepts.counted import not_included_caution, take_off_of
from optimizer.concepts.finish_levels import AtLevel, at_levels, book_of
from optimizer.concepts.phases import phase_cautions
from optimizer.concepts.waiting import waiting_cost
from optimizer.derived import Derived
from optimizer.layout import Layout, Placed, Placement, placed_of
from optimizer.scenario import Scenario


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the judge says of a layout: the hard rules that it breaks, or its exact figures and its losses in money.

    Of a layout that is refused the findings are those of the stage that refuses it; it is not measured unless that is
    asked for.
    """

    findings: tuple[Finding, ...]
    appraisal: Appraisal | None = None
    losses: Losses = ()
    at_levels: tuple[AtLevel, ...] = ()
    """What it costs in each finish level offered, where the case asks for it."""

    @property
    def holds(self) -> bool:
        """Whether no rule is broken."""
        return not self.findings

    @property
    def measured(self) -> Appraisal:
        """Exact figures of a layout that was measured."""
        assert self.appraisal is not None
        return self.appraisal

    @property
    def score(self) -> float:
        """Sum of the losses; infinite where nothing was measured."""
        return math.inf if self.appraisal is None else sum(loss for _, loss in self.losses)

    def phase_1(self, ceiling: Decimal) -> Decimal | None:
        """Exact cost of phase 1, judged under this ceiling; None of a layout that was refused unpriced."""
        if self.appraisal is not None:
            return self.appraisal.cost.phase(1)
        beyond = next((finding.amount for finding in self.findings if finding.rule == "budget"), None)
        return None if beyond is None else ceiling + Decimal(str(round(beyond, 2)))


@dataclass(frozen=True, eq=False)
class _Unjudged:
    """A layout before it is judged, with what follows from it and the prices that it is counted by."""

    derived: Derived
    book: PriceBook

    @cached_property
    def cost(self) -> Cost:
        """Its cost sheet, made when money is first asked for."""
        return priced(self.derived, self.book)

    @cached_property
    def case(self) -> CheckCase:
        """What the check is asked of."""
        return CheckCase(self.derived, price=self._phase)

    def _phase(self, phase: int) -> Decimal:
        return self.cost.phase(phase)


@dataclass(frozen=True)
class Case:
    """What every stage after reading needs."""

    scenario: Scenario
    rooms: tuple[SizedRoom, ...]
    book: PriceBook
    prices_levels: bool = False
    """Whether the judge prices what it measures in every finish level that the brief offers."""

    @classmethod
    def of(cls, scenario: Scenario) -> "Case":
        """Size the rooms and open the price book."""
        return cls(scenario, sized_rooms(scenario.brief), book_of(scenario))

    def at_level(self, name: str | None) -> "Case":
        """The case finished in another level that its brief offers; as it is for None."""
        if name is None:
            return self
        scenario = self.scenario.at_level(name)
        return replace(self, scenario=scenario, book=book_of(scenario))

    def built_at_once(self) -> "Case":
        """The case with nothing put into a later phase that need not be there: what a budget buys is built for it."""
        rooms = (replace(room, choices=tuple(c for c in room.choices if c.phase is None)) for room in self.rooms)
        return replace(self, rooms=tuple(rooms))

    @property
    def diagonal_ft(self) -> float:
        """Diagonal of the yard's bounding box [ft]."""
        xs, ys = zip(*self.scenario.site.boundary, strict=True)
        return math.hypot(max(xs) - min(xs), max(ys) - min(ys))

    def unknown(self, layout: Layout) -> tuple[Placement, ...]:
        """Placements of a layout whose room, or whose choice of it, the scenario has not."""
        rooms = {room.name: room for room in self.rooms}
        return tuple(p for p in layout.placements if p.room not in rooms or rooms[p.room].choice(p.choice) is None)

    def placed(self, layout: Layout) -> Placed:
        """The rooms of a layout where they stand."""
        return placed_of(self.rooms, layout)

    def judged(self, layout: Layout) -> Verdict:
        """Check a layout stage by stage, and measure and weigh it if it holds."""
        unjudged = self._unjudged(layout)
        findings = first_findings(unjudged.case)
        return Verdict(findings) if findings else self._measured(unjudged, findings)

    def findings(self, layout: Layout, rules: Iterable[RuleId] = CHECKS) -> tuple[Finding, ...]:
        """What a layout breaks of some rules, or of all."""
        case = self._unjudged(layout).case
        return tuple(finding for rule in rules for finding in CHECKS[rule](case))

    def water_findings(self, option: Option) -> tuple[Finding, ...]:
        """What is not so of later water that the option says it keeps room for, and of equipment by a barrier."""
        case = self._unjudged(option.layout).case
        kept = [(o.room, o.future, o.fit) for o in option.futures if o.fit.is_kept]
        later = (finding for room, future, fit in kept for finding in later_water(case, room, future, fit))
        return (*held_for_later(case), *equipment(case), *later)

    def fits(self, layout: Layout) -> bool:
        """Whether a layout keeps the rules of its places; ways, levels, sun, sight and money are not asked."""
        return fits(self._unjudged(layout).case)

    def in_full(self, layout: Layout) -> Verdict:
        """All rules that a layout breaks, and its figures and losses even so."""
        unjudged = self._unjudged(layout)
        return self._measured(unjudged, all_findings(unjudged.case))

    def _unjudged(self, layout: Layout) -> _Unjudged:
        return _Unjudged(Derived(self.scenario, self.placed(layout)), self.book)

    def _measured(self, unjudged: _Unjudged, findings: tuple[Finding, ...]) -> Verdict:
        derived, missed = unjudged.derived, wishes_missed(unjudged.case)
        appraisal = appraise(derived, self.book, Given(missed, seen_shares(unjudged.case), unjudged.cost))
        losses = self._losses(derived.placed, appraisal, missed)
        return Verdict(findings, appraisal, losses, at_levels(derived) if self.prices_levels else ())

    def _losses(self, placed: Placed, appraisal: Appraisal, missed: Sequence[Relation]) -> Losses:
        return losses_of(
            self.scenario,
            self.rooms,
            appraisal,
            left_out=placed.absent,
            worth_rate=worth_rate(self.scenario.brief.budget.ceiling, self.rooms),
            wish_weights=sum(relation.wish or 0.0 for relation in missed),
            waiting_cost=waiting_cost(placed.layout, appraisal.cost, self.book),
        )

    def left_out(self, layout: Layout) -> tuple[LeftOut, ...]:
        """Wished rooms that the layout does without; why is asked of what is shown alone."""
        left_out = self.placed(layout).left_out
        return tuple(LeftOut(room.name, NOT_ASKED) for room in self.rooms if room.name in left_out)

    def described(self, layout: Layout, verdict: Verdict) -> Option:
        """A measured layout as an option, without rank, reason and proof, and without what `advised` adds."""
        return Option(
            id="",
            rank=None,
            reason="",
            layout=layout,
            left_out=self.left_out(layout),
            proof=None,
            differs_by=None,
            cautions=(),
            **self._said_of(layout, verdict),
        )

    def fresh(self, option: Option) -> Option:
        """Check and measure the option's layout anew."""
        return replace(option, **self._said_of(option.layout, self.in_full(option.layout)))

    def _said_of(self, layout: Layout, verdict: Verdict) -> dict[str, Any]:
        """Fields of an option that follow from its layout and its exact figures."""
        placed, appraisal = self.placed(layout), verdict.measured
        return {
            "appraisal": appraisal,
            "losses": verdict.losses,
            "score": verdict.score,
            "findings": verdict.findings,
            "idea": idea_of(self.scenario, placed.without(*(r.name for r in placed if r.is_later)), appraisal),
            "level": self.scenario.brief.finish_level,
        }

    def advised(self, option: Option) -> Option:
        """The option with its cautions, permits, what could be added to it and what may come later: all of it takes a
        while, so only for options that are shown.
        """
        placed, appraisal = self.placed(option.layout), option.appraisal
        derived = Derived(self.scenario, placed)
        counted, futures = take_off_of(derived, appraisal.cost, self.book), outlooks(derived, self.book)
        cautions = cautions_for(self.scenario, placed, appraisal.legs, appraisal.cost, futures)
        in_phases = phase_cautions(self.scenario, placed, appraisal.cost, self.book.currency)
        missing = not_included_caution(counted.not_included, self.book.currency)
        return replace(
            option,
            parts=counted.parts,
            not_included=counted.not_included,
            futures=futures,
            at_levels=at_levels(derived),
            cautions=(*cautions, *in_phases, *missing),
            uncertainty=uncertainty_of(appraisal.cost, self.scenario.brief.budget.ceiling),
            permits=permits_for(self.scenario, placed, appraisal),
            remedies=remedies_for(self.scenario, placed, self.book, appraisal),
        )
