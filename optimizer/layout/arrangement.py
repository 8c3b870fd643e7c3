"""The pattern of a layout: who lies on which side of whom, which choices, which part of the yard."""

from dataclasses import dataclass
from itertools import combinations
from math import fsum
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
    return _beside(first, second) or ("below" if first.centre[1] <= second.centre[1] else "above")


def _turned_side_of(first: Placement, second: Placement) -> Side:
    """The same with y ranges before x ranges."""
    return _behind(first, second) or ("left" if first.centre[0] <= second.centre[0] else "right")


def _beside(first: Placement, second: Placement) -> Side | None:
    if first.right_ft <= second.x_ft + TOLERANCE_FT:
        return "left"
    return "right" if second.right_ft <= first.x_ft + TOLERANCE_FT else None


def _behind(first: Placement, second: Placement) -> Side | None:
    if first.top_ft <= second.y_ft + TOLERANCE_FT:
        return "below"
    return "above" if second.top_ft <= first.y_ft + TOLERANCE_FT else None


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
    both = [(one.of(room), other.of(room)) for room in rooms]
    # Summed exactly, so that it is the same whichever layout is named first.
    by_room = fsum(_room_difference(*stands, diagonal_ft) for stands in both) / len(rooms)
    pairs = [_pair_difference(a, b) for a, b in combinations(both, 2)]
    return 0.5 * by_room + 0.5 * sum(pairs) / max(1, len(pairs))


def _room_difference(one: Placement | None, other: Placement | None, diagonal_ft: float) -> float:
    if one is None or other is None:
        return 1.0
    moved_ft = max(abs(a - b) for a, b in zip(one.centre, other.centre, strict=True))
    return MOVED_DIFFERS * min(1.0, moved_ft / (MOVED_SHARE * diagonal_ft)) + CHOICE_DIFFERS * (
        one.choice != other.choice
    )


def _pair_difference(
    a: tuple[Placement | None, Placement | None], b: tuple[Placement | None, Placement | None]
) -> float:
    """Of two rooms, each with where it stands in the one layout and in the other."""
    (a_one, a_other), (b_one, b_other) = a, b
    if a_one is None or a_other is None or b_one is None or b_other is None:
        return 1.0
    # Of diagonal neighbours the one side is left or right, in a plan turned by a quarter below or above: half each.
    upright = side_of(a_one, b_one) != side_of(a_other, b_other)
    return (upright + (_turned_side_of(a_one, b_one) != _turned_side_of(a_other, b_other))) / 2
