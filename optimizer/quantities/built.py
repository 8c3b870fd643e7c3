"""Parts of what is built up: counters, seat walls, retaining walls, steps, roofs, fires, sheds."""

from collections.abc import Iterator
from math import ceil
from typing import Final

from optimizer.catalogue.sides import side_kind
from optimizer.layout import PlacedRoom
from optimizer.quantities.concrete import footing_cuyd, post_footings_cuyd, posts_for, slab_cuyd
from optimizer.quantities.figures import figure, value
from optimizer.quantities.part import Counted, Line, Part
from optimizer.quantities.paving import layer_cuyd

_FROM_DRAWING: Final = "measured on the drawing"


def counter_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Running length, top, slab and bar top of a kitchen's counter."""
    length, depth, thick = line.quantity, value("counter_depth_ft"), value("counter_slab_in")
    yield line.part("counter, running length", length, "ft", f"ground of the drawn counter / its depth of {depth:g} ft")
    yield line.part("counter top", length * depth, "sq ft", f"{length:,.2f} ft x {depth:g} ft")
    how = f"{length * depth:,.1f} sq ft x {thick:g} in / 324 x (1 + {value('slab_waste'):.0%})"
    yield line.part("slab under it", slab_cuyd(length * depth, thick), "cu yd", how, figure("counter_slab_in").source)
    room = of.placed(line)
    ledges = room.items("ledge") if room else ()
    if ledges:
        wide = sum(max(_sides(ledge)) for ledge in ledges)
        yield line.part("bar top", wide, "ft", _FROM_DRAWING)


def seat_wall_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Wall, cap and footing of a seat wall."""
    wall, length = side_kind("seat wall"), line.quantity
    wide, thick = wall.depth_ft + 2 * value("footing_beyond_ft"), value("seat_wall_footing_in")
    yield line.part(
        "face, both sides", 2 * length * wall.height_ft, "sq ft", f"2 x {length:g} ft x {wall.height_ft:.2f} ft"
    )
    yield line.part("cap", length, "ft", f"as long as the wall, {wall.depth_ft:g} ft wide")
    how = f"{length:g} ft x {wide:g} ft x {thick:g} in / 324 x (1 + {value('footing_waste'):.0%})"
    yield line.part("footing", footing_cuyd(length, wide, thick), "cu yd", how, figure("seat_wall_footing_in").source)


def retaining_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Length, cap, footing and drain of a room's retaining walls; a structural design decides."""
    walls = [wall for wall in of.derived.grading.walls if wall.room == line.room]
    length, tallest = sum(wall.length_ft for wall in walls), max((wall.height_ft for wall in walls), default=0.0)
    wide = value("wall_thickness_ft") + 2 * value("footing_beyond_ft")
    thick, deep = value("wall_footing_in"), value("wall_drain_gravel_ft")
    told = f"{len(walls)} wall{'s' * (len(walls) != 1)}, {tallest:.1f} ft at the highest"
    yield line.part("cap", length, "ft", told)
    how = f"{length:,.1f} ft x {wide:g} ft x {thick:g} in / 324 x (1 + {value('footing_waste'):.0%})"
    yield line.part("footing", footing_cuyd(length, wide, thick), "cu yd", how, figure("wall_footing_in").source)
    how = f"{line.quantity:,.1f} sq ft of face x {deep:g} ft / 27"
    yield line.part(
        "drain gravel", layer_cuyd(line.quantity, 12 * deep), "cu yd", how, figure("wall_drain_gravel_ft").source
    )
    yield line.part("drain pipe behind it", length, "ft", "as long as the walls", "common practice, no source")


def step_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Treads of each flight that is built in the line's phase, and handrails."""
    before = of.before(line.phase)
    there = before.grading.built_flights if before else ()
    for flight in of.stages[line.phase].grading.built_flights:
        if flight in there:
            continue
        ends, treads = " to ".join(flight.between), flight.risers - 1 + flight.landings
        how = (
            f"{ends}: {flight.risers} risers of {flight.riser_in:.1f} in, {treads} treads of {flight.tread_in:.1f} in, "
            f"{flight.width_ft:g} ft wide"
        )
        yield line.part("treads", treads * flight.width_ft, "ft", how, "2R + T = 26, Booth & Hiss")
        if flight.needs_handrail:
            yield line.part(
                "handrail", flight.run_ft, "ft", f"{ends}: four risers and more", "IRC R311.7.8, from memory"
            )


def shade_parts(line: Line, of: Counted) -> Iterator[Part]:
    """Posts and footings of a shade structure."""
    room = of.placed(line)
    if room is None:
        return
    posts = posts_for(room.placement.width_ft, room.placement.depth_ft)
    size = f"{room.placement.width_ft:g} x {room.placement.depth_ft:g} ft"
    how = f"{size}, none more than {value('post_spacing_ft'):g} ft apart"
    yield line.part("posts", posts, "each", how, figure("post_spacing_ft").source)
    how = f"{posts} x {value('post_footing_cuft'):g} cu ft / 27 x (1 + {value('footing_waste'):.0%})"
    yield line.part("footings", post_footings_cuyd(posts), "cu yd", how, figure("post_footing_cuft").source)


def shed_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Base of a shed."""
    base = value("patio_base_in")
    how = f"{line.quantity:g} sq ft x {base:g} in / 324"
    yield line.part("base stone", layer_cuyd(line.quantity, base), "cu yd", how, figure("patio_base_in").source)


def screen_parts(line: Line, _of: Counted) -> Iterator[Part]:
    """Posts of a screen."""
    apart_ft = value("screen_post_ft")
    posts = ceil(line.quantity / apart_ft - 1e-9) + 1
    how = f"{line.quantity:g} ft, one every {apart_ft:g} ft and one more"
    yield line.part("posts", posts, "each", how, figure("screen_post_ft").source)


def equipped(room: PlacedRoom) -> tuple[tuple[str, float], ...]:
    """Items of the price book that a room is equipped with, each with its number."""
    return tuple((q.item, q.amount) for q in room.choice.quantities) if room.choice else ()


def _sides(shape: object) -> tuple[float, float]:
    left, low, right, top = shape.bounds  # type: ignore[attr-defined]
    return (right - left, top - low)
