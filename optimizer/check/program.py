"""Rules about the set of rooms, their sizes and their cost."""

from collections import Counter
from collections.abc import Iterator
from typing import Final

from optimizer.catalogue import SizedChoice
from optimizer.check.case import CheckCase
from optimizer.check.finding import Finding
from optimizer.check.growth import overgrown
from optimizer.layout import PlacedRoom

_LEAST_AREA_SQFT: Final = 40.0  # common practice, no source
_ROUNDING_FT: Final = 1e-3
_RATIO_ROUNDING: Final = 1e-6


def required_rooms(case: CheckCase) -> Iterator[Finding]:
    """Each required room that is left out, and each room that stands twice."""
    counts = Counter(placement.room for placement in case.layout.placements)
    for room in case.placed.wished:
        if room.required and not counts[room.name]:
            yield Finding("required_rooms", (room.name,), 1, "room", f"{room.name} is required and left out")
    for name, count in counts.items():
        if count > 1:
            yield Finding("required_rooms", (name,), count - 1, "room", f"{name} stands {count} times")


def known_choice(case: CheckCase) -> Iterator[Finding]:
    """Rooms that the brief does not wish, choices that they do not have, and sizes that are not their choice's.

    A room that has grown to a line had its choice's size before, and has grown no farther than it may.
    """
    known = {room.name for room in case.placed.wished}
    for placement in case.layout.placements:
        if placement.room not in known:
            yield _unknown(placement.room, "is no room of the brief")
    for placed in case.placed:
        choice = placed.room.choice(placed.placement.choice)
        if choice is None:
            yield _unknown(placed.name, f"has no choice {placed.placement.choice!r}")
        elif (off := _size_off_ft(placed, choice, case.scenario.grid_step_ft)) > 0:
            words = f"{placed.name} is {case.length(off)} off the size of {choice.label!r}"
            yield Finding("known_choice", (placed.name,), off, "ft", words)
        elif not _is_of_shape(placed, choice):
            words = f"{placed.name} is not laid out as the {choice.shape} that it is"
            yield Finding("known_choice", (placed.name,), 1, "shape", words)
        elif placed.placement.has_grown:
            yield from overgrown(case, placed)


def proportion(case: CheckCase) -> Iterator[Finding]:
    """Rooms that are too long for their width, or too small to be one."""
    for placed in case.placed:
        short, long = sorted((placed.placement.width_ft, placed.placement.depth_ft))
        over = long / max(short, _ROUNDING_FT) - placed.rules.longest_ratio
        if over > _RATIO_ROUNDING:
            words = f"{placed.name} is {case.length(long)} by {case.length(short)}"
            yield Finding("proportion", (placed.name,), over, "ratio", words)
        missing = _LEAST_AREA_SQFT - placed.placement.area_sqft
        if missing > _RATIO_ROUNDING:
            words = f"{placed.name} has {placed.placement.area_sqft:.1f} sq ft"
            yield Finding("proportion", (placed.name,), missing, "sq ft", words)


def budget(case: CheckCase) -> Iterator[Finding]:
    """Cost of phase 1 above the ceiling."""
    ceiling = case.scenario.brief.budget.ceiling
    cost = case.price(1) if case.price and ceiling is not None else None
    if ceiling is not None and cost is not None and cost > ceiling:
        currency = case.scenario.currency
        words = f"phase 1 costs {cost:,.0f} {currency}, the ceiling is {ceiling:,.0f} {currency}"
        yield Finding("budget", (), float(cost - ceiling), currency, words)


def _is_of_shape(placed: PlacedRoom, choice: SizedChoice) -> bool:
    """Whether it has its choice's shape; a circle is as wide as deep, and has not grown."""
    at = placed.placement
    is_even = abs(at.width_ft - at.depth_ft) <= _ROUNDING_FT and not at.has_grown
    return at.shape == choice.shape and (is_even or not at.is_circle)


def later_phases(case: CheckCase) -> Iterator[Finding]:
    """Cost of a later phase above a ceiling of its own; the rooms that are built in it are to blame."""
    for phase, ceiling in case.scenario.brief.budget.phases:
        cost = case.price(phase) if case.price else None
        if cost is not None and cost > ceiling:
            rooms = tuple(room.name for room in case.placed if phase in room.phases)
            currency = case.scenario.currency
            words = f"phase {phase} costs {cost:,.0f} {currency}, its ceiling is {ceiling:,.0f} {currency}"
            yield Finding("later_phases", rooms, float(cost - ceiling), currency, words)


def _unknown(name: str, words: str) -> Finding:
    return Finding("known_choice", (name,), 1, "room", f"{name} {words}")


def _size_off_ft(placed: PlacedRoom, choice: SizedChoice, step_ft: float) -> float:
    """How far the placed size is off its choice's [ft], in the turn that fits best; rounding up to the grid is free."""
    base = placed.placement.base
    size = (base.width_ft, base.depth_ft)
    along_x = placed.front in {"+y", "-y"}
    turns = [(choice.width_ft, choice.depth_ft), (choice.depth_ft, choice.width_ft)]
    if placed.rules.has_front:
        turns = turns[:1] if along_x else turns[1:]
    return min(max(_off_ft(is_ft, asked_ft, step_ft) for is_ft, asked_ft in zip(size, t, strict=True)) for t in turns)


def _off_ft(is_ft: float, asked_ft: float, step_ft: float) -> float:
    over = is_ft - asked_ft
    return 0.0 if -_ROUNDING_FT <= over < step_ft else abs(over)
