"""From the brief's wishes to rooms with sizes, furniture and quantities."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from optimizer.brief import Brief, RoomKind, RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.kinds import kind_rules
from optimizer.catalogue.rooms import SizedChoice, SizedRoom
from optimizer.catalogue.sizing.extras import with_extras
from optimizer.catalogue.sizing.fire import FIRE
from optimizer.catalogue.sizing.frame import LEVELS, Level, Size, Sizer, seats_of
from optimizer.catalogue.sizing.gathering import GATHERING
from optimizer.catalogue.sizing.ground import ARRIVAL, BED, LAWN, PLAY, STORAGE
from optimizer.catalogue.sizing.kitchen import KITCHEN
from optimizer.catalogue.sizing.nook import NOOK
from optimizer.catalogue.sizing.reserve import RESERVE

SIZERS: Final[dict[RoomKind, Sizer]] = {
    "gathering": GATHERING,
    "kitchen": KITCHEN,
    "fire": FIRE,
    "nook": NOOK,
    "reserve": RESERVE,
    "arrival": ARRIVAL,
    "lawn": LAWN,
    "bed": BED,
    "storage": STORAGE,
    "play": PLAY,
}


@lru_cache(maxsize=16)
def sized_rooms(brief: Brief) -> tuple[SizedRoom, ...]:
    """Every wished room with its choices, smallest worth first; a covered or screened one after its plain original.

    Raises
    ------
    ScenarioError
        If a wish names something that the catalogue does not know.
    """
    return tuple(with_extras(sized_room(wish), brief) for wish in brief.rooms)


def sized_room(wish: RoomWish) -> SizedRoom:
    """One wished room: its own choices fitted out, or three levels of its use with 0.6, 0.8 and 1 of its worth."""
    choices = _given(wish) if wish.choices else _by_use(wish)
    return SizedRoom(
        name=wish.name,
        rules=kind_rules(wish.kind),
        required=wish.required,
        phase=wish.phase,
        choices=tuple(sorted(choices, key=lambda choice: choice.worth)),
        fuel=wish.fuel,
        sun=wish.sun,
    )


def _given(wish: RoomWish) -> Iterator[SizedChoice]:
    """Choices with the brief's sizes, at the middle level; seats are those that could be drawn, at most the brief's."""
    for choice in wish.choices:
        size = Size(choice.width_ft, choice.depth_ft, choice.seats)
        yield _choice(wish, choice.label, size, "comfortable", worth=choice.worth)


def _by_use(wish: RoomWish) -> Iterator[SizedChoice]:
    figures = data("rates.yaml")
    worth = figures["worth_by_default"] if wish.worth is None else wish.worth
    for level, size in zip(LEVELS, SIZERS[wish.kind].sizes(wish), strict=True):
        yield _choice(wish, level, size, level, worth=round(worth * figures["levels"][level], 6))


def _choice(wish: RoomWish, label: str, size: Size, level: Level, *, worth: float) -> SizedChoice:
    fitting = SIZERS[wish.kind].fit(wish, size, level)
    return SizedChoice(
        label=label,
        width_ft=float(size.width_ft),
        depth_ft=float(size.depth_ft),
        seats=seats_of(fitting.furniture),
        worth=worth,
        sides=fitting.sides,
        furniture=fitting.furniture,
        quantities=fitting.quantities,
    )
