"""A shade structure over a room and a screen beside it, as further choices with their own price."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from optimizer.brief import Brief, RoomWish
from optimizer.catalogue.data_files import data
from optimizer.catalogue.price_book import PriceBook
from optimizer.catalogue.rooms import Cover, Quantity, SizedChoice, SizedRoom
from optimizer.catalogue.sides import side_kind

COVERED: Final = ", covered"
SCREENED: Final = ", screened"
"""What a choice's label says of a roof, or a screen, that is bought with it."""


def cover_price(book: PriceBook) -> float:
    """Price of a square foot of a new roof."""
    return float(book.of(data("extras.yaml")["cover"]["item"]).price)


def with_extras(room: SizedRoom, brief: Brief) -> SizedRoom:
    """The room with a covered and a screened copy of each choice that is built now, where the wish asks for shade or
    privacy.

    A copy has the worth of its original: it earns its price only by the sun and the sight that it saves.
    """
    wish = brief.room(room.name)
    if wish is None:
        return room
    choices = tuple(
        extra
        for choice in room.choices
        for screened in _screened(choice, wanted=_wants_screen(wish, brief) and not choice.is_later)
        for extra in _covered(screened, wanted=_wants_cover(wish) and not choice.is_later)
    )
    return replace(room, choices=choices)


def _wants_cover(wish: RoomWish) -> bool:
    if wish.cover is not None:
        return wish.cover
    return wish.sun is not None and wish.sun.want == "shade" and wish.kind in data("extras.yaml")["cover"]["kinds"]


def _wants_screen(wish: RoomWish, brief: Brief) -> bool:
    if wish.shape == "circle":
        return False  # a panel stands along straight sides
    if wish.screen is not None:
        return wish.screen
    rooms = {room.name for room in brief.rooms}
    # Of two rooms the first looks; a thing of the site that is named looks itself, or is looked at without a screen.
    return any(
        relation.kind == "out_of_view"
        and wish.name in relation.between
        and (relation.between[1] == wish.name or relation.between[1] not in rooms)
        for relation in brief.relations
    )


def _covered(choice: SizedChoice, *, wanted: bool) -> Iterator[SizedChoice]:
    yield choice
    if wanted:
        figures = data("extras.yaml")["cover"]
        roof = Quantity(figures["item"], choice.width_ft * choice.depth_ft, by="ground")
        yield replace(
            choice,
            label=choice.label + COVERED,
            plain_label=choice.size,
            quantities=(*choice.quantities, roof),
            cover=Cover(float(figures["height_ft"]), float(figures["share"])),
        )


def _screened(choice: SizedChoice, *, wanted: bool) -> Iterator[SizedChoice]:
    """The screen stands round two sides that meet: whatever looks in, it looks over those two."""
    yield choice
    if wanted:
        # Built at first, also for what comes later: a screen, and what climbs on it, takes years to close.
        panel = Quantity(str(side_kind("screen").item), choice.width_ft + choice.depth_ft, phase=1, by="two sides")
        yield replace(
            choice,
            label=choice.label + SCREENED,
            plain_label=choice.size,
            quantities=(*choice.quantities, panel),
            is_screened=True,
        )
