"""A room that is held at a place: the cells that it takes there, and the way between cells and the exact place.

A place may lie between two grid lines. The room then takes every cell that it reaches into; on the plan its held
corner is exact and its other edges lie on the grid, as every size is rounded up to whole steps.
"""

import math
from dataclasses import replace
from typing import NamedTuple

from optimizer.catalogue import SizedRoom
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.lattice import SLACK
from optimizer.engine.grid.variants import Variant, anchor_of
from optimizer.layout import Front, Placement
from optimizer.site import Point

ON_LINE_FT = 0.02


class Block(NamedTuple):
    """Cells by the lower left corner and the size of the rectangle that they fill, in steps."""

    x: int
    y: int
    width: int
    depth: int


def held_place(context: Context, name: str) -> Point | None:
    """Where a room's lower left corner is held on the plan [ft]; None where it is free."""
    places = (hold.at_ft for hold in context.scenario.brief.holds_of(name))
    return next((at for at in places if at is not None), None)


def held_front(context: Context, name: str) -> Front | None:
    """Side of the posed yard that a room is held to open to."""
    fronts = (hold.front for hold in context.scenario.brief.holds_of(name))
    return next((context.pose.front(front) for front in fronts if front is not None), None)


def held_block(context: Context, room: SizedRoom, variant: Variant) -> Block | None:
    """Cells that a variant takes where its room is held; None where the room is free."""
    at = held_place(context, room.name)
    if at is None:
        return None
    choice, lattice = room.choices[variant.choice], context.lattice
    size = (choice.width_ft, choice.depth_ft)
    width_ft, depth_ft = size if variant.is_upright else size[::-1]
    (x_ft, y_ft), (a, b, c, d) = context.pose.point(at), context.pose.matrix
    ahead = a + b > 0, c + d > 0
    left, right = _span(context, x_ft - lattice.x0_ft, width_ft, ahead=ahead[0])
    low, high = _span(context, y_ft - lattice.y0_ft, depth_ft, ahead=ahead[1])
    block = Block(left, low, right - left, high - low)
    return _squared(block, ahead) if variant.is_round else block


def _squared(block: Block, ahead: tuple[bool, bool]) -> Block:
    """The square that a block is part of, with the held corner where it is."""
    side = max(block.width, block.depth)
    x, y = (
        start if is_ahead else start + size - side
        for start, size, is_ahead in zip((block.x, block.y), (block.width, block.depth), ahead, strict=True)
    )
    return Block(x, y, side, side)


def held_variant(context: Context, room: SizedRoom, variant: Variant) -> Variant:
    """The variant as large as the cells that it takes where its room is held."""
    block = held_block(context, room, variant)
    if block is None:
        return variant
    width, depth = block.width, block.depth
    return replace(variant, width=width, depth=depth, anchor=anchor_of(variant.front, width, depth))


def with_exact_corner(context: Context, placement: Placement) -> Placement:
    """A room of whole cells on the plan, with its corner exactly where it is held."""
    at, step_ft = held_place(context, placement.room), context.lattice.step_ft
    if at is None:
        return placement
    past_x, past_y = at[0] - placement.x_ft, at[1] - placement.y_ft
    if not all(-ON_LINE_FT <= past < step_ft for past in (past_x, past_y)):
        return placement
    past_x, past_y = (past if past > ON_LINE_FT else 0.0 for past in (past_x, past_y))
    width_ft, depth_ft = placement.width_ft - past_x, placement.depth_ft - past_y
    if placement.is_circle:
        width_ft = depth_ft = min(width_ft, depth_ft)
    return replace(
        placement,
        x_ft=at[0] if past_x else placement.x_ft,
        y_ft=at[1] if past_y else placement.y_ft,
        width_ft=round(width_ft, context.pose.digits),
        depth_ft=round(depth_ft, context.pose.digits),
    )


def of_whole_cells(context: Context, posed: Placement) -> Placement:
    """A held room in the pose, grown to the cells that it reaches into; any other room as it is."""
    if held_place(context, posed.room) is None:
        return posed
    lattice = context.lattice
    left, right = _outward(posed.x_ft - lattice.x0_ft, posed.right_ft - lattice.x0_ft, lattice.step_ft)
    low, high = _outward(posed.y_ft - lattice.y0_ft, posed.top_ft - lattice.y0_ft, lattice.step_ft)
    return replace(
        posed,
        x_ft=lattice.x_ft(left),
        y_ft=lattice.y_ft(low),
        width_ft=(right - left) * lattice.step_ft,
        depth_ft=(high - low) * lattice.step_ft,
    )


def _outward(low_ft: float, high_ft: float, step_ft: float) -> tuple[int, int]:
    return math.floor((low_ft + ON_LINE_FT) / step_ft), math.ceil((high_ft - ON_LINE_FT) / step_ft)


def _span(context: Context, corner_ft: float, length_ft: float, *, ahead: bool) -> tuple[int, int]:
    """Grid lines round a length that starts at a held corner and runs ahead along the axis, or back."""
    step_ft = context.lattice.step_ft
    line = round(corner_ft / step_ft)
    corner = line if abs(line * step_ft - corner_ft) <= ON_LINE_FT else corner_ft / step_ft
    low, high = sorted((corner, corner + (1 if ahead else -1) * length_ft / step_ft))
    return math.floor(low + SLACK), math.ceil(high - SLACK)
