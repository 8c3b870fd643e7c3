"""What may come later, future by future: whether it fits and comes in, what to prepare now, and when that pays."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from optimizer.appraisal.cost import cost_of
from optimizer.appraisal.cost_sheet import CostLine
from optimizer.appraisal.way_in import CRANE
from optimizer.brief import Budget, Later
from optimizer.catalogue import Charge, FutureKind, LaterRates, PriceBook, charge, future_kind, later, to_cents
from optimizer.derived import Access, Derived, Fit, FutureSite
from optimizer.layout import Placed, PlacedRoom, shared_edge_ft
from optimizer.quantities import RETURN, nearest_start, run_ft
from optimizer.site import Site

_PUT_BACK: Final = {
    "lawn": "lawn repair",
    "gravel": "gravel put back",
    "bed": "bed put back",
    "pavers": "pavers put back",
}
_WAY_IN: Final = frozenset({*_PUT_BACK.values(), CRANE})


@dataclass(frozen=True, slots=True)
class NowOrLater:
    """Money for one future at today's prices, contingency included.

    `now` prepares for it in phase 1, beside sleeves, panel space and gas size, which are paid in any case;
    `later_with` and `later_without` are what the later phase then costs. `pays_above` is the chance of ever building it
    above which preparing pays, None where it never does. `prepare` and `later` are the lines, those of the later phase
    as if it were built on open ground. What is built in it has a share for coming back, prepared or not.
    """

    now: Decimal
    later_with: Decimal
    later_without: Decimal
    pays_above: float | None
    prepare: tuple[CostLine, ...] = ()
    later: tuple[CostLine, ...] = ()

    @property
    def way_in(self) -> tuple[str, ...]:
        """What its way in asks for beside it, by item: a crane, and ground that is put back."""
        return tuple(line.item for line in self.later if line.item in _WAY_IN)

    @property
    def way_in_cost(self) -> Decimal:
        """What that costs, with its share for coming back and of every step."""
        own = sum((line.amount for line in self.later if line.item in _WAY_IN), Decimal(0))
        work = sum((line.amount for line in self.later if not line.is_step and line.item != RETURN), Decimal(0))
        return to_cents(sum((line.amount for line in self.later), Decimal(0)) * own / work) if own else own


@dataclass(frozen=True, slots=True)
class Outlook:
    """One future of a reserve. `is_open`: it fits, and something that drives brings it in; `is_shut_off`: surely
    nothing that drives does, which the score counts.
    """

    room: str
    future: str
    is_open: bool
    fit: Fit
    access: Access
    money: NowOrLater
    is_shut_off: bool = False


def outlooks(derived: Derived, book: PriceBook) -> tuple[Outlook, ...]:
    """Every future of every reserve of a layout."""
    return tuple(
        Outlook(
            room=site.room,
            future=site.future,
            is_open=site.is_possible,
            fit=site.fit,
            access=site.access,
            money=_money(derived, site, book),
            is_shut_off=(site.room, site.future) in derived.shut_off,
        )
        for site in derived.futures
    )


def pays_above(now: Decimal, saved: Decimal, rates: LaterRates) -> float | None:
    """Chance of ever building a future above which it pays to prepare for it.

    Preparing costs `now` for certain and saves `saved` at today's prices with the chance p, after some years: it pays
    if now < p x saved x ((1 + escalation) / (1 + discount)) ^ years, so above p = now / (saved x that share). None
    where p is more than 1.
    """
    worth = float(saved) * rates.present_share
    if worth <= 0 or float(now) > worth:
        return None
    return round(float(now) / worth, 4)


def later_rates(budget: Budget, phase: int) -> LaterRates:
    """Rates until a phase: years, for each phase after the first, and escalation as the scenario has them, where it has
    more than none; the usual ones else.
    """
    usual, given = later(), budget.later
    years = float(given.years) * (phase - 1) if given.years else usual.years
    return replace(usual, years=years, escalation=float(given.escalation) if given.escalation else usual.escalation)


def _money(derived: Derived, site: FutureSite, book: PriceBook) -> NowOrLater:
    """Now and later. The future's own price holds its runs and the base under its deck, laid on open ground."""
    placed, future = derived.placed.once, future_kind(site.future)
    room = placed.of(site.room)
    assert room is not None
    budget = _at_todays_prices(derived.scenario.brief.budget)
    held, edge = tuple(_held_in_price(derived.site, room, future)), tuple(_edge(placed, room, future))
    now, coming = cost_of((*held, *edge), book, budget), cost_of(tuple(_coming(room, site, book)), book, budget)
    trench = cost_of(tuple(_trench(held, room)), book, budget).total
    # Builders come back for all that the later phase builds: what is there by then is taken off with its share of that.
    back, phase = 1 + book.of(RETURN).price, max(2, room.phase)
    later_with = coming.total - to_cents(cost_of(held, book, budget).total * back)
    saved = to_cents((now.total * Decimal(str(1 + later().dearer)) + trench) * back)
    return NowOrLater(
        now=now.total,
        later_with=later_with,
        later_without=later_with + saved,
        pays_above=pays_above(now.total, saved, later_rates(derived.scenario.brief.budget, phase)),
        prepare=now.lines,
        later=coming.lines,
    )


def _at_todays_prices(budget: Budget) -> Budget:
    """The stated steps without the rise until a later phase, which the chance above which preparing pays has in it."""
    return replace(budget, later=Later())


def _held_in_price(site: Site, room: PlacedRoom, future: FutureKind) -> Iterator[Charge]:
    """Runs to the held ground, and the base under the deck: what a builder does anyway, sooner or later."""
    for supply in future.runs:
        if start := nearest_start(site, supply, room.placement):
            yield charge(phase=1, room=room.name, item=f"{supply} run", amount=run_ft(start, room.placement))
    (wide, deep), (long, short) = future.needs_ft, future.body_ft
    yield charge(phase=1, room=room.name, item="base under later deck", amount=wide * deep - long * short)


def _edge(placed: Placed, room: PlacedRoom, future: FutureKind) -> Iterator[Charge]:
    """Footing along paving of phase 1 beside which somebody will dig."""
    beside = [other for other in placed.paved if other.phase == 1 and other.name != room.name]
    edge_ft = sum(shared_edge_ft(room.placement, other.placement) for other in beside)
    if future.is_dug and edge_ft:
        yield charge(phase=1, room=room.name, item="footing for later", amount=edge_ft)


def _coming(room: PlacedRoom, site: FutureSite, book: PriceBook) -> Iterator[Charge]:
    """The future itself, coming back for it, and what is put back on its way in; a crane where nothing drives in."""
    phase, item = max(2, room.phase), future_kind(site.future).item
    amounts = {item: 1.0} | {_PUT_BACK[surface]: area_sqft for surface, area_sqft in site.access.crosses}
    if not site.access.is_found:
        amounts[CRANE] = 1.0
    amounts[RETURN] = sum(amount * float(book.of(of).price) for of, amount in amounts.items())
    for item, amount in amounts.items():
        yield charge(phase=phase, room=room.name, item=item, amount=amount)


def _trench(held: Sequence[Charge], room: PlacedRoom) -> Iterator[Charge]:
    """One trench through the finished yard for all runs, as long as the longest."""
    lengths = [float(line.quantity) for line in held if line.item.endswith(" run")]
    if lengths:
        yield charge(phase=1, room=room.name, item="trench reopened", amount=max(lengths))
