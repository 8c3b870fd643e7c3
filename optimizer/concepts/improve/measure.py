"""How far a layout is from a sketch: feet that the middles of rooms move along the plan's axes, and changes in feet.

What a change counts is common practice, no source: a person would sooner move a room a few feet than turn it.
"""

from collections.abc import Sequence
from typing import Final

from optimizer.catalogue import SizedRoom, comes_later
from optimizer.engine.grid.lattice import Lattice
from optimizer.engine.grid.variants import Variant
from optimizer.engine.model.nearest import FINE, Wanted
from optimizer.engine.problem import Problem
from optimizer.layout import Layout, Placement

TURNED_FT: Final = 6.0
"""A room that opens to another side, or is turned by a quarter."""
RESIZED_FT: Final = 8.0
COVERED_FT: Final = 2.0
"""The same size with or without a roof or a screen."""
WAITS_FT: Final = 30.0
"""Only the pad and stubs of a room in the place of the room, or the room in theirs: more than any other size of it."""
ABSENT_FT: Final = 60.0
"""A room of the sketch that is left out, or one that it does not have."""
WORDS: Final = (
    f"Nearness is counted in feet that the middles of rooms move along the plan's two axes; a turn counts as "
    f"{TURNED_FT:.0f} ft, another size as {RESIZED_FT:.0f}, a roof or screen more or less as {COVERED_FT:.0f}, only "
    f"the pad and stubs of a room as {WAITS_FT:.0f}, a room left out or added as {ABSENT_FT:.0f}."
)


def distance_ft(rooms: Sequence[SizedRoom], sketch: Layout, layout: Layout) -> float:
    """How far a layout is from a sketch [ft]."""
    return sum(_room_ft(room, sketch.of(room.name), layout.of(room.name)) for room in rooms)


def _room_ft(room: SizedRoom, drawn: Placement | None, placed: Placement | None) -> float:
    if drawn is None or placed is None:
        return 0.0 if drawn is placed else ABSENT_FT
    moved = sum(abs(one - other) for one, other in zip(drawn.centre, placed.centre, strict=True))
    return moved + change_ft(room, drawn, placed)


def change_ft(room: SizedRoom, drawn: Placement, placed: Placement) -> float:
    """What counts of a room beside its movement: a turn, another size, a roof or a screen [ft]."""
    is_turned = drawn.front != placed.front if room.rules.has_front else _is_long(drawn) * _is_long(placed) < 0
    return TURNED_FT * is_turned + _resized_ft(room, drawn.choice, placed.choice)


def wanted_of(problem: Problem, sketch: Layout) -> tuple[Wanted, ...]:
    """The same as the model counts it, for each room of a problem."""
    posed = problem.context.pose.layout(sketch.base)
    lattice = problem.context.lattice
    return tuple(
        _wanted(lattice, sized, data.variants, posed.of(sized.name))
        for sized, data in zip(problem.context.rooms, problem.rooms, strict=True)
    )


def parts_of(lattice: Lattice, feet: float) -> int:
    """A distance in the model's parts of a half step."""
    return round(2 * FINE * feet / lattice.step_ft)


def feet_of(lattice: Lattice, parts: int) -> float:
    """The same in feet."""
    return parts * lattice.step_ft / (2 * FINE)


def _wanted(lattice: Lattice, room: SizedRoom, variants: Sequence[Variant], drawn: Placement | None) -> Wanted:
    absent = parts_of(lattice, ABSENT_FT)
    if drawn is None:
        return Wanted(None, (absent,) * len(variants), 0)
    x_ft, y_ft = drawn.centre
    middle = (parts_of(lattice, x_ft - lattice.x0_ft), parts_of(lattice, y_ft - lattice.y0_ft))
    changes = (_resized_ft(room, drawn.choice, room.choices[variant.choice].label) for variant in variants)
    turns = (TURNED_FT * _is_turned(drawn, variant) for variant in variants)
    sums = tuple(parts_of(lattice, change + turn) for change, turn in zip(changes, turns, strict=True))
    return Wanted(middle, sums, absent)


def _is_turned(drawn: Placement, variant: Variant) -> bool:
    if variant.front is not None:
        return variant.front != drawn.front
    return _is_long(drawn) * (variant.width - variant.depth) < 0


def _is_long(placed: Placement) -> float:
    """Above 0 where a room is longer along x, below 0 where it is longer along y."""
    return placed.width_ft - placed.depth_ft


def _resized_ft(room: SizedRoom, drawn: str, placed: str) -> float:
    if drawn == placed:
        return 0.0
    if comes_later(drawn) or comes_later(placed):
        return WAITS_FT
    one, other = room.choice(drawn), room.choice(placed)
    is_same_size = one is not None and other is not None and one.size == other.size
    return COVERED_FT if is_same_size else RESIZED_FT
