"""What ways with lights, steps and runs will cost, roughly: estimates that guide, on which no proof rests."""

import math
from collections.abc import Sequence

import numpy as np

from optimizer.brief import RuleId
from optimizer.catalogue import PAVING_ITEMS, PriceBook, SizedChoice, SizedRoom, palette_of
from optimizer.circulation import WIDTH_FT
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.variants import Variant
from optimizer.engine.problem.problem import Guide, ProblemRoom
from optimizer.engine.rules.part import Part
from optimizer.fields import ground_z_ft
from optimizer.grading import loose_cuyd
from optimizer.quantities import POOR_ACCESS, build_up, figure, is_closed_to_machines, layer_cuyd

Parts = dict[RuleId, Part]
CENTS = 100
INCHES_A_FOOT = 12
LIKELY_RISER_IN = 6.0


def guide_of(context: Context, rooms: Sequence[ProblemRoom], book: PriceBook, parts: Parts) -> Guide:
    """What the runs of every choice and the ways of the yard will likely cost, and where rules are in doubt."""
    runs = tuple(
        tuple(_runs(context, sized.choices[variant.choice], book, room.allowed) for variant in room.variants)
        for sized, room in zip(context.rooms, rooms, strict=True)
    )
    doubts = tuple(
        tuple(_doubts(context, sized, variant, parts) for variant in room.variants)
        for sized, room in zip(context.rooms, rooms, strict=True)
    )
    ways = _ways(context, rooms, book) + _steps(context, rooms, book) + _beside(context, book)
    return Guide(runs, ways, doubts)


def _doubts(context: Context, room: SizedRoom, variant: Variant, parts: Parts) -> Cells | None:
    """Positions that some rule will likely refuse."""
    found = [part.doubts(context, room, variant) for part in parts.values() if part.doubts]
    known = [cells for cells in found if cells is not None and cells.any()]
    return np.logical_or.reduce(known) if known else None


def _ways(context: Context, rooms: Sequence[ProblemRoom], book: PriceBook) -> int:
    """Price of a straight way from every door and entrance in a trip to the middle of where rooms may stand [cents]."""
    middle = _middle(context, rooms)
    names = dict.fromkeys(end for trip in context.scenario.brief.trips for end in (trip.start, trip.end))
    guests = {entrance.name for entrance in context.site.entrances if "guests" in entrance.used_by}
    stops = [(name, point) for name in names if (point := context.site.point_of(name)) is not None]
    area_sqft = sum(WIDTH_FT["arrival" if name in guests else "main"] * math.dist(at, middle) for name, at in stops)
    length_ft = sum(math.dist(at, middle) for _, at in stops)
    lights = length_ft / figure("way_light_ft").value * float(book.of("light").price)
    paving = float(book.of("path paving").price) * area_sqft * (1 + _by_hand(context, book))
    return round(CENTS * (paving + lights) * float(context.scenario.brief.budget.factor))


def _by_hand(context: Context, book: PriceBook) -> float:
    """Share by which earth and paving are dearer, where no machine comes into the yard at all."""
    return float(book.of(POOR_ACCESS).price) if is_closed_to_machines(context.site) else 0.0


def _beside(context: Context, book: PriceBook) -> int:
    """What comes beside the paving of every wished room at its least size: spoil, and what work by hand costs more
    [cents].
    """
    brief = context.scenario.brief
    up = build_up(palette_of(brief.finish).field.material)
    least = [min(room.choices, key=lambda choice: choice.width_ft * choice.depth_ft) for room in context.rooms]
    laid = [quantity for choice in least for quantity in choice.quantities if quantity.item in PAVING_ITEMS]
    spoil = sum(loose_cuyd(layer_cuyd(quantity.amount, up.dug_in)) for quantity in laid)
    paving = sum(quantity.amount * float(book.of(quantity.item).price) for quantity in laid)
    money = spoil * float(book.of("spoil carted away").price) + _by_hand(context, book) * paving
    return round(CENTS * money * float(brief.budget.factor))


def _steps(context: Context, rooms: Sequence[ProblemRoom], book: PriceBook) -> int:
    """Price of as many risers as the ground falls over where rooms may stand [cents]."""
    places = [np.argwhere(cells) for room in rooms for cells in room.allowed if cells.any()]
    if not places or not context.site.levels:
        return 0
    corners = np.unique(np.concatenate(places), axis=0)
    z = ground_z_ft(context.site, [(context.lattice.x_ft(int(x)), context.lattice.y_ft(int(y))) for y, x in corners])
    risers = float(np.ptp(z)) * INCHES_A_FOOT / LIKELY_RISER_IN
    return round(CENTS * risers * float(book.of("steps").price * context.scenario.brief.budget.factor))


def _runs(context: Context, choice: SizedChoice, book: PriceBook, allowed: Sequence[Cells]) -> int:
    """Price of a choice's gas, electric and water runs, from the nearest start to the middle of its places [cents]."""
    middle = _middle_of(context, allowed)
    total = 0.0
    for quantity in choice.quantities:
        supply = quantity.item.removesuffix(" branch")
        starts = [utility.at for utility in context.site.utilities if utility.kind == supply]
        if starts and supply != quantity.item:
            length_ft = min(abs(at[0] - middle[0]) + abs(at[1] - middle[1]) for at in starts)
            total += length_ft * float(book.of(f"{supply} run").price)
    return round(CENTS * total * float(context.scenario.brief.budget.factor))


def _middle(context: Context, rooms: Sequence[ProblemRoom]) -> tuple[float, float]:
    """Mean of every allowed corner of the rooms that must be there, or of all where none must."""
    wanted = [room for room in rooms if room.required] or list(rooms)
    return _middle_of(context, [cells for room in wanted for cells in room.allowed])


def _middle_of(context: Context, allowed: Sequence[Cells]) -> tuple[float, float]:
    places = [np.argwhere(cells) for cells in allowed if cells.any()]
    if not places:
        centre = context.boundary.centroid
        return (centre.x, centre.y)
    row, column = np.concatenate(places).mean(axis=0)
    return (context.lattice.x_ft(float(column)), context.lattice.y_ft(float(row)))
