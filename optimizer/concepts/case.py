"""A scenario with its sized rooms and prices, and what is measured of a layout in it."""

import math
from dataclasses import dataclass, replace

from optimizer.appraisal import Appraisal, Given, appraise, sun_of
from optimizer.catalogue import PriceBook, SizedRoom, book_for, finished_book, room_price, sized_rooms, worth_rate
from optimizer.check import Finding, check_layout, seen_shares, wishes_missed
from optimizer.circulation import Ways, ways
from optimizer.concepts import LeftOut, Losses, Option, cautions_for, losses_of, permits_for, remedies_for
from optimizer.layout import Layout, Placed, placed_of
from optimizer.scenario import Scenario


@dataclass(frozen=True, slots=True)
class Judgement:
    """The word of reality on a layout: its exact figures, its losses by name in money, and the hard rules it breaks."""

    appraisal: Appraisal
    losses: Losses
    findings: tuple[Finding, ...]

    @property
    def score(self) -> float:
        """Sum of the losses."""
        return sum(loss for _, loss in self.losses)


@dataclass(frozen=True)
class Case:
    """What every stage after reading needs."""

    scenario: Scenario
    rooms: tuple[SizedRoom, ...]
    book: PriceBook

    @classmethod
    def of(cls, scenario: Scenario) -> "Case":
        """Size the rooms and open the price book."""
        book = finished_book(book_for(scenario.currency), scenario.brief.finish)
        return cls(scenario, sized_rooms(scenario.brief), book)

    @property
    def diagonal_ft(self) -> float:
        """Diagonal of the yard's bounding box [ft]."""
        xs, ys = zip(*self.scenario.site.boundary, strict=True)
        return math.hypot(max(xs) - min(xs), max(ys) - min(ys))

    def placed(self, layout: Layout) -> Placed:
        """The rooms of a layout where they stand."""
        return placed_of(self.rooms, layout)

    def judged(self, layout: Layout) -> "Judgement":
        """Measure, weigh and check a layout; its ways are laid once for all three."""
        placed = self.placed(layout)
        laid = ways(self.scenario.site, self.scenario.brief, placed)
        appraisal, losses = self._weighed(placed, laid)
        findings = check_layout(self.scenario, placed, phase_1_cost=appraisal.cost.phase(1), laid=laid)
        return Judgement(appraisal, losses, findings)

    def _weighed(self, placed: Placed, laid: Ways) -> tuple[Appraisal, Losses]:
        """Exact figures of a layout, and its losses by name in money."""
        missed = wishes_missed(self.scenario, placed, laid=laid)
        sun_h = sun_of(self.scenario, placed)
        seen = seen_shares(self.scenario, placed)
        given = Given(sun_h=sun_h, missed=missed, seen=seen, laid=laid)
        appraisal = appraise(self.scenario, placed, self.book, given)
        losses = losses_of(
            self.scenario,
            self.rooms,
            appraisal,
            worth_rate=worth_rate(self.scenario.brief.budget.ceiling, self.rooms),
            wish_weights=sum(relation.wish or 0.0 for relation in missed),
        )
        return appraisal, losses

    def left_out(self, layout: Layout, appraisal: Appraisal) -> tuple[LeftOut, ...]:
        """Wished rooms that the layout does without, each with the reason."""
        left_out = self.placed(layout).left_out
        return tuple(LeftOut(room.name, self._why(room, appraisal)) for room in self.rooms if room.name in left_out)

    def fresh(self, option: Option) -> Option:
        """Check and measure the option's layout anew."""
        judgement, placed = self.judged(option.layout), self.placed(option.layout)
        return replace(
            option,
            appraisal=judgement.appraisal,
            losses=judgement.losses,
            score=judgement.score,
            findings=judgement.findings,
            cautions=cautions_for(self.scenario, placed),
            permits=permits_for(self.scenario, placed, judgement.appraisal),
        )

    def with_remedies(self, option: Option) -> Option:
        """The option with what could be added to it; sight is looked at closely, so only for options that are shown."""
        found = remedies_for(self.scenario, self.placed(option.layout), self.book, option.appraisal)
        return replace(option, remedies=found)

    def _why(self, room: SizedRoom, appraisal: Appraisal) -> str:
        budget = self.scenario.brief.budget
        least = min(room_price(choice, room, self.book) for choice in room.choices) * (1 + budget.contingency)
        if budget.ceiling is not None and appraisal.cost.phase(1) + least > budget.ceiling:
            return f"at least {least:,.0f} {self.book.currency} more would pass the ceiling"
        return "it costs more than it is worth here, or finds no place beside the others"
