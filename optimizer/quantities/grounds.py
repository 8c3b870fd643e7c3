"""Parts of earth, drains, planting, what is taken up, and what is kept from harm."""

from collections.abc import Iterator
from math import pi
from typing import Final

from shapely import Point

from optimizer.catalogue import pool_figure, pool_gallons, root_rings
from optimizer.catalogue.steps import step_rules
from optimizer.derived import Derived
from optimizer.grading import bank_cuyd
from optimizer.layout import side_ends
from optimizer.layout.shapes import middle
from optimizer.quantities.earth import end_areas_cuyd, loads, loose_part
from optimizer.quantities.figures import figure, value
from optimizer.quantities.part import Counted, Line, Part
from optimizer.quantities.paving import layer_cuyd
from optimizer.quantities.water import load_psf, tub_lb
from optimizer.site import Tree

_TUB: Final = (695.0, 325.0, 5)
"""Dry weight [lb], gallons and people of a usual tub; bigthebiggest.com hot tub sizes."""


def cut_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Loose volume of what is dug."""
    yield loose_part(line, "loose", line.quantity)


def fill_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Earth in the bank that the fill takes."""
    how = f"{line.quantity:,.2f} cu yd compacted / {line.quantity / bank_cuyd(line.quantity):g}"
    yield line.part("from the bank", bank_cuyd(line.quantity), "cu yd", how, "common practice, no source")


def spoil_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Loads to cart."""
    how = f"{line.quantity:,.2f} cu yd loose / {value('load_cuyd'):g}"
    yield line.part("loads", loads(line.quantity), "each", how, figure("load_cuyd").source)


def drain_parts(line: Line, of: Counted) -> Iterator[Part]:
    """How each room falls and what takes its water; pipe to the outfall where a drain does."""
    drains = [start.at for start in of.derived.site.utilities if start.kind == "drain"]
    for fall in of.derived.grading.falls:
        room = of.derived.placed.of(fall.room)
        if fall.outfall != "drain" or room is None or not drains:
            continue
        low = middle(side_ends(room.placement, fall.towards))
        length = min(abs(low[0] - at[0]) + abs(low[1] - at[1]) for at in drains)
        how = f"{fall.room}: falls {fall.slope:.0%} to {fall.towards}; from its low edge along the axes to the drain"
        yield line.part("drain pipe", length, "ft", how)
        deep = (value("pipe_cover_ft"), value("pipe_cover_ft") + step_rules().ground_fall * length)
        ends = [value("trench_ft") * depth_ft for depth_ft in deep]
        how = f"{fall.room}: mean of {ends[0]:.1f} and {ends[1]:.1f} sq ft at its ends x {length:,.0f} ft / 27"
        trench = end_areas_cuyd([(ends[0], ends[1], length)])
        yield line.part("trench", trench, "cu yd", how, "average end areas; " + figure("pipe_cover_ft").source)
        yield line.part("basin", 1, "each", f"{fall.room}: at its low edge", "common practice, no source")


def planting_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Beds by reason and lawn beside the wished ones; what the sum set aside pays for is said with the measures."""
    areas: dict[str, float] = {}
    for bed in of.derived.planting.beds:
        areas[bed.reason] = areas.get(bed.reason, 0.0) + float(bed.outline.area)
    for reason, area in areas.items():
        yield line.part(f"bed {reason}", area, "sq ft", "measured on the plan")
    dug = sum(area for reason, area in areas.items() if reason != "round a tree")
    yield from (
        _layer(line, "soil made ready", dug, "bed_soil_in"),
        _layer(line, "mulch", sum(areas.values()), "mulch_in"),
    )
    if lawn := sum(float(piece.area) for piece in of.derived.planting.lawns):
        yield line.part("lawn that stays", lawn, "sq ft", "measured on the plan; made good only where machines wear it")


def bed_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Soil and mulch of a bed."""
    yield _layer(line, "soil made ready", line.quantity, "bed_soil_in")
    yield _layer(line, "mulch", line.quantity, "mulch_in")


def _layer(line: Line, item: str, area_sqft: float, name: str) -> Part:
    """A layer whose thickness is a constant."""
    how = f"{area_sqft:,.1f} sq ft x {value(name):g} in / 324"
    return line.part(item, layer_cuyd(area_sqft, value(name)), "cu yd", how, figure(name).source)


def lawn_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Turf with what is cut away, and soil under it."""
    how = f"{line.quantity:,.1f} sq ft x (1 + {value('turf_waste'):.0%})"
    yield line.part("turf", line.quantity * (1 + value("turf_waste")), "sq ft", how, figure("turf_waste").source)
    yield _layer(line, "topsoil under turf", line.quantity, "lawn_soil_in")


def lifted_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Rubble of paving that is lifted, as it lies."""
    yield _layer(line, "rubble, as it lies", line.quantity, "slab_lifted_in")


def tree_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Fence round each kept tree that work comes near."""
    trunks = root_rings(of.derived.site).outer_trunks
    for tree in trees_near_work(of.derived):
        radius = trunks * tree.trunk_diameter_ft
        how = f"{tree.name}: 2 x 3.14 x {radius:.1f} ft, {trunks:g} trunk diameters"
        yield line.part("fence round a tree", 2 * pi * radius, "ft", how, "published root radii, 1 to 1.5 ft an inch")


def trees_near_work(derived: Derived) -> tuple[Tree, ...]:
    """Kept trees in whose root radius anything is built."""
    trunks = root_rings(derived.site).outer_trunks
    built = [*(room.shape for room in derived.placed if room.rules.built_as), derived.paths]
    return tuple(
        tree
        for tree in derived.site.trees
        if any(not s.is_empty and s.distance(Point(tree.at)) < trunks * tree.trunk_diameter_ft for s in built)
    )


def pool_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Water that a pool holds and earth that is dug for it."""
    room = of.placed(line)
    if room is None:
        return
    left, low, right, top = room.water.bounds
    deep = float(pool_figure("mean_depth"))
    gallons = pool_gallons(right - left, top - low, deep)
    how = f"{right - left:g} x {top - low:g} ft x {deep:g} ft mean depth x {pool_figure('gallons_per_cuft'):g}"
    yield line.part("water", gallons, "gal", how, "published tables of pool volumes")
    dug = layer_cuyd(line.quantity, 12 * deep)
    yield line.part("dug out for the shell, in the bank", dug, "cu yd", f"{line.quantity:g} sq ft x {deep:g} ft / 27")
    yield loose_part(line, "the same, loose", dug)


def tub_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Weight of a filled tub on its pad."""
    room = of.placed(line)
    body = room.items("future") if room else ()
    dry, gallons, people = _TUB
    weight = tub_lb(dry, gallons, people)
    area = float(body[0].area) if body else 0.0
    load = f", {load_psf(weight, area):,.0f} lb on a square foot: no deck bears that unasked" if area else ""
    how = f"{dry:g} lb + {gallons:g} gal x {value('gallon_lb'):g} + {people} people x {value('bather_lb'):g}{load}"
    yield line.part("filled tub with people", weight, "lb", how, figure("bather_lb").source)
