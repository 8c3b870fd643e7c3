"""From a scenario and its sized rooms to the whole-number problem: every rule and every term from its registry."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations

import numpy as np

from optimizer.brief import RuleId
from optimizer.catalogue import PriceBook, SizedRoom
from optimizer.engine.grid.context import Context, context_of
from optimizer.engine.grid.held import held_variant
from optimizer.engine.grid.kept_off import KeptOff, on_any
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.root_rings import root_rings_of
from optimizer.engine.grid.variants import Variant, variants_of
from optimizer.engine.pairs import Ask, Contact, Penalty
from optimizer.engine.pairs.stamp import FORBIDDEN, Stamp
from optimizer.engine.problem.estimates import Parts, guide_of
from optimizer.engine.problem.problem import Guide, Problem, ProblemRoom, RoomPair
from optimizer.engine.problem.reach import reach_grid
from optimizer.engine.rules import PARTS
from optimizer.engine.terms import TERMS, Losses, choice_losses, order_of, pulls_to_points, slab_losses
from optimizer.scenario import Scenario

LEVEL_CENTS = 20_000
"""The model counts losses of places in whole levels, rounded down: few zones for the solver, and still a floor."""


def build_problem(
    scenario: Scenario,
    rooms: tuple[SizedRoom, ...],
    book: PriceBook,
    *,
    without: frozenset[RuleId] = frozenset(),
    rules_only: bool = False,
) -> Problem:
    """The problem of a scenario. `without` leaves rules' parts out, to see what they forbid; with `rules_only` nothing
    costs anything, which is enough to ask whether there is any layout, and much sooner built.
    """
    context = context_of(scenario, rooms)
    parts = {rule: part for rule, part in PARTS.items() if rule not in without}
    bare = _of_rules(context, book, parts)
    if rules_only:
        return bare
    built = tuple(_with_losses(context, room, own, book) for room, own in zip(rooms, bare.rooms, strict=True))
    return replace(
        bare,
        rooms=built,
        pairs=tuple(_with_terms(context, parts, pair) for pair in bare.pairs),
        pulls=pulls_to_points(context),
        reach=reach_grid(context) if "reachable" in parts else None,
        guide=guide_of(context, built, book, parts),
    )


def _of_rules(context: Context, book: PriceBook, parts: Parts) -> Problem:
    """What the rules allow, without a loss; what they ask of sight and of ways is left out."""
    variants = tuple(sizes_of(context, room, parts) for room in context.rooms)
    return Problem(
        context=context,
        rooms=tuple(_room(context, room, own, parts) for room, own in zip(context.rooms, variants, strict=True)),
        pairs=tuple(_pair(context, parts, a, b) for a, b in combinations(range(len(variants)), 2)),
        pulls=(),
        order=order_of(context),
        amounts=tuple(a for part in parts.values() if part.amounts for a in part.amounts(context, variants, book)),
        rings=root_rings_of(context) if "root_ring" in parts else (),
        reach=None,
        guide=Guide(tuple((0,) * len(own) for own in variants), 0),
    )


def sizes_of(context: Context, room: SizedRoom, parts: Parts = PARTS) -> tuple[Variant, ...]:
    """Variants of a room that keep the rules about sizes."""
    asked = [part.sizes for part in parts.values() if part.sizes]
    variants = variants_of(room, context.lattice, exact="known_choice" in parts)
    if "held" in parts:
        variants = tuple(held_variant(context, room, variant) for variant in variants)
    return tuple(variant for variant in variants if all(fits(context, room, variant) for fits in asked))


def allowed_positions(
    context: Context, room: SizedRoom, variants: Sequence[Variant], parts: Parts = PARTS
) -> tuple[Cells, ...]:
    """Where each variant may stand by the rules that bind it alone; one array a variant."""
    kept = tuple(one for part in parts.values() if part.kept_off for one in part.kept_off(context, room))
    return tuple(_allowed(context, room, variant, kept, parts) for variant in variants)


def barred_places(context: Context, room: SizedRoom, variant: Variant) -> dict[RuleId, Cells]:
    """By rule the lower left corners where that rule alone keeps a variant from standing, if there are any."""
    on_grid = allowed_positions(context, room, (variant,), {})[0]
    bars = {rule: on_grid & ~allowed_positions(context, room, (variant,), {rule: p})[0] for rule, p in PARTS.items()}
    return {rule: cells for rule, cells in bars.items() if cells.any()}


def _room(context: Context, room: SizedRoom, variants: tuple[Variant, ...], parts: Parts) -> ProblemRoom:
    """A room without a loss."""
    nothing = np.zeros((context.lattice.rows, context.lattice.columns), dtype=np.int64)
    return ProblemRoom(
        name=room.name,
        required=room.required and "required_rooms" in parts,
        walkable=room.rules.walkable,
        is_built=bool(room.rules.built_as),
        variants=variants,
        losses=(0,) * len(variants),
        allowed=allowed_positions(context, room, variants, parts),
        places=(nothing,) * len(variants),
        floors=(nothing,) * len(variants),
        absent_loss=0,
    )


def _with_losses(context: Context, room: SizedRoom, bare: ProblemRoom, book: PriceBook) -> ProblemRoom:
    losses, doing_without = choice_losses(context, room, bare.variants, book)
    tables = [place_losses(context, room, v, a, book) for v, a in zip(bare.variants, bare.allowed, strict=True)]
    absent_place = sum(term.absent_cents(context, room) for term in TERMS)
    return replace(
        bare,
        losses=losses,
        places=tuple(exact for exact, _ in tables),
        floors=tuple(floor for _, floor in tables),
        absent_loss=doing_without + absent_place,
        absent_place=absent_place,
    )


def place_losses(
    context: Context, room: SizedRoom, variant: Variant, allowed: Cells, book: PriceBook
) -> tuple[Losses, Losses]:
    """Losses of places [cents]: of all terms, and a floor of them, which the model counts."""
    sums = {counted: np.zeros(allowed.shape, dtype=np.int64) for counted in ("levels", "whole", "no")}
    for term in TERMS:
        cents = term.cents(context, room, variant, allowed)
        if cents is not None:
            sums[term.in_model] += cents
    slabs = slab_losses(context, room, variant, book)
    if slabs is not None:
        sums["levels"] = sums["levels"] + slabs
    floor = sums["levels"] // LEVEL_CENTS * LEVEL_CENTS + sums["whole"]
    return sums["levels"] + sums["whole"] + sums["no"], floor


def _allowed(context: Context, room: SizedRoom, variant: Variant, kept: tuple[KeptOff, ...], parts: Parts) -> Cells:
    allowed = ~on_any(context.lattice, variant, kept)
    for part in parts.values():
        fits = part.positions(context, room, variant) if part.positions else None
        allowed = allowed if fits is None else allowed & fits
    return allowed


def _pair(context: Context, parts: Parts, first: int, second: int) -> RoomPair:
    """What rules ask of two rooms by offset, without sight."""
    contact, forbidden = _contact(context, parts, first, second), _penalties(context, parts, first, second)
    return RoomPair(first, second, contact, tuple(forbidden), ())


def _with_terms(context: Context, parts: Parts, bare: RoomPair) -> RoomPair:
    """The same with what counts between them, and with all that is asked of sight."""
    first, second = bare.first, bare.second
    counted = (stamp for term in TERMS if term.stamps for stamp in term.stamps(context, first, second))
    return replace(bare, stamps=(*bare.stamps, *counted), asks=_asks(context, parts, first, second))


def _contact(context: Context, parts: Parts, first: int, second: int) -> Contact:
    contact = Contact()
    for part in parts.values():
        asked = part.contact(context, first, second) if part.contact else None
        contact = contact if asked is None else contact.and_also(asked)
    return contact


def _penalties(context: Context, parts: Parts, first: int, second: int) -> Iterator[Stamp]:
    """What rules forbid between two rooms by offset."""
    for rule, part in parts.items():
        if part.conditions:
            yield from (Penalty(rule, condition) for condition in part.conditions(context, first, second))


def _asks(context: Context, parts: Parts, first: int, second: int) -> tuple[Ask, ...]:
    rules = [
        Ask(rule, view, FORBIDDEN)
        for rule, part in parts.items()
        if part.looks
        for view in part.looks(context, first, second)
    ]
    return (*rules, *(ask for term in TERMS if term.asks for ask in term.asks(context, first, second)))
