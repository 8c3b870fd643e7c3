"""Rooms as the catalogue sizes them: what the engine places, the check measures and the take-off counts."""

from dataclasses import dataclass
from math import pi
from typing import Final, Literal

from optimizer.brief import Interim, RoomKind, RoomShape, SunWish
from optimizer.site import BuiltClass


def ground_sqft(shape: RoomShape, width_ft: float, depth_ft: float) -> float:
    """Area of a rectangle of these sides, or of the circle in it [sq ft]."""
    return pi / 4 * min(width_ft, depth_ft) ** 2 if shape == "circle" else width_ft * depth_ft


LocalSide = Literal["front", "back", "left", "right"]
Bounds = tuple[float, float, float, float]
"""Left, lower, right and upper edge [ft]."""
IN_WATER: Final = ("water", "pool steps", "pool bench")
"""Roles of furniture that together make up the water of a pool, edge to edge."""


@dataclass(frozen=True, slots=True)
class KindRules:
    """What holds for every room of a kind.

    `walkable` ground may be crossed by anybody's way; over the paving of `passed` kinds ways lead outside all that
    stands there; `has_front` kinds serve to one side, which must stay open; `keeps_from_openings` marks kitchen, fire
    and water; a room of a kind that `grows` may be built a little larger to meet a line.
    """

    kind: RoomKind
    built_as: tuple[BuiltClass, ...]
    walkable: bool
    paved: bool
    has_front: bool
    longest_ratio: float
    keeps_from_openings: bool
    passed: bool = False
    grows: bool = False

    @property
    def has_deck(self) -> bool:
        """Whether it is water with a paved deck of its own: the water's distances run from the water's edge."""
        return {"paving", "water"} <= set(self.built_as)

    @property
    def is_heavy(self) -> bool:
        """Whether it is dug or walled, so that machines come for it."""
        return bool({"water", "wall", "fire"} & set(self.built_as))

    @property
    def built_to_edge(self) -> tuple[BuiltClass, ...]:
        """What is built up to the room's own edge: all but water that lies in a deck."""
        return tuple(built for built in self.built_as if not (self.has_deck and built == "water"))


@dataclass(frozen=True, slots=True)
class Item:
    """A piece of furniture or equipment in the room's own axes [ft]: x along the front, y towards the front.

    The room's lower left corner (back left, seen from the back looking to the front) is (0, 0). `seats` is how many
    people it seats; `turn_deg` turns it about its centre, counter-clockwise.
    """

    role: str
    x_ft: float
    y_ft: float
    width_ft: float
    depth_ft: float
    shape: Literal["rectangle", "circle"] = "rectangle"
    seats: int = 0
    turn_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class Quantity:
    """So much of a price-book item that a room needs, whatever its place; `phase` None: the room's own.

    `by` says what the amount follows where a room grows: its ground [sq ft], or two sides that meet [ft].
    """

    item: str
    amount: float
    phase: int | None = None
    by: Literal["ground", "two sides"] | None = None


@dataclass(frozen=True, slots=True)
class Cover:
    """A new shade structure over a whole room: its height above the ground, and the share of sun that it keeps out."""

    height_ft: float
    share: float


@dataclass(frozen=True, slots=True)
class SizedChoice:
    """One size-and-equipment level of a room. `width_ft` is along the front, `depth_ft` from front to back."""

    label: str
    width_ft: float
    depth_ft: float
    seats: int
    worth: float
    sides: tuple[tuple[LocalSide, str], ...] = ()
    """What each side is: a kind of `sides.yaml`."""
    furniture: tuple[Item, ...] = ()
    quantities: tuple[Quantity, ...] = ()
    cover: Cover | None = None
    is_screened: bool = False
    """Whether a panel stands round the sides that something must not look into."""
    shape: RoomShape = "rectangle"
    """Its ground: all of its width and depth, or the circle in that square."""
    plain_label: str = ""
    """Label of the size that this one is with a roof or a screen to buy; empty for the size itself."""
    prepares: str = ""
    """Label of the choice that is built later, where this is its pad or waits for it; empty for what is whole."""
    phase: int | None = None
    """Later phase that all of it waits for; None where it is built in the room's own."""

    @property
    def size(self) -> str:
        """Label of its size, without what is bought to it."""
        return self.plain_label or self.label

    @property
    def is_later(self) -> bool:
        """Whether the room comes later: nothing of it, or only what prepares for it, is built in phase 1. It counts as
        later and never as the room.
        """
        return bool(self.prepares)

    @property
    def is_pad(self) -> bool:
        """Whether its pad and stubs are built now."""
        return self.is_later and self.phase is None

    @property
    def area_sqft(self) -> float:
        """Area of its ground [sq ft]."""
        return ground_sqft(self.shape, self.width_ft, self.depth_ft)

    @property
    def water(self) -> Bounds | None:
        """Edges of the water that is drawn, in the room's own axes; None where none is."""
        items = [item for item in self.furniture if item.role in IN_WATER]
        if not items:
            return None
        return (
            min(item.x_ft for item in items),
            min(item.y_ft for item in items),
            max(item.x_ft + item.width_ft for item in items),
            max(item.y_ft + item.depth_ft for item in items),
        )


@dataclass(frozen=True, slots=True)
class SizedRoom:
    """A wished room with its choices, smallest worth first."""

    name: str
    rules: KindRules
    required: bool
    phase: int
    choices: tuple[SizedChoice, ...]
    fuel: Literal["gas", "wood"] | None = None
    interim: Interim = "lawn"
    """What held ground is until something is built on it."""
    sun: SunWish | None = None
    grow: float = 0.0
    """Share of its area by which it may grow to meet lines."""

    @property
    def sizes(self) -> tuple[SizedChoice, ...]:
        """Its choices without a roof or a screen to buy, and built now. An owner's own label says nothing of any."""
        return tuple(c for c in self.choices if c.cover is None and not c.is_screened and not c.is_later)

    def choice(self, label: str) -> SizedChoice | None:
        """Choice of that label, or None."""
        return next((choice for choice in self.choices if choice.label == label), None)

    def phase_of(self, choice: SizedChoice | None) -> int:
        """Phase in which a choice is built: its own where it waits, else the room's."""
        return self.phase if choice is None or choice.phase is None else choice.phase

    def built_as(self, choice: SizedChoice) -> tuple[BuiltClass, ...]:
        """What the room is built as in this choice; setbacks go by it."""
        roof: tuple[BuiltClass, ...] = ("roof",) if choice.cover else ()
        wall: tuple[BuiltClass, ...] = ("wall",) if choice.is_screened else ()
        return (*self.rules.built_as, *roof, *wall)
