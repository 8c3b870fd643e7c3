"""Parts of paving: net and to order, bedding, base, what is dug, edges, border and joints."""

from collections.abc import Iterator
from typing import Final

from optimizer.catalogue import cuts_share
from optimizer.quantities.concrete import slab_cuyd
from optimizer.quantities.earth import loose_part
from optimizer.quantities.figures import figure, value
from optimizer.quantities.outlines import PavedPiece
from optimizer.quantities.part import Counted, Line, Part
from optimizer.quantities.paving import (
    base_extension_ft,
    joint_bags,
    layer_cuyd,
    loose_stone_cuyd,
    ordered_sqft,
    stone_tons,
    units,
)

_PATTERN: Final = "common practice, no source: no standard says what patterns waste"


def paving_parts(line: Line, of: Counted) -> Iterator[Part]:
    """All parts of one room's paving, or of the ways."""
    piece = next((_in_phase(piece, line, of) for piece in of.pieces if piece.room == line.room), None)
    yield from _top(line, of)
    if piece is None:
        return
    if not line.item.endswith("overlay"):
        yield from _below(line, of, piece)
    yield from _edges(line, of, piece)


def _in_phase(piece: PavedPiece, line: Line, of: Counted) -> PavedPiece:
    """Of ways that several phases pave the part of one, base and edges by its share of the ground."""
    share = line.quantity / of.amount(line.item, line.room)
    if share == 1:
        return piece
    sizes = (piece.net_sqft, piece.base_sqft, piece.free_ft, piece.outline_ft)
    return PavedPiece(piece.room, *(share * size for size in sizes))


def _top(line: Line, of: Counted) -> Iterator[Part]:
    room, palette, up, net = of.placed(line), of.palette, of.build_up, line.quantity
    pattern = dict(palette.by_room).get(line.room, palette.pattern)
    cuts = cuts_share(pattern, turned=room is not None and room.kind == "arrival")
    yield line.part("paving, net", net, "sq ft", "its ground less water and beds in it")
    yield line.part(
        f"{palette.field.words}, to order",
        ordered_sqft(net, cuts),
        "sq ft",
        f"{net:,.1f} sq ft x (1 + {cuts:.0%} cut away, {pattern})",
        _PATTERN,
    )
    if up.is_concrete:
        share = value("slab_waste")
        how = f"{net:,.1f} sq ft x {up.top_in:g} in / 324 x (1 + {share:.0%})"
        yield line.part("concrete", slab_cuyd(net, up.top_in), "cu yd", how, figure("slab_waste").source)
    if up.sand_in:
        how = f"{net:,.1f} sq ft x {up.sand_in:g} in / 324"
        yield line.part("bedding sand", layer_cuyd(net, up.sand_in), "cu yd", how, figure("sand_in").source)
    if up.has_joints:
        how = f"{net:,.1f} sq ft / {value('joint_sqft_per_bag'):g}"
        yield line.part("joint sand", joint_bags(net), "50 lb bag", how, figure("joint_sqft_per_bag").source)


def _below(line: Line, of: Counted, piece: PavedPiece) -> Iterator[Part]:
    """Base with what reaches beyond free edges, and what is dug for all of it."""
    up = of.build_up
    if not up.dug_in:
        return
    base, deep = piece.base_sqft, layer_cuyd(piece.base_sqft, up.base_in)
    if up.base_in:
        beyond = 12 * base_extension_ft(up.base_in)
        how = f"{piece.net_sqft:,.1f} sq ft and {beyond:g} in beyond free edges, for a base of {up.base_in:g} in"
        yield line.part("base, ground", base, "sq ft", how, figure("least_extension_in").source)
        how = f"{base:,.1f} sq ft x {up.base_in:g} in / 324, compacted to {value('base_compaction'):.0%} Proctor"
        yield line.part("base stone, compacted", deep, "cu yd", how, figure("base_compaction").source)
        how = f"{deep:,.2f} cu yd x {value('loose_for_compacted'):g}; about {stone_tons(deep):,.1f} tons"
        yield line.part(
            "base stone, delivered", loose_stone_cuyd(deep), "cu yd", how, figure("loose_for_compacted").source
        )
    dug = layer_cuyd(base, up.dug_in)
    yield line.part("dug out, in the bank", dug, "cu yd", f"{base:,.1f} sq ft x {up.dug_in:g} in / 324")
    yield loose_part(line, "dug out, loose", dug)


def _edges(line: Line, of: Counted, piece: PavedPiece) -> Iterator[Part]:
    if of.build_up.has_joints:
        stakes = f"edges that no wall, landing or paving holds; a stake every {value('stake_ft'):g} ft"
        yield line.part("edge restraint", piece.free_ft, "ft", stakes, figure("stake_ft").source)
        if line.item != "path paving":
            count = piece.outline_ft * value("border_units_per_ft")
            how = f"the terrace's outline at this room; {count:,.0f} units at {value('border_units_per_ft'):g} a foot"
            yield line.part("border course", piece.outline_ft, "ft", how, figure("border_units_per_ft").source)
    if of.palette.field.material == "clay brick":
        how = (
            f"{line.quantity:,.1f} sq ft x {value('units_per_sqft'):g} x (1 + {value('breakage'):.0%} broken) + "
            f"{piece.outline_ft:,.1f} ft cut x {value('units_cut_per_ft'):g}"
        )
        count = units(line.quantity, piece.outline_ft)
        yield line.part("bricks, 4 x 8 in", count, "each", how, figure("units_per_sqft").source)
