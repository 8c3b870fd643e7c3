"""What every kind answers with: sizes for a wish that gives none, and the fitting of one size."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final, Literal, get_args

from optimizer.brief import RoomWish
from optimizer.catalogue.rooms import Item, LocalSide, Quantity

Level = Literal["modest", "comfortable", "generous"]
LEVELS: Final[tuple[Level, ...]] = get_args(Level)
Sides = tuple[tuple[LocalSide, str], ...]


@dataclass(frozen=True, slots=True)
class Size:
    """Width along the front, depth from front to back [ft], and the people to be seated."""

    width_ft: float
    depth_ft: float
    seats: int = 0

    @property
    def area_sqft(self) -> float:
        """Area [sq ft]."""
        return self.width_ft * self.depth_ft

    @property
    def turned(self) -> "Size":
        """The same size with width and depth exchanged."""
        return Size(self.depth_ft, self.width_ft, self.seats)


@dataclass(frozen=True, slots=True)
class Fitting:
    """Furniture, quantities and sides of one size."""

    furniture: tuple[Item, ...] = ()
    quantities: tuple[Quantity, ...] = ()
    sides: Sides = ()


@dataclass(frozen=True, slots=True)
class Sizer:
    """How a kind is sized: three sizes of a wish by use, modest first; and the fitting of one size at a level."""

    sizes: Callable[[RoomWish], tuple[Size, Size, Size]]
    fit: Callable[[RoomWish, Size, Level], Fitting]


def sides(*, front: str = "open", back: str = "open", left: str = "open", right: str = "open") -> Sides:
    """Sides of a room, open unless said otherwise."""
    return (("front", front), ("back", back), ("left", left), ("right", right))


def seats_of(items: tuple[Item, ...]) -> int:
    """People seated by the items, counted one by one."""
    return sum(item.seats for item in items)


def moved(items: tuple[Item, ...], *, right_ft: float = 0.0, out_ft: float = 0.0) -> tuple[Item, ...]:
    """Items moved along the front and towards it."""
    return tuple(replace(item, x_ft=item.x_ft + right_ft, y_ft=item.y_ft + out_ft) for item in items)


def turned(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """Items with the two axes exchanged; for items that lie square to the axes only."""
    return tuple(
        replace(item, x_ft=item.y_ft, y_ft=item.x_ft, width_ft=item.depth_ft, depth_ft=item.width_ft) for item in items
    )
