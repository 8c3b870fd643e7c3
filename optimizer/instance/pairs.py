"""What holds between two rooms, in the terms that the explorer and the model both know."""

from dataclasses import dataclass
from typing import Literal

from optimizer.fields.sight_ends import Look


@dataclass(frozen=True, slots=True)
class View:
    """A look from one room of a pair at the other; `looks` is the room that looks, 0 the pair's first, 1 its second."""

    look: Look
    looks: int


@dataclass(frozen=True, slots=True)
class PairWish:
    """A relation that is wished for: what it asks, and the loss in cents where it is not kept."""

    asks: Literal["near", "apart", "touching", "faces", "seen", "hidden"]
    amount_ft: float
    loss: int
    opens: int = 0
    """With `faces`: the room that opens, 0 the pair's first, 1 its second."""
    view: View | None = None
    """With `seen` and `hidden`."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Rules between two rooms. Steps are grid steps.

    Rooms that do not touch keep `gap` steps along x or along y; rooms that touch share `share` steps of edge. Where
    `must_touch`, they touch and share `touch_share` steps. `apart_ft` and `near_ft` are edge to edge, straight.
    `faces` holds the ends (0 the first, 1 the second) that must open towards the other. The open side of a kitchen
    (`open_ends`) may be touched only by ground that can be walked on.
    """

    first: int
    second: int
    may_overlap: bool = True
    gap: int = 0
    share: int = 0
    must_touch: bool = False
    touch_share: int = 0
    apart_ft: float = 0.0
    near_ft: float | None = None
    cover_apart_ft: float = 0.0
    """Least distance where the room at `cover_end` takes a covered choice."""
    cover_end: int = 0
    faces: tuple[int, ...] = ()
    ahead: tuple[int, ...] = ()
    """Ends that must have the other room's middle before their front counter, or level with it."""
    open_ends: tuple[int, ...] = ()
    views: tuple[View, ...] = ()
    wishes: tuple[PairWish, ...] = ()
