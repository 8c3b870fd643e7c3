"""What must hold of a pool: enough water to be one, enough deck round it, and no roof over it."""

from collections.abc import Iterator

from optimizer.catalogue import least_deck_ft, pool_figure
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.schema import ChoicePart, RoomPart

_ROUNDING_FT = 1e-6


def pool_complaints(room: RoomPart, path: Path) -> Iterator[Complaint]:
    """All complaints about a pool; none about another kind."""
    if room.kind != "pool":
        return
    yield from _cover(room, path)
    if room.deck is not None and room.deck < least_deck_ft() - _ROUNDING_FT:
        advice = "make it wider: nothing that stays may stand nearer to the water"
        yield Complaint((*path, "deck"), f"a deck of at least {least_deck_ft():g} ft", f"{room.deck:.3g} ft", advice)
    yield from _too_little(room, path)
    for index, choice in enumerate(room.choices):
        place = (*path, "choices", index)
        yield from _watered_twice(room, choice, place)
        yield from _too_little(choice, place)
        yield from _no_deck(room, choice, place)


def _cover(room: RoomPart, path: Path) -> Iterator[Complaint]:
    if room.cover:
        advice = "take it away; wish for shade beside the pool by a room of its own"
        yield Complaint((*path, "cover"), "no roof over a pool", f"one over {room.name}", advice)


def _too_little(part: RoomPart | ChoicePart, path: Path) -> Iterator[Complaint]:
    """Water so short or narrow that it is no pool."""
    least = pool_figure("least_water")
    if part.water is not None and min(part.water) < least - _ROUNDING_FT:
        found = f"{part.water[0]:.3g} x {part.water[1]:.3g} ft"
        advice = "check the digits and the unit; give the sides of the water, without its deck"
        yield Complaint((*path, "water"), f"water of at least {least:g} ft on each side", found, advice)


def _watered_twice(room: RoomPart, choice: ChoicePart, path: Path) -> Iterator[Complaint]:
    if room.water is not None and choice.water is not None:
        advice = "take it away here, or from the room"
        yield Complaint((*path, "water"), "`water` in the room or in its choices", f"it in both of {room.name}", advice)


def _no_deck(room: RoomPart, choice: ChoicePart, path: Path) -> Iterator[Complaint]:
    """A given size that does not hold the water with the least deck round it."""
    if choice.width is None or choice.depth is None:
        return
    least = pool_figure("least_water")
    water, deck = choice.water or room.water or (least, least), 2 * least_deck_ft()
    (short, long), (shorter, longer) = sorted((choice.width, choice.depth)), sorted(water)
    if short < shorter + deck - _ROUNDING_FT or long < longer + deck - _ROUNDING_FT:
        expected = f"at least {longer + deck:.3g} x {shorter + deck:.3g} ft: the water and 4 ft of deck on each side"
        found = f"{choice.width:.3g} x {choice.depth:.3g} ft"
        yield Complaint((*path, "width"), expected, found, "make the room larger, or its water smaller")
