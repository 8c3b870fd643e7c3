"""From a scenario and its sized rooms to the whole-number problem, rule by rule from the registry."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from typing import TYPE_CHECKING

import numpy as np
import shapely

from optimizer.brief import RuleId
from optimizer.catalogue import PriceBook, SizedRoom, fixed_price, rates, room_price
from optimizer.fields import FREE_PART, LINE_TOLERANCE_FT, site_edges
from optimizer.instance.context import Context, context_of
from optimizer.instance.estimates import runs_estimate, steps_estimate, ways_estimate
from optimizer.instance.instance import Instance, InstanceRoom
from optimizer.instance.lattice import Cells, any_in_window
from optimizer.instance.near_misses import near_miss_losses
from optimizer.instance.pairs import Pair
from optimizer.instance.party_needs import needs_of
from optimizer.instance.places import place_losses
from optimizer.instance.pulls import pulls_of
from optimizer.instance.reach import reach_grid
from optimizer.instance.root_rings import root_rings_of
from optimizer.instance.rules import PARTS, Limits, Part
from optimizer.instance.variants import Variant, variants_of
from optimizer.instance.wishes import with_wishes
from optimizer.scenario import Scenario

if TYPE_CHECKING:
    from collections.abc import Callable
    from decimal import Decimal

CENTS = 100
PAVED_SLACK_SQFT = 0.05


def build_instance(
    scenario: Scenario,
    rooms: tuple[SizedRoom, ...],
    book: PriceBook,
    *,
    without: frozenset[RuleId] = frozenset(),
) -> Instance:
    """The problem of a scenario. `without` leaves rules' parts out, which only tests do."""
    context = context_of(scenario, rooms)
    parts = [part for rule, part in PARTS.items() if rule not in without]
    limits = Limits()
    for part in parts:
        limits = part.limits(limits) if part.limits else limits
    built = tuple(_room(context, room, book, limits, parts) for room in rooms)
    return Instance(
        context=context,
        rooms=built,
        pairs=tuple(_pair(context, parts, a, b) for a, b in combinations(range(len(rooms)), 2)),
        pulls=pulls_of(context),
        lines_x=_lines(context, 0),
        lines_y=_lines(context, 1),
        order_rate=_order_rate(context, rates().order),
        spendable=_spendable(scenario, book) if limits.ceiling else None,
        ways_estimate=ways_estimate(context, built, book) + steps_estimate(context, built, book),
        reach=reach_grid(context) if limits.reachable else None,
        pavable_cells=_pavable_cells(context) if limits.paved else None,
        rings=root_rings_of(context) if limits.rings else (),
        needs=needs_of(context, built, table=limits.table, party=limits.party),
        disorder_rate=_order_rate(context, rates().disorder / FREE_PART),
        near_miss_rate=_order_rate(context, rates().near_miss),
    )


def _order_rate(context: Context, rate: float) -> int:
    """Cents for each step, at a rate in money for each foot."""
    return round(CENTS * rate * context.scenario.brief.weights.order * context.lattice.step_ft)


def worth_rate(scenario: Scenario, rooms: tuple[SizedRoom, ...]) -> float:
    """Money that one point of worth stands for: the ceiling shared out over all that is wished for."""
    total = sum(max(choice.worth for choice in room.choices) for room in rooms)
    ceiling = scenario.brief.budget.ceiling
    return float(ceiling) / total if ceiling and total else rates().worth_without_ceiling


def _room(context: Context, room: SizedRoom, book: PriceBook, limits: Limits, parts: list[Part]) -> InstanceRoom:
    variants = variants_of(room, context.lattice, proportion=limits.proportion, exact=limits.exact_sizes)
    weights = context.scenario.brief.weights
    point = CENTS * worth_rate(context.scenario, context.rooms) * weights.worth
    most = max(choice.worth for choice in room.choices)
    allowed = allowed_positions(context, room, variants, parts)
    return InstanceRoom(
        name=room.name,
        required=room.required and limits.required,
        walkable=room.rules.walkable,
        variants=tuple(
            _priced(
                context,
                room,
                variant,
                book,
                worth_lost=point * (most - room.choices[variant.choice].worth),
                runs=runs_estimate(context, room.choices[variant.choice], book, allowed),
            )
            for variant in variants
        ),
        allowed=allowed,
        losses=tuple(
            place_losses(context, room, variant, cells) for variant, cells in zip(variants, allowed, strict=True)
        ),
        absent_loss=round(point * most),
        near_misses=tuple(near_miss_losses(context, variant) for variant in variants),
    )


def allowed_positions(
    context: Context, room: SizedRoom, variants: Sequence[Variant], parts: Sequence[Part] = tuple(PARTS.values())
) -> tuple[Cells, ...]:
    """Where each variant may stand by the rules that bind it alone; one array a variant."""
    blocked = _blocked(context, room, parts)
    return tuple(_allowed(context, room, variant, blocked, parts) for variant in variants)


def _priced(
    context: Context, room: SizedRoom, variant: Variant, book: PriceBook, *, worth_lost: float, runs: int
) -> Variant:
    budget, weights = context.scenario.brief.budget, context.scenario.brief.weights
    price = room_price(room.choices[variant.choice], room, book) * (1 + budget.contingency)
    cents = int(price * CENTS)
    loss = round(weights.cost * rates().cost * cents + worth_lost)
    return replace(variant, cost=cents, likely_cost=cents + runs, loss=loss)


def _blocked(context: Context, room: SizedRoom, parts: Sequence[Part]) -> Cells:
    none = np.zeros((context.lattice.rows, context.lattice.columns), dtype=bool)
    cells = [part.cells(context, room) for part in parts if part.cells]
    return np.asarray(np.logical_or.reduce([none, *(c for c in cells if c is not None)]))


def _allowed(context: Context, room: SizedRoom, variant: Variant, blocked: Cells, parts: Sequence[Part]) -> Cells:
    allowed = ~any_in_window(blocked, width=variant.width, depth=variant.depth)
    for part in parts:
        fits = part.positions(context, room, variant) if part.positions else None
        allowed = allowed if fits is None else allowed & fits
    return allowed


def _pair(context: Context, parts: list[Part], first: int, second: int) -> Pair:
    rooms = context.rooms[first], context.rooms[second]
    open_ends = tuple(end for end in (0, 1) if rooms[end].rules.has_front and not rooms[1 - end].rules.walkable)
    pair = Pair(first, second, open_ends=open_ends)
    adders: list[Callable[[Context, Pair], Pair]] = [part.pair for part in parts if part.pair]
    for add in adders:
        pair = add(context, pair)
    return with_wishes(context, pair)


def _lines(context: Context, axis: int) -> tuple[int, ...]:
    """Grid lines on which an edge of a building or structure lies."""
    origin = (context.lattice.x0_ft, context.lattice.y0_ft)[axis]
    found = {
        context.lattice.line(edge.at_ft, origin_ft=origin, tolerance_ft=LINE_TOLERANCE_FT)
        for edge in site_edges(context.site)
        if edge.axis == axis
    }
    return tuple(sorted(line for line in found if line is not None))


def _pavable_cells(context: Context) -> int | None:
    """Cells that paved rooms may take by the site's limit, rounded so that what the check allows is allowed."""
    share = context.site.paved_share_limit
    if share is None:
        return None
    yard = context.boundary.difference(shapely.union_all(context.buildings))
    return int((share * yard.area + PAVED_SLACK_SQFT) / context.lattice.step_ft**2)


def _spendable(scenario: Scenario, book: PriceBook) -> int | None:
    budget = scenario.brief.budget
    if budget.ceiling is None:
        return None
    fixed: Decimal = fixed_price(scenario.brief, book) * (1 + budget.contingency)
    return int((budget.ceiling - fixed) * CENTS)
