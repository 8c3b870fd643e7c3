"""People seated, and the worth of what was chosen."""

from collections.abc import Iterator, Sequence

from optimizer.catalogue import SizedChoice, SizedRoom
from optimizer.layout import Layout


def chosen(rooms: Sequence[SizedRoom], layout: Layout) -> Iterator[tuple[SizedRoom, SizedChoice]]:
    """Every placed room with its choice; one that the catalogue does not know is passed over."""
    by_name = {room.name: room for room in rooms}
    for placement in layout.placements:
        room = by_name.get(placement.room)
        choice = room.choice(placement.choice) if room else None
        if room and choice:
            yield room, choice


def people_seated(rooms: Sequence[SizedRoom], layout: Layout) -> int:
    """People whom the furniture of all placed rooms seats, counted item by item."""
    return sum(item.seats for _, choice in chosen(rooms, layout) for item in choice.furniture)


def worth_placed(rooms: Sequence[SizedRoom], layout: Layout) -> float:
    """Worth of all choices placed [points]."""
    return sum(choice.worth for _, choice in chosen(rooms, layout))
