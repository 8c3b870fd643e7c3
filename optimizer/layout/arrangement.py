"""The pattern of a layout: who lies on which side of whom, which choices, which part of the yard."""

from dataclasses import dataclass, replace
from itertools import combinations
from typing import Final, Literal

from optimizer.layout.placement import Layout, Placement

Side = Literal["left", "right", "below", "above"]
TOLERANCE_FT = 0.02
MOVED_SHARE: Final = 0.15
"""Part of the yard's diagonal by which a room has clearly moved."""
MOVED_DIFFERS, CHOICE_DIFFERS = 0.75, 0.25
"""What a room that clearly moved, and one of another choice, count."""


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Rooms with their choices, and for each pair (in brief order) the one canonical side of the first."""

    choices: tuple[tuple[str, str], ...]
    sides: tuple[Side, ...]


def side_of(first: Placement, second: Placement) -> Side:
    """Side of `second` on which `first` lies: left or right where their x ranges do not overlap, else below or above.

    Ranges that only touch do not overlap.
    """
    if first.right_ft <= second.x_ft + TOLERANCE_FT:
        return "left"
    if second.right_ft <= first.x_ft + TOLERANCE_FT:
        return "right"
    return "below" if first.centre[1] <= second.centre[1] else "above"


def arrangement_of(layout: Layout) -> Arrangement:
    """Arrangement of a layout, with rooms in the layout's order."""
    return Arrangement(
        choices=tuple((placement.room, placement.choice) for placement in layout.placements),
        sides=tuple(side_of(a, b) for a, b in combinations(layout.placements, 2)),
    )


def difference(one: Layout, other: Layout, *, diagonal_ft: float) -> float:
    """How differently two layouts are arranged, from 0 (the same) to 1 (nothing in common).

    The mean over rooms of: left out in one only (1), another choice (0.25), moved by more than 15 % of the yard's
    diagonal (0.75, in proportion below that); and over pairs of rooms in both: another side (1; half, if only along
    one axis). Rooms and pairs count half each.
    """
    rooms = [p.room for p in one.placements] + [p.room for p in other.placements if one.of(p.room) is None]
    if not rooms:
        return 0.0
    by_room = sum(_room_difference(one.of(room), other.of(room), diagonal_ft) for room in rooms) / len(rooms)
    pairs = [(a, b) for a, b in combinations(rooms, 2)]
    by_pair = sum(_pair_difference(one, other, a, b) for a, b in pairs) / max(1, len(pairs))
    return 0.5 * by_room + 0.5 * by_pair


def _room_difference(one: Placement | None, other: Placement | None, diagonal_ft: float) -> float:
    if one is None or other is None:
        return 1.0
    moved_ft = max(abs(a - b) for a, b in zip(one.centre, other.centre, strict=True))
    return MOVED_DIFFERS * min(1.0, moved_ft / (MOVED_SHARE * diagonal_ft)) + CHOICE_DIFFERS * (
        one.choice != other.choice
    )


def _pair_difference(one: Layout, other: Layout, a: str, b: str) -> float:
    ones, others = (one.of(a), one.of(b)), (other.of(a), other.of(b))
    if None in ones or None in others:
        return 1.0
    before, after = [p for p in ones if p is not None], [p for p in others if p is not None]
    # Of diagonal neighbours the one side is left or right, in a plan turned by a quarter below or above: half each.
    upright = side_of(*before) != side_of(*after)
    return (upright + (side_of(*map(_turned, before)) != side_of(*map(_turned, after)))) / 2


def _turned(placement: Placement) -> Placement:
    """Same with the axes exchanged."""
    return replace(
        placement,
        x_ft=placement.y_ft,
        y_ft=placement.x_ft,
        width_ft=placement.depth_ft,
        depth_ft=placement.width_ft,
    )
