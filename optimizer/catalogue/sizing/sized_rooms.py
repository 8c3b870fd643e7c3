"""From the brief's wishes to rooms with sizes, furniture and quantities."""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from typing import Final

from optimizer.brief import Brief, Choice, RoomKind, RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.growth import grow_share
from optimizer.catalogue.kinds import kind_rules
from optimizer.catalogue.rooms import SizedChoice, SizedRoom
from optimizer.catalogue.sizing.extras import with_extras
from optimizer.catalogue.sizing.fire import FIRE
from optimizer.catalogue.sizing.frame import LEVELS, Level, Size, Sizer, seats_of
from optimizer.catalogue.sizing.gathering import GATHERING
from optimizer.catalogue.sizing.ground import ARRIVAL, BED, LAWN, PLAY, STORAGE
from optimizer.catalogue.sizing.kitchen import KITCHEN, starter_of
from optimizer.catalogue.sizing.nook import NOOK
from optimizer.catalogue.sizing.pool import POOL
from optimizer.catalogue.sizing.prepared import prepared
from optimizer.catalogue.sizing.reserve import RESERVE
from optimizer.catalogue.sizing.waiting import with_waiting

SIZERS: Final[dict[RoomKind, Sizer]] = {
    "gathering": GATHERING,
    "kitchen": KITCHEN,
    "fire": FIRE,
    "nook": NOOK,
    "pool": POOL,
    "reserve": RESERVE,
    "arrival": ARRIVAL,
    "lawn": LAWN,
    "bed": BED,
    "storage": STORAGE,
    "play": PLAY,
}

ONLY_SIZE: Final = "one size"
"""Label of a size beside which there is no other."""


@lru_cache(maxsize=16)
def sized_rooms(brief: Brief) -> tuple[SizedRoom, ...]:
    """Every wished room with its choices, smallest worth first; a covered or screened one after its plain original,
    and those that wait before all others.

    Raises
    ------
    ScenarioError
        If a wish names something that the catalogue does not know.
    """
    return tuple(_asked(_every_choice(wish, brief), brief) for wish in brief.rooms)


def _every_choice(wish: RoomWish, brief: Brief) -> SizedRoom:
    return with_waiting(with_extras(sized_room(wish), brief), wish, brief)


def _asked(room: SizedRoom, brief: Brief) -> SizedRoom:
    """The room, required where a hold asks for it; that it comes later is then no answer, unless held itself."""
    holds = brief.holds_of(room.name)
    held = {hold.choice for hold in holds}
    if not (room.required or any(hold.asks_for_room for hold in holds)):
        return room
    choices = tuple(choice for choice in room.choices if not choice.is_later or choice.label in held)
    return replace(room, required=True, choices=choices)


def sized_room(wish: RoomWish) -> SizedRoom:
    """One wished room: its own choices fitted out, or up to three levels of its use, which keep a share of its worth.

    A kitchen has a starter beside them: its grill and a few feet of counter. In phase 1 it may also wait: its pad and
    stubs are built then.
    """
    choices = _given(wish) if wish.choices else _by_use(wish)
    return SizedRoom(
        name=wish.name,
        rules=kind_rules(wish.kind),
        required=wish.required,
        phase=wish.phase,
        choices=tuple(sorted(choices, key=lambda choice: choice.worth)),
        fuel=wish.fuel,
        interim=wish.interim,
        sun=wish.sun,
        grow=grow_share(wish),
    )


def _given(wish: RoomWish) -> Iterator[SizedChoice]:
    """Choices of the brief, at the middle level; seats are those that could be drawn, at most the brief's."""
    for choice in wish.choices:
        own = replace(wish, equipment=choice.equipment, bar_seats=choice.bar_seats) if choice.equipment else wish
        own = replace(own, water_ft=choice.water_ft) if choice.water_ft else own
        yield _choice(own, choice.label, _size(own, choice), "comfortable", worth=choice.worth)


def _size(own: RoomWish, choice: Choice) -> Size:
    """Size of a choice; that of its equipment or its water where the brief gives none."""
    seats = choice.seats or choice.bar_seats
    if choice.width_ft is not None and choice.depth_ft is not None:
        return Size(choice.width_ft, choice.depth_ft, seats)
    _, usual, _ = SIZERS[own.kind].sizes(own)
    return replace(usual, seats=seats)


def _by_use(wish: RoomWish) -> Iterator[SizedChoice]:
    """A kitchen's pad and stubs and its starter, then levels; of levels that come out the same the one of most worth.

    The pad is that of the smallest level: all its equipment finds room on it.
    """
    figures = data("rates.yaml")
    worth = figures["worth_by_default"] if wish.worth is None else wish.worth
    starter = starter_of(wish) if wish.kind == "kitchen" else None
    if starter is not None:
        modest, _, _ = KITCHEN.sizes(starter)
        yield _choice(starter, "starter", modest, "modest", worth=round(worth * figures["levels"]["starter"], 6))
    choices = [
        _choice(wish, level, size, level, worth=round(worth * figures["levels"][level], 6))
        for level, size in zip(LEVELS, SIZERS[wish.kind].sizes(wish), strict=True)
    ]
    kept = [one for n, one in enumerate(choices) if not any(_is_built_as(one, other) for other in choices[n + 1 :])]
    levels = kept if len(kept) > 1 else [replace(kept[0], label=ONLY_SIZE)]
    if wish.kind == "kitchen" and wish.phase == 1:
        yield prepared(levels[0], round(worth * figures["levels"]["prepared"], 6))
    yield from levels


def _is_built_as(one: SizedChoice, other: SizedChoice) -> bool:
    return replace(one, label=other.label, worth=other.worth) == other


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
        shape=wish.shape,
    )
